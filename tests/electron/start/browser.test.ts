import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { browserWords, findBrowser } from "../../../electron/start/browser.ts";

const only =
  (...paths: string[]) =>
  (path: string): boolean =>
    paths.includes(path);

describe("an installed browser", () => {
  it("is the one that CHROME_PATH names, and no other then", () => {
    const env = { CHROME_PATH: "/opt/mine", PATH: "/usr/bin" };
    expect(findBrowser("linux", env, () => true)).toBe("/opt/mine");
    expect(findBrowser("linux", env, only("/usr/bin/chromium"))).toBeNull();
  });

  it("is looked for where each system has it", () => {
    const chromium = join("/usr/bin", "chromium");
    expect(findBrowser("linux", { PATH: "/x:/usr/bin" }, only(chromium))).toBe(chromium);
    expect(findBrowser("darwin", {}, (path) => path.includes("Chromium"))).toMatch(/Chromium$/);
    expect(findBrowser("win32", { LOCALAPPDATA: "L" }, () => true)).toContain("L");
    expect(findBrowser("linux", {}, () => true)).toBeNull();
    expect(findBrowser("win32", {}, () => true)).toBeNull();
  });

  it("shows one page without a frame, in a profile of its own", () => {
    const words = browserWords("http://127.0.0.1:1/", "/tmp/p", false);
    expect(words).toContain("--app=http://127.0.0.1:1/");
    expect(words).toContain("--user-data-dir=/tmp/p");
    expect(words).not.toContain("--no-sandbox");
    expect(browserWords("x", "y", true)).toContain("--no-sandbox");
  });
});
