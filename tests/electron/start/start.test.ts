import { chmod, mkdir, readdir, readFile, writeFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { describe, expect, it } from "vitest";
import { electronRuntime } from "../../../electron/start/runtime.ts";
import { type Around, start } from "../../../electron/start/start.ts";
import { temporaryFolder } from "../support/temporary.ts";

/** A built project in a folder of its own, and what the launcher said. */
async function project(env: NodeJS.ProcessEnv = {}) {
  const root = await temporaryFolder();
  await mkdir(join(root, "dist", "renderer"), { recursive: true });
  await writeFile(join(root, "dist", "renderer", "index.html"), "<p>page");
  const said: string[] = [];
  const stop = new AbortController();
  const around: Around = {
    root,
    platform: "linux",
    env: { DISPLAY: ":0", PATH: "", ...env },
    uid: 1000,
    say: (line) => said.push(line),
    stop: stop.signal,
  };
  return { root, around, said, stop };
}

/** A program that stands for a browser or for Electron; it notes its words. */
async function program(path: string, body: string): Promise<string> {
  await mkdir(dirname(path), { recursive: true });
  const head = `#!${process.execPath}\nconst fs = require("node:fs");\nconst words = process.argv.slice(2);\n`;
  const note = `fs.writeFileSync(${JSON.stringify(`${path}.words`)}, JSON.stringify(words));\n`;
  await writeFile(path, head + note + body);
  await chmod(path, 0o755);
  return path;
}

const wordsOf = async (path: string): Promise<string[]> =>
  JSON.parse(await readFile(`${path}.words`, "utf8")) as string[];

const FETCH = `
const app = words.find((word) => word.startsWith("--app=")).slice(6);
fetch(app).then(async (page) => {
  if ((await page.text()) !== "<p>page") process.exit(3);
});
`;

const addressIn = (line: string | undefined): string => /http:\S+/.exec(line ?? "")?.[0] ?? "";

describe("Electron's runtime", () => {
  it("is found where its package keeps it, and never fetched", async () => {
    const root = await temporaryFolder();
    const folder = join(root, "node_modules", "electron");
    await mkdir(join(folder, "dist"), { recursive: true });
    expect(electronRuntime(root)).toMatchObject({ why: expect.stringContaining("not here") });
    await writeFile(join(folder, "path.txt"), "electron");
    expect(electronRuntime(root)).toHaveProperty("why");
    await writeFile(join(folder, "dist", "electron"), "");
    expect(electronRuntime(root)).toEqual({ binary: join(folder, "dist", "electron") });
    expect(await readdir(folder)).toEqual(["dist", "path.txt"]);
  });
});

describe.runIf(process.platform !== "win32")("npm start", () => {
  it("serves only, until it is stopped", async () => {
    const { around, said, stop } = await project();
    const done = start(["--no-open"], around);
    await expect.poll(() => said).toHaveLength(1);
    const page = await fetch(addressIn(said[0]));
    expect(await page.text()).toBe("<p>page");
    stop.abort();
    expect(await done).toBe(0);
    await expect(fetch(addressIn(said[0]))).rejects.toThrow();
    expect(said).toHaveLength(1);
  });

  it("opens a browser where Electron is missing, and ends with its window", async () => {
    const { root, around, said } = await project();
    const browser = await program(join(root, "browser"), FETCH);
    expect(await start([], { ...around, env: { ...around.env, CHROME_PATH: browser }, uid: 0 })).toBe(0);
    expect(said).toHaveLength(1);
    expect(said[0]).toMatch(/Electron's runtime is not here.*http:\/\/127\.0\.0\.1:\d+\/$/);
    const words = await wordsOf(browser);
    expect(words).toContain("--no-sandbox");
    const profile = words.find((word) => word.startsWith("--user-data-dir="))?.slice(16) ?? "";
    await expect(readdir(profile)).rejects.toThrow();
  });

  it("ends its browser when it is stopped", async () => {
    const { root, around, stop } = await project();
    const browser = await program(join(root, "browser"), "setInterval(() => {}, 1000);\n");
    const done = start([], { ...around, env: { ...around.env, CHROME_PATH: browser } });
    await expect.poll(() => wordsOf(browser).catch(() => [])).not.toHaveLength(0);
    expect(await wordsOf(browser)).not.toContain("--no-sandbox");
    stop.abort();
    expect(await done).toBe(0);
  });

  it("prints the address when a browser does not start", async () => {
    const { root, around, said, stop } = await project();
    const browser = await program(join(root, "browser"), "process.exit(1);\n");
    const done = start([], { ...around, env: { ...around.env, CHROME_PATH: browser } });
    await expect.poll(() => said.join()).toMatch(/did not start; open it yourself: http/);
    expect((await fetch(addressIn(said[1]))).status).toBe(200);
    stop.abort();
    expect(await done).toBe(0);
  });

  it("prints the address where no browser and where no screen is", async () => {
    for (const env of [{}, { DISPLAY: "" }]) {
      const { around, said, stop } = await project(env);
      const done = start([], around);
      await expect.poll(() => said.join()).toMatch(/open in a browser: http/);
      stop.abort();
      expect(await done).toBe(0);
    }
  });

  it("runs Electron where it is, with the project's folder and files", async () => {
    const { root, around, said } = await project();
    const electron = await program(join(root, "node_modules", "electron", "dist", "electron"), "");
    expect(await start(["a.trishaft.json"], around)).toBe(0);
    expect(await wordsOf(electron)).toEqual([root, "a.trishaft.json"]);
    expect(said).toEqual([]);
    await start([], { ...around, uid: 0 });
    expect(await wordsOf(electron)).toEqual(["--no-sandbox", root]);
  });

  it("turns to a browser when Electron does not start", async () => {
    const { root, around, said } = await project();
    await program(join(root, "node_modules", "electron", "dist", "electron"), "process.exit(7);\n");
    const browser = await program(join(root, "browser"), FETCH);
    expect(await start([], { ...around, env: { ...around.env, CHROME_PATH: browser } })).toBe(0);
    expect(said[0]).toMatch(/^Electron did not start \(exit code 7\)/);
  });

  it("refuses an option that it does not know", async () => {
    const { around, said } = await project();
    expect(await start(["--no-opne"], around)).toBe(2);
    expect(said[0]).toMatch(/Unknown option --no-opne/);
  });

  it("fails when there is no page", async () => {
    const { around } = await project();
    const root = await temporaryFolder();
    await expect(start(["--no-open"], { ...around, root })).rejects.toThrow(/no page/);
  });
});
