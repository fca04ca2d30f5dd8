import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { APP_PAGE } from "../../electron/policy/origin.ts";
import { fakeElectron } from "./support/fake-electron.ts";

/** The main process's own wiring, with every part of Electron played: the real one needs `npm run test:desktop`. */
const folder = mkdtempSync(join(tmpdir(), "trishaft-main-"));
const electron = fakeElectron(join(folder, "settings"));
vi.doMock("electron", () => electron);

const call = (name: string, ...args: unknown[]): unknown =>
  (electron.handlers.get(name) as ((...all: unknown[]) => unknown) | undefined)?.(...args);
const page = { senderFrame: { url: APP_PAGE, parent: null } };
const ask = (request: string, payload: unknown = null, caller: unknown = page) =>
  call("trishaft:request", caller, { request, payload });
const firstWindow = () => {
  const [window] = electron.windows;
  if (!window) throw new Error("no window was opened");
  return window;
};

beforeAll(async () => {
  await import("../../electron/main.ts");
  await vi.waitFor(() => expect(electron.windows).toHaveLength(1));
});
afterAll(() => rmSync(folder, { recursive: true }));

describe("the main process", () => {
  it("opens one window on our own page, without rights", () => {
    expect(firstWindow().loaded).toEqual([APP_PAGE]);
    expect(firstWindow().options).toMatchObject({
      webPreferences: { sandbox: true, contextIsolation: true },
    });
    expect(electron.handlers.has("sandbox")).toBe(true);
    expect(electron.handlers.has("scheme app")).toBe(true);
  });

  it.each(["will-navigate", "will-frame-navigate", "will-redirect"])("refuses %s elsewhere", (name) => {
    const go = (url: string): number => {
      const event = { url, preventDefault: vi.fn() };
      firstWindow().webContents.emit(name, event);
      return event.preventDefault.mock.calls.length;
    };
    expect(go("https://example.org/")).toBe(1);
    expect(go(APP_PAGE)).toBe(0);
  });

  it("refuses windows, embedded views, downloads and certificates", () => {
    expect((firstWindow().opener as () => unknown)()).toEqual({ action: "deny" });
    const event = { preventDefault: vi.fn() };
    firstWindow().webContents.emit("will-attach-webview", event);
    electron.session.defaultSession.emit("will-download", event);
    const answer = vi.fn();
    electron.app.emit("certificate-error", event, null, "", "", null, answer);
    expect(event.preventDefault).toHaveBeenCalledTimes(3);
    expect(answer).toHaveBeenCalledWith(false);
  });

  it("refuses every permission", () => {
    const answer = vi.fn();
    call("permission request", null, "media", answer);
    expect(answer).toHaveBeenCalledWith(false);
    expect(call("permission check", null, "media")).toBe(false);
    expect(call("device", {})).toBe(false);
    call("display media", {}, answer);
    expect(answer).toHaveBeenLastCalledWith({});
  });

  it("answers our page through the door, and nobody else", async () => {
    expect(await ask("windowInfo")).toMatchObject({
      status: "ok",
      value: { version: "1.2.3", reveals: true },
    });
    expect(await ask("open")).toEqual({ status: "cancelled" });
    expect(await ask("saveAs", { suggestedName: "a", text: "" })).toEqual({ status: "cancelled" });
    const foreign = { senderFrame: { url: "https://example.org/", parent: null } };
    await expect(ask("windowInfo", null, foreign)).rejects.toThrow(/foreign origin/);
  });

  it("serves nothing outside the page's folder", async () => {
    const get = async (url: string) => (await call("scheme app", { method: "GET", url })) as Response;
    expect((await get("app://trishaft/..%2fmain.js")).status).toBe(403);
    expect((await get("app://elsewhere/index.html")).status).toBe(403);
  });

  it("gives a second start's file to the page once it listens, and comes to the front", async () => {
    const path = join(folder, "a.trishaft.json");
    writeFileSync(path, "{}");
    electron.app.emit("second-instance", {}, ["trishaft", "a.trishaft.json"], folder);
    expect(firstWindow().focused).toBe(1);
    expect(firstWindow().sent).toEqual([]);
    await ask("ready");
    await expect.poll(() => firstWindow().sent).toHaveLength(1);
    expect(firstWindow().sent[0]).toMatchObject([
      "trishaft:open-file",
      { status: "ok", value: { name: "a.trishaft.json", text: "{}" } },
    ]);
    expect(await ask("recentFiles")).toMatchObject({ value: [{ name: "a.trishaft.json", folder }] });
    expect(electron.windows).toHaveLength(1);
  });

  it("asks before unsaved work is lost", () => {
    const leave = vi.fn();
    firstWindow().webContents.emit("will-prevent-unload", { preventDefault: leave });
    expect(leave).not.toHaveBeenCalled();
    electron.dialog.showMessageBoxSync = () => 0;
    firstWindow().webContents.emit("will-prevent-unload", { preventDefault: leave });
    expect(leave).toHaveBeenCalledOnce();
  });

  it("keeps the window's place, and ends only when that is written", async () => {
    const quit = vi.fn();
    electron.app.on("quit called", quit);
    firstWindow().emit("close");
    const event = { preventDefault: vi.fn() };
    electron.app.emit("will-quit", event);
    expect(event.preventDefault).toHaveBeenCalledOnce();
    await expect.poll(() => quit.mock.calls.length).toBe(1);
    electron.app.emit("will-quit", event);
    expect(event.preventDefault).toHaveBeenCalledOnce();
    const kept = readFileSync(join(folder, "settings", "settings.json"), "utf8");
    expect(JSON.parse(kept)).toMatchObject({ window: { bounds: { x: 5, width: 1300 }, maximized: true } });
  });
});
