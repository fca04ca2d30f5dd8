import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";

const root = join(import.meta.dirname, "..", "..");

/** Source files of a room with their text, by their paths from the root. */
function texts(room: string): { path: string; text: string }[] {
  return readdirSync(join(root, room), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name))
    .map((full) => ({
      path: full.slice(root.length + 1).replaceAll("\\", "/"),
      text: readFileSync(full, "utf8"),
    }));
}

const using = (room: string, pattern: RegExp): string[] =>
  texts(room)
    .filter(({ text }) => pattern.test(text))
    .map(({ path }) => path);

describe("the bridge's boundaries", () => {
  it("one file touches ipcMain, one the page's side of Electron", () => {
    expect(using("electron", /\bipcMain\b/)).toEqual(["electron/main.ts"]);
    expect(using("electron", /\b(ipcRenderer|contextBridge)\b/)).toEqual(["electron/preload.ts"]);
  });

  it("the page imports the chooser only, and never Electron", () => {
    const outside = texts("renderer").filter(({ path }) => !path.startsWith("renderer/bridge/"));
    const wrong = outside.filter(({ text }) =>
      /from\s+"[^"]*bridge\/(?!chooser\.ts|jitless\.ts)[^"]*"/.test(text),
    );
    expect(wrong.map(({ path }) => path)).toEqual([]);
    expect(using("renderer", /from\s+"(electron|node:[^"]*)"/)).toEqual([]);
  });

  it("both implementations are checked against the one interface", () => {
    const checked = using("electron", /satisfies DesktopBridge/).concat(
      using("renderer", /satisfies DesktopBridge/),
    );
    expect(checked).toEqual(
      expect.arrayContaining(["electron/bridge.ts", "electron/preload.ts", "renderer/bridge/browser.ts"]),
    );
  });

  it("no decision is made by how an address begins", () => {
    expect(using("electron/policy", /\.startsWith\("(app|http)/)).toEqual([]);
  });
});
