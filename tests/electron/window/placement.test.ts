import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { windowOptions } from "../../../electron/window/options.ts";
import { type Box, LEAST, placeWindow } from "../../../electron/window/placement.ts";

const main: Box = { x: 0, y: 25, width: 1920, height: 1055 };
const right: Box = { x: 1920, y: 0, width: 2560, height: 1440 };
const saved = (x: number, y: number, width = 1400, height = 900) => ({
  bounds: { x, y, width, height },
  maximized: false,
  fullScreen: false,
});

describe("the window's place", () => {
  it("is the middle of the main display at first", () => {
    expect(placeWindow(null, [main, right])).toEqual({ x: 160, y: 103, width: 1600, height: 900 });
  });

  it("is where it was", () => {
    expect(placeWindow(saved(100, 60), [main, right])).toEqual({ x: 100, y: 60, width: 1400, height: 900 });
    expect(placeWindow(saved(2000, 60), [main, right]).x).toBe(2000);
  });

  it("is drawn in when it stuck out", () => {
    expect(placeWindow(saved(-300, -50), [main])).toEqual({ x: 0, y: 25, width: 1400, height: 900 });
    expect(placeWindow(saved(1000, 800), [main])).toMatchObject({ x: 520, y: 180 });
  });

  it("is the main display when the other one is gone", () => {
    expect(placeWindow(saved(2500, 300), [main])).toMatchObject({ x: 260, width: 1400 });
  });

  it("is made smaller for a smaller display, but not below the least", () => {
    expect(placeWindow(saved(0, 25, 4000, 3000), [main])).toEqual(main);
    expect(placeWindow(saved(0, 0, 100, 100), [main])).toMatchObject(LEAST);
    expect(placeWindow(null, [{ x: 0, y: 30, width: 1024, height: 600 }])).toEqual({ x: 0, y: 30, ...LEAST });
  });

  it("always shows its upper left corner and its least size", () => {
    const number = fc.integer({ min: -10_000, max: 10_000 });
    const size = fc.integer({ min: 1, max: 10_000 });
    fc.assert(
      fc.property(number, number, size, size, (x, y, width, height) => {
        const box = placeWindow(saved(x, y, width, height), [main, right]);
        const home = [main, right].find(
          (area) =>
            box.x >= area.x && box.x < area.x + area.width && box.y >= area.y && box.y < area.y + area.height,
        );
        expect(home).toBeDefined();
        expect(box.width).toBeGreaterThanOrEqual(LEAST.width);
        expect(box.height).toBeGreaterThanOrEqual(LEAST.height);
      }),
      { seed: 99 },
    );
  });
});

describe("the window's rights", () => {
  it("are none", () => {
    expect(windowOptions(main, "/p/preload.cjs", false).webPreferences).toMatchObject({
      preload: "/p/preload.cjs",
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      webviewTag: false,
    });
    expect(windowOptions(main, "", true)).toMatchObject({ minWidth: 1280, minHeight: 720 });
  });
});
