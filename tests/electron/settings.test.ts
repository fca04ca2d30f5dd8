import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { SettingsFile } from "../../electron/settings.ts";
import { temporaryFolder } from "./support/temporary.ts";

describe("the settings", () => {
  it("come back", async () => {
    const path = join(await temporaryFolder(), "settings.json");
    const first = new SettingsFile(path);
    expect(await first.load()).toEqual({ recent: [], window: null });
    const window = { bounds: { x: 1, y: 2, width: 1300, height: 800 }, maximized: true, fullScreen: false };
    first.set({ recent: ["/a"] });
    first.set({ window });
    expect(first.isWritten).toBe(false);
    await first.finished();
    expect(first.isWritten).toBe(true);
    expect(await new SettingsFile(path).load()).toEqual({ recent: ["/a"], window });
  });

  it.each([
    ["damaged", "{"],
    ["another's", '{"recent": 3}'],
    ["too new", '{"colour": "red"}'],
  ])("start afresh when the file is %s", async (_, text) => {
    const path = join(await temporaryFolder(), "settings.json");
    await writeFile(path, text);
    expect(await new SettingsFile(path).load()).toEqual({ recent: [], window: null });
    expect(await readFile(path, "utf8")).toBe(text);
  });

  it("never stop the program when they cannot be written", async () => {
    const settings = new SettingsFile(join(await temporaryFolder(), "gone", "settings.json"));
    settings.set({ recent: ["/a"] });
    await settings.finished();
    expect(settings.now.recent).toEqual(["/a"]);
  });
});
