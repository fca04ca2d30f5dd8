import { mkdir, writeFile } from "node:fs/promises";
import { request } from "node:http";
import { networkInterfaces } from "node:os";
import { join } from "node:path";
import { afterEach, describe, expect, it } from "vitest";
import { type Loopback, serveLoopback } from "../../../electron/start/server.ts";
import { temporaryFolder } from "../support/temporary.ts";

let server: Loopback | undefined;
afterEach(() => server?.close());

async function serve(): Promise<URL> {
  const folder = join(await temporaryFolder(), "page");
  await mkdir(folder);
  await writeFile(join(folder, "index.html"), "<p>page");
  await writeFile(join(folder, "..", "secret.txt"), "secret");
  server = await serveLoopback(folder);
  return new URL(server.url);
}

interface Asked {
  readonly path?: string;
  readonly method?: string;
  readonly host?: string;
}

/** Asks exactly what is given, without a client that mends paths. */
function ask(url: URL, { path = "/", method = "GET", host = url.host }: Asked) {
  return new Promise<{ status: number; text: string; policy: unknown }>((resolve, reject) => {
    const sent = request(
      { host: url.hostname, port: url.port, path, method, headers: { host } },
      (response) => {
        let text = "";
        response.setEncoding("utf8").on("data", (part: string) => {
          text += part;
        });
        response.on("end", () => {
          const policy = response.headers["content-security-policy"];
          resolve({ status: response.statusCode ?? 0, text, policy });
        });
      },
    );
    sent.on("error", reject);
    sent.end();
  });
}

describe("the loopback server", () => {
  it("serves the page with its policy", async () => {
    const url = await serve();
    expect(url.hostname).toBe("127.0.0.1");
    expect(await ask(url, {})).toMatchObject({
      status: 200,
      text: "<p>page",
      policy: expect.stringMatching(/^default-src 'none'/),
    });
  });

  it.each<[string, Asked, number]>([
    ["another method", { method: "PUT" }, 405],
    ["a foreign name for this machine", { host: "evil.example" }, 403],
    ["a name without the port", { host: "127.0.0.1" }, 403],
    ["another name of this machine", { host: "localhost:80" }, 403],
    ["an encoded climb", { path: "/..%2fsecret.txt" }, 403],
    ["a plain climb", { path: "/../secret.txt" }, 404],
    ["a whole address as a path", { path: "http://evil.example/" }, 403],
    ["nonsense", { path: "/%" }, 403],
  ])("refuses %s", async (_, asked, status) => {
    const refused = await ask(await serve(), asked);
    expect(refused.status).toBe(status);
    expect(refused.text).not.toMatch(/secret|page/);
  });

  it("is not heard from outside", async () => {
    const url = await serve();
    const outside = Object.values(networkInterfaces())
      .flat()
      .find((one) => one && !one.internal && one.family === "IPv4")?.address;
    const elsewhere = new URL(`http://${outside ?? "127.0.0.2"}:${url.port}/`);
    await expect(ask(elsewhere, {})).rejects.toThrow();
  });

  it("closes although somebody still holds on", async () => {
    const url = await serve();
    await ask(url, {});
    await server?.close();
    server = undefined;
    await expect(ask(url, {})).rejects.toThrow();
  });
});
