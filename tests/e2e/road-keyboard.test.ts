import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { ServedApp } from "./app.ts";
import { shownNumber } from "./bench-page.ts";
import { focusedName, tabTo } from "./focus.ts";
import { readout } from "./road-page.ts";
import { projected } from "./settled.ts";

// Software drawing beside other tests is slow.
vi.setConfig({ testTimeout: 240_000 });

let app: ServedApp;
let page: Page;
let errors: readonly string[];
beforeAll(async () => {
  app = await ServedApp.start();
  ({ page, errors } = await app.open(1280, 720, { reducedMotion: true, flat: true }));
}, 240_000);
afterAll(() => app?.stop());

const time = (): Promise<number> =>
  page
    .getByRole("slider", { name: "Time", exact: true })
    .getAttribute("aria-valuenow")
    .then((now) => Number(now));

describe("Road by keys alone", () => {
  it("chooses, runs, goes to a moment, step by step and to both ends", async () => {
    await page.keyboard.press("2");
    // The heading stands there before the place is loaded.
    await page.getByRole("combobox", { name: "Cycle" }).waitFor();
    await tabTo(page, /^Cycle$/);
    await page.keyboard.type("brake");
    await expect.poll(() => page.getByRole("combobox", { name: "Cycle" }).inputValue()).toContain("brake");
    await tabTo(page, /^Run/);
    await page.keyboard.press("Enter");
    await page
      .getByRole("region", { name: /Moments/ })
      .getByRole("button")
      .first()
      .waitFor({ timeout: 60_000 });
    await tabTo(page, /^Time$/);
    for (const key of ["Home", "PageUp"]) await page.keyboard.press(key);
    await expect.poll(time).toBeGreaterThan(0);
    const moment = await time();
    await page.keyboard.press("ArrowRight");
    await expect.poll(time).toBeCloseTo(moment + 0.1, 6);
    await page.keyboard.press("End");
    await expect.poll(async () => shownNumber(await readout(page, "Speed", "road"))).toBeCloseTo(0, 1);
  });

  it("chooses a stretch, reads its figures and lets it go", async () => {
    await tabTo(page, /^Time$/);
    for (const key of ["Home", "s", "Shift+ArrowRight", "Shift+ArrowRight", "e"])
      await page.keyboard.press(key);
    const stretch = page.getByRole("region", { name: /Stretch/ });
    await stretch.waitFor();
    await page.keyboard.press("Escape");
    await stretch.waitFor({ state: "detached" });
  });

  it("shows the working of a number, and gives the focus back", async () => {
    const number = page
      .getByRole("table", { name: /^Shafts,/ })
      .getByRole("button")
      .first();
    await number.focus();
    const name = await focusedName(page);
    await page.keyboard.press("Enter");
    await expect.poll(() => number.getAttribute("aria-expanded")).toBe("true");
    await page.keyboard.press("Escape");
    await expect.poll(() => number.getAttribute("aria-expanded")).toBe("false");
    await expect.poll(() => focusedName(page)).toBe(name);
  });

  it("goes through the maps by arrows, and into the projector's look and out of it", async () => {
    await tabTo(page, /^Engine$/);
    await page.keyboard.press("ArrowRight");
    await expect.poll(() => focusedName(page)).toMatch(/^Sun m/);
    await page.keyboard.press("p");
    await projected(page, true);
    await page.keyboard.press("p");
    await projected(page, false);
    expect(errors).toEqual([]);
  });
});
