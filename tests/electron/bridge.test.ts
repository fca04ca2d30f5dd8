import { join, resolve } from "node:path";
import { describe, expect, it } from "vitest";
import { projectFileIn } from "../../electron/arguments.ts";
import { desktopBridge } from "../../electron/bridge.ts";
import { Pending } from "../../electron/pending.ts";
import { desktopWorld } from "./support/desktop-world.ts";

describe("a project file on the command line", () => {
  it("is the last one, from the starter's folder", () => {
    const folder = resolve("/home/me");
    expect(projectFileIn(["--flag", "a.trishaft.json", "sub/B.JSON"], folder)).toBe(
      join(folder, "sub", "B.JSON"),
    );
    expect(projectFileIn(["--file=a.json", "notes.txt"], folder)).toBeNull();
  });
});

describe("files that wait for the page", () => {
  it("are told when it listens: the last one of several", () => {
    const told: string[] = [];
    const pending = new Pending((path) => told.push(path));
    pending.add("/a");
    pending.add("/b");
    expect(told).toEqual([]);
    pending.resume();
    pending.add("/c");
    expect(told).toEqual(["/b", "/c"]);
    pending.pause();
    pending.add("/d");
    expect(told).toEqual(["/b", "/c"]);
    pending.resume();
    expect(told).toEqual(["/b", "/c", "/d"]);
  });
});

describe("the desktop bridge", () => {
  it("says that it listens, and tells of files from elsewhere", async () => {
    const world = await desktopWorld();
    const told: unknown[] = [];
    const stop = world.bridge.onOpenFile((file) => told.push(file));
    await expect.poll(world.readies).toBe(1);
    const file = { status: "ok", value: { id: "1", name: "a", folder: "/", text: "{}" } };
    world.sendFile(file);
    expect(told).toEqual([file]);
    expect(() => world.sendFile({ status: "ok", value: {} })).toThrow();
    stop();
    world.sendFile(file);
    expect(told).toEqual([file]);
  });

  it("passes on no command that it does not know", async () => {
    const world = await desktopWorld();
    const told: unknown[] = [];
    world.bridge.onMenu((command) => told.push(command));
    expect(() => world.wire.emit("trishaft:menu", {}, "format-disk")).toThrow();
    expect(told).toEqual([]);
  });

  it("refuses an answer that is none, and passes a refusal on", async () => {
    const silent = { on: () => {}, removeListener: () => {} };
    const strange = desktopBridge({ ...silent, invoke: async () => ({ status: "fine" }) });
    await expect(strange.open()).rejects.toThrow();
    const refusing = desktopBridge({
      ...silent,
      invoke: async () => {
        throw new Error("foreign origin");
      },
    });
    await expect(refusing.open()).rejects.toThrow("foreign origin");
  });

  it("shows the file that it was asked for, and no folder of the page's choice", async () => {
    const world = await desktopWorld();
    await world.put("a.json", "{}");
    world.answerWith("a.json");
    const opened = await world.bridge.open();
    if (opened.status !== "ok") throw new Error("not opened");
    await world.bridge.reveal(opened.value.id);
    expect(world.shown).toEqual([join(world.folder, "a.json")]);
  });
});
