import { mkdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { answer, fileFor, within } from "../../../electron/policy/serve.ts";
import { temporaryFolder } from "../support/temporary.ts";

const ORIGIN = "app://trishaft";

describe("the file behind an address", () => {
  it.each([
    ["/", "index.html"],
    ["/index.html?x#y", "index.html"],
    ["/assets/a%20b.js", "assets/a b.js"],
    ["/assets/../index.html", "index.html"],
    ["/..index.html", "..index.html"],
    ["/sub/", "sub/index.html"],
  ])("%s is in the root", (path, file) => {
    expect(fileFor("/root", `${ORIGIN}${path}`)).toBe(join("/root", file));
  });

  it("never leaves the root by dots, which the address itself takes away", () => {
    expect(fileFor("/root", `${ORIGIN}/../../etc/passwd`)).toBe(join("/root", "etc", "passwd"));
    expect(fileFor("/root", `${ORIGIN}/%2e%2e/%2e%2e/etc/passwd`)).toBe(join("/root", "etc", "passwd"));
  });

  it.each([
    "/..%2f..%2fetc/passwd",
    "/..%5c..%5cetc",
    "/..\\..\\etc%5Cpasswd",
    "/a%00.js",
    "/c%3a/x",
    "/%E0%A4%A",
  ])("%s is refused", (path) => {
    expect(fileFor("/root", `${ORIGIN}${path}`)).toBeNull();
  });

  it("needs an address", () => {
    expect(fileFor("/root", "no address")).toBeNull();
  });
});

describe("a path within a folder", () => {
  it.each(["../root-two/x", "..", ".", "", "/etc/passwd", "a/../../root-two"])("is not %j", (path) => {
    expect(within("/root", path)).toBeNull();
  });

  it("may begin with dots", () => {
    expect(within("/root", "..a/b")).toBe(join("/root", "..a", "b"));
  });
});

describe("an answer", () => {
  async function root(): Promise<string> {
    const folder = await temporaryFolder();
    await mkdir(join(folder, "assets"));
    await writeFile(join(folder, "index.html"), "<p>");
    await writeFile(join(folder, "assets", "a.js"), "1");
    return folder;
  }
  const get = async (url: string, method = "GET") => answer({ method, url }, await root(), ORIGIN);

  it("has the file, its type and the policy", async () => {
    const page = await get(`${ORIGIN}/`);
    expect(page.status).toBe(200);
    expect(new TextDecoder().decode(page.body)).toBe("<p>");
    expect(page.headers).toMatchObject({
      "Content-Type": "text/html; charset=utf-8",
      "Content-Security-Policy": expect.stringMatching(/^default-src 'none'/),
      "X-Content-Type-Options": "nosniff",
    });
    expect((await get(`${ORIGIN}/assets/a.js`)).headers["Content-Type"]).toMatch(/^text\/javascript/);
  });

  it.each([
    ["a method that changes", `${ORIGIN}/`, "POST", 405],
    ["a method that only looks", `${ORIGIN}/`, "HEAD", 405],
    ["another host", "app://trishaft.example/", "GET", 403],
    ["another scheme", "http://trishaft/", "GET", 403],
    ["a path that climbs", `${ORIGIN}/..%2fx`, "GET", 403],
    ["a folder", `${ORIGIN}/assets`, "GET", 404],
    ["what is not there", `${ORIGIN}/gone.js`, "GET", 404],
  ])("is refused for %s", async (_, url, method, status) => {
    const refused = await get(url, method);
    expect(refused.status).toBe(status);
    expect(refused.headers["Content-Security-Policy"]).toBeDefined();
    expect(new TextDecoder().decode(refused.body)).not.toContain("<p>");
  });
});
