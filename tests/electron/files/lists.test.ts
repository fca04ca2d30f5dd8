import { writeFile } from "node:fs/promises";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { Grants } from "../../../electron/files/grants.ts";
import { filtersOf, withEnding } from "../../../electron/files/names.ts";
import { forget, MOST_RECENT, remember, sameNameOn } from "../../../electron/files/recent.ts";
import { PROJECT_KIND } from "../../../shared/bridge.ts";
import { temporaryFolder } from "../support/temporary.ts";

describe("recent files", () => {
  it("has the newest first, each once, and no more than its number", () => {
    const many = Array.from({ length: 15 }, (_, i) => `/p/${i}`);
    const list = many.reduce<string[]>((known, path) => remember(known, path), []);
    expect(list).toHaveLength(MOST_RECENT);
    expect(list[0]).toBe("/p/14");
    expect(remember(list, "/p/9").slice(0, 2)).toEqual(["/p/9", "/p/14"]);
    expect(remember(list, "/p/9")).toHaveLength(MOST_RECENT);
  });

  it("takes capitals as the system does", () => {
    expect(remember(["C:\\A.json"], "c:\\a.json", sameNameOn("win32"))).toEqual(["c:\\a.json"]);
    expect(remember(["/A"], "/a", sameNameOn("darwin"))).toEqual(["/a"]);
    expect(remember(["/A"], "/a", sameNameOn("linux"))).toEqual(["/a", "/A"]);
  });

  it("forgets one", () => {
    expect(forget(["/a", "/b"], "/a")).toEqual(["/b"]);
    expect(forget(["/a"], "/c")).toEqual(["/a"]);
  });
});

describe("granted files", () => {
  it("are found by the ids given out, and by no other", () => {
    const grants = new Grants();
    const one = grants.grant("/home/me/a.json");
    expect(one).toMatchObject({ name: "a.json", folder: "/home/me" });
    expect(grants.grant("/home/me/a.json").id).toBe(one.id);
    expect(grants.pathOf(one.id)).toBe("/home/me/a.json");
    expect(grants.pathOf("/home/me/a.json")).toBeUndefined();
  });
});

describe("the ending of a chosen name", () => {
  it("is added when it is missing", async () => {
    const folder = await temporaryFolder();
    expect(await withEnding(join(folder, "a"), [PROJECT_KIND])).toEqual({
      path: join(folder, "a.trishaft.json"),
    });
    for (const name of ["a.trishaft.json", "A.Trishaft.JSON", "a.json"]) {
      expect(await withEnding(join(folder, name), [PROJECT_KIND])).toEqual({ path: join(folder, name) });
    }
  });

  it("never replaces a file that nobody was asked about", async () => {
    const folder = await temporaryFolder();
    await writeFile(join(folder, "a.trishaft.json"), "");
    expect(await withEnding(join(folder, "a"), [PROJECT_KIND])).toMatchObject({
      fault: { where: join(folder, "a.trishaft.json") },
    });
  });

  it("is shown by its last part", () => {
    expect(filtersOf([PROJECT_KIND])).toEqual([{ name: "Trishaft project", extensions: ["json"] }]);
  });
});
