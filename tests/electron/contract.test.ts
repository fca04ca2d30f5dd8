import { describe, expect, it } from "vitest";
import type { FileKind, Result } from "../../shared/bridge.ts";
import { MAX_PROJECT_BYTES, MENU_COMMANDS } from "../../shared/bridge.ts";
import { REQUESTS } from "../../shared/bridge-messages.ts";
import type { BridgeWorld } from "./support/bridge-world.ts";
import { browserWorld } from "./support/browser-world.ts";
import { desktopWorld } from "./support/desktop-world.ts";

/** Every implementation of the bridge, and whether it writes where a person chose. */
const WORLDS: readonly [string, boolean, () => Promise<BridgeWorld>][] = [
  ["the desktop program", true, desktopWorld],
  ["a browser with File System Access", true, async () => browserWorld(true)],
  ["a browser with downloads", false, async () => browserWorld(false)],
];

const CSV: FileKind = { title: "Table", mime: "text/csv", extensions: ["csv"] };
const NAME = "lesson.trishaft.json";

function okValue<T>(result: Result<T>): T {
  if (result.status !== "ok") throw new Error(`not ok: ${JSON.stringify(result)}`);
  return result.value;
}

/** The result must be a fault that says what, where and what instead. */
function expectFault(result: Result<unknown>, what: RegExp): void {
  if (result.status !== "failed") throw new Error(`not failed: ${JSON.stringify(result)}`);
  expect(result.fault.what).toMatch(what);
  expect(result.fault.where).not.toBe("");
  expect(result.fault.accepted).not.toBe("");
}

describe.each(WORLDS)("the bridge of %s", (_name, choosesPlace, makeWorld) => {
  it("opens a chosen file", async () => {
    const world = await makeWorld();
    await world.put(NAME, "{ÄÖ}");
    world.answerWith(NAME);
    expect(okValue(await world.bridge.open())).toMatchObject({ name: NAME, text: "{ÄÖ}" });
  });

  it("says when a person thought better of it", async () => {
    const world = await makeWorld();
    world.answerWith(null);
    expect(await world.bridge.open()).toEqual({ status: "cancelled" });
    if (!choosesPlace) return;
    world.answerWith(null);
    expect(await world.bridge.saveAs({ suggestedName: NAME, text: "" })).toEqual({ status: "cancelled" });
    expect(okValue(await world.bridge.recentFiles())).toEqual([]);
  });

  it("refuses a file that is no text", async () => {
    const world = await makeWorld();
    await world.put(NAME, Uint8Array.of(0x7b, 0xff, 0xfe));
    world.answerWith(NAME);
    expectFault(await world.bridge.open(), /not text/);
  });

  it("refuses a file that is too large", async () => {
    const world = await makeWorld();
    await world.put(NAME, new Uint8Array(MAX_PROJECT_BYTES + 1));
    world.answerWith(NAME);
    expectFault(await world.bridge.open(), /too large/);
  });

  it("saves an opened file under its id", async () => {
    const world = await makeWorld();
    await world.put(NAME, "old");
    world.answerWith(NAME);
    const { id } = okValue(await world.bridge.open());
    expect(okValue(await world.bridge.save({ id, text: "new" }))).toMatchObject({ id, name: NAME });
    expect(await world.contentOf(NAME)).toBe("new");
    expect(okValue(await world.bridge.openRecent(id)).text).toBe("new");
  });

  it("does not write over what another window has written meanwhile; under a chosen name it does", async () => {
    if (!choosesPlace) return;
    const world = await makeWorld();
    await world.put(NAME, "old");
    world.answerWith(NAME);
    const { id } = okValue(await world.bridge.open());
    await world.put(NAME, "by another window");
    expectFault(await world.bridge.save({ id, text: "mine" }), /changed elsewhere/);
    expect(await world.contentOf(NAME)).toBe("by another window");
    world.answerWith(NAME);
    okValue(await world.bridge.saveAs({ suggestedName: NAME, text: "mine" }));
    expect(await world.contentOf(NAME)).toBe("mine");
    okValue(await world.bridge.save({ id, text: "mine again" }));
    await world.vanish(NAME);
    okValue(await world.bridge.save({ id, text: "still mine" }));
    expect(await world.contentOf(NAME)).toBe("still mine");
  });

  it("saves under a chosen name and then again", async () => {
    const world = await makeWorld();
    if (choosesPlace) world.answerWith("suggested");
    const { id, name } = okValue(await world.bridge.saveAs({ suggestedName: NAME, text: "one" }));
    expect(name).toBe(NAME);
    expect(await world.contentOf(NAME)).toBe("one");
    okValue(await world.bridge.save({ id, text: "two" }));
    expect(await world.contentOf(NAME)).toBe("two");
  });

  it("refuses to save under an id it never gave", async () => {
    const world = await makeWorld();
    expectFault(await world.bridge.save({ id: "/etc/hosts", text: "" }), /not chosen/);
    expectFault(await world.bridge.openRecent("nothing"), /not chosen/);
  });

  it("lists recent files, newest first, each once, and forgets one", async () => {
    const world = await makeWorld();
    for (const name of ["a.json", "b.json", "c.json"]) {
      await world.put(name, name);
      world.answerWith(name);
      okValue(await world.bridge.open());
    }
    const names = async (): Promise<string[]> =>
      okValue(await world.bridge.recentFiles()).map((file) => file.name);
    expect(await names()).toEqual(["c.json", "b.json", "a.json"]);
    const [, second] = okValue(await world.bridge.recentFiles());
    okValue(await world.bridge.openRecent(second?.id ?? ""));
    expect(await names()).toEqual(["b.json", "c.json", "a.json"]);
    const left = okValue(await world.bridge.forgetRecent(second?.id ?? ""));
    expect(left.map((file) => file.name)).toEqual(["c.json", "a.json"]);
    expectFault(await world.bridge.openRecent(second?.id ?? ""), /not chosen/);
    expect(await world.contentOf("b.json")).toBe("b.json");
  });

  it("knows a file that is opened twice", async () => {
    const world = await makeWorld();
    await world.put(NAME, "x");
    world.answerWith(NAME);
    const first = okValue(await world.bridge.open());
    world.answerWith(NAME);
    const second = okValue(await world.bridge.open());
    if (choosesPlace) expect(second.id).toBe(first.id);
    expect(okValue(await world.bridge.recentFiles())).toHaveLength(choosesPlace ? 1 : 2);
  });

  it("refuses a recent file that vanished and takes it off the list", async () => {
    const world = await makeWorld();
    await world.put(NAME, "x");
    world.answerWith(NAME);
    const { id } = okValue(await world.bridge.open());
    await world.vanish(NAME);
    expectFault(await world.bridge.openRecent(id), /no longer there/);
    expect(okValue(await world.bridge.recentFiles())).toEqual([]);
  });

  it("exports text and bytes", async () => {
    const world = await makeWorld();
    if (choosesPlace) world.answerWith("suggested");
    const table = { suggestedName: "run.csv", kinds: [CSV], content: "time_s\n0\n" };
    expect(okValue(await world.bridge.exportFile(table)).name).toBe("run.csv");
    expect(await world.contentOf("run.csv")).toBe("time_s\n0\n");
    if (choosesPlace) world.answerWith("suggested");
    const picture = { suggestedName: "a.csv", kinds: [CSV], content: Uint8Array.of(65, 66) };
    okValue(await world.bridge.exportFile(picture));
    expect(await world.contentOf("a.csv")).toBe("AB");
    expect(okValue(await world.bridge.recentFiles())).toEqual([]);
  });

  it("says why it could not write", async () => {
    if (!choosesPlace) return;
    const world = await makeWorld();
    await world.put(NAME, "old");
    world.answerWith(NAME);
    const { id } = okValue(await world.bridge.open());
    await world.breakWriting();
    expectFault(await world.bridge.save({ id, text: "new" }), /folder|full/);
    world.answerWith("suggested");
    expectFault(
      await world.bridge.exportFile({ suggestedName: "a.csv", kinds: [CSV], content: "" }),
      /folder|full/,
    );
  });

  it("prints", async () => {
    const world = await makeWorld();
    if (choosesPlace) world.answerWith("suggested");
    const printed = await world.bridge.printToPdf({ suggestedName: "sheet.pdf", landscape: true });
    expect(okValue(printed).name).toBe("sheet.pdf");
  });

  it("reveals a file exactly if it says so", async () => {
    const world = await makeWorld();
    await world.put(NAME, "x");
    world.answerWith(NAME);
    const { id } = okValue(await world.bridge.open());
    const { reveals } = okValue(await world.bridge.windowInfo());
    const result = await world.bridge.reveal(id);
    if (reveals) expect(result).toEqual({ status: "ok", value: null });
    else expectFault(result, /cannot show/);
    expectFault(await world.bridge.reveal("nothing"), /not chosen|cannot show/);
  });

  it("tells of menu commands until nobody listens", async () => {
    const world = await makeWorld();
    const told: string[] = [];
    const stop = world.bridge.onMenu((command) => told.push(command));
    world.command("save");
    world.command("save-as");
    stop();
    world.command("open");
    expect(told).toEqual(["save", "save-as"]);
    expect(MENU_COMMANDS).toEqual(expect.arrayContaining(told));
  });

  it("gives the answers its schemas describe", async () => {
    const { bridge } = await makeWorld();
    expect(REQUESTS.windowInfo.answer.safeParse(await bridge.windowInfo()).success).toBe(true);
    expect(REQUESTS.recentFiles.answer.safeParse(await bridge.recentFiles()).success).toBe(true);
    expect(okValue(await bridge.windowInfo()).version).toBe("1.2.3");
  });

  it("can stop listening for files", async () => {
    const { bridge } = await makeWorld();
    expect(bridge.onOpenFile(() => {})()).toBeUndefined();
  });
});
