import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { ServedApp } from "./app.ts";
import { load, NAMES, role, shownNumber, slider, speedOf, speedsOf } from "./bench-page.ts";
import { tabTo } from "./focus.ts";
import { pictured, settled } from "./settled.ts";

// Software drawing beside other tests is slow.
vi.setConfig({ testTimeout: 240_000 });

let app: ServedApp;
let page: Page;
let errors: readonly string[];
beforeAll(async () => {
  app = await ServedApp.start();
  ({ page, errors } = await app.open(1280, 720, { flat: true }));
}, 240_000);
afterAll(() => app?.stop());

const press = async (...keys: readonly string[]): Promise<void> => {
  for (const key of keys) await page.keyboard.press(key);
  await pictured(page);
};

const counted = async (): Promise<readonly number[]> =>
  (
    await page
      .getByRole("row", { name: /^counted/ })
      .getByRole("button")
      .allTextContents()
  ).map((text) => shownNumber(text.replace(/^\D*turns/, "")));
const perCarrierTurn = async (): Promise<readonly number[]> =>
  (
    await page
      .getByRole("row", { name: /^per carrier turn/ })
      .getByRole("button")
      .allTextContents()
  ).map((text) => shownNumber(text.replace(/^.*carrier/, "")));

describe("the bench by keyboard alone", () => {
  it("moves a shaft by arrows, pages and Home, and takes it back", async () => {
    await tabTo(page, /^Carrier speed$/);
    await press("ArrowUp");
    await expect.poll(() => speedOf(page, "carrier")).toBe(2410);
    await press("Shift+ArrowUp");
    await expect.poll(() => speedOf(page, "carrier")).toBe(2510);
    await press("PageDown", "ArrowDown");
    await expect.poll(() => speedOf(page, "carrier")).toBe(2400);
    await press("Home");
    // The ring is at 1000 and the sun bears no more than 10 504 backward, so the carrier may come to rest.
    await expect.poll(() => speedOf(page, "carrier")).toBe(0);
    await press("Control+z");
    await expect.poll(() => speedOf(page, "carrier")).toBe(2400);
    await expect
      .poll(() => slider(page, "carrier").getAttribute("aria-valuetext"))
      .toMatch(/rev\/min, given/);
  });

  it("moves the whole line", async () => {
    await tabTo(page, /^Whole line/);
    const before = await speedsOf(page);
    await press("PageUp");
    await expect
      .poll(() => speedsOf(page))
      .toEqual({ sun: before.sun + 100, carrier: before.carrier + 100, ring: before.ring + 100 });
    await press("Control+z");
    await expect.poll(() => speedsOf(page)).toEqual(before);
  });

  it("shows sum and moment of the torques", async () => {
    await tabTo(page, /^Sun torque .*: sum and moment$/);
    await press("Enter");
    const results = async () => (await page.locator(".working .result").allTextContents()).map(shownNumber);
    await expect.poll(results).toEqual([0, 0]);
    await press("Escape");
    await expect.poll(() => page.locator(".working").count()).toBe(0);
  });

  it("opens the working of every number of the power paths", async () => {
    for (const name of [
      /^Carrier power 25\.1 kW$/,
      /^Sun power 17\.7 kW$/,
      /^Output machine torque 17\.7 kW$/,
      /^Ring power 7\.5 kW$/,
      /^Output power 25\.1 kW$/,
      /^Electrical share/,
    ]) {
      await tabTo(page, name);
      await press("Space");
      await expect.poll(() => page.locator(".working .result").count(), { message: String(name) }).toBe(1);
      await press("Escape");
      await expect.poll(() => page.locator(".working").count()).toBe(0);
    }
  });

  it("gives a shaft another role, types a speed with a unit, and leaves a bad one as it was", async () => {
    await role(page, "ring", "Hold").focus();
    await press("Enter");
    await expect.poll(() => speedOf(page, "ring")).toBe(0);
    await tabTo(page, /^Ring speed, typed$/);
    await page.keyboard.type("35 furlongs");
    await press("Enter");
    await expect.poll(() => page.getByRole("alert").textContent()).toMatch(/Unknown unit/);
    await press("Escape");
    await expect.poll(() => speedOf(page, "ring")).toBe(0);
    await page.keyboard.press("Control+a");
    await page.keyboard.type("104.72 rad/s");
    await press("Enter");
    await expect.poll(() => speedOf(page, "ring")).toBe(1000);
  });

  it("keeps every letter typed right after Enter, however late the next picture comes", async () => {
    await tabTo(page, /^Ring speed, typed$/);
    await page.evaluate(`window.ownFrame = window.requestAnimationFrame;
      window.late = [];
      window.requestAnimationFrame = (then) => window.late.push(then)`);
    await page.keyboard.press("Control+a");
    await page.keyboard.type("none");
    await page.keyboard.press("Enter");
    await page.keyboard.press("Escape");
    await page.keyboard.press("Control+a");
    await page.keyboard.type("104");
    await page.evaluate(`window.requestAnimationFrame = window.ownFrame;
      window.late.forEach((then) => then(performance.now()))`);
    await page.keyboard.type("72");
    await expect
      .poll(() => page.getByRole("textbox", { name: "Ring speed, typed" }).inputValue())
      .toBe("10472");
    await press("Escape");
    await page.keyboard.press("Control+a");
    await page.keyboard.type("900");
    await press("Enter");
    // Taken, the new number is selected: the next letter replaces it.
    await page.keyboard.type("1000");
    await press("Enter");
    await expect.poll(() => speedOf(page, "ring")).toBe(1000);
  });

  it("opens the working of full load, of the output machine's most, and of the battery", async () => {
    await load(page, "electric pull-away");
    for (const name of [/^Engine full load/, /^Output machine, most torque/, /^Output machine torque/]) {
      await page.getByRole("button", { name }).first().focus();
      await press("Enter");
      await expect.poll(() => page.locator(".working .result").count(), { message: String(name) }).toBe(1);
      await press("Escape");
      await expect.poll(() => page.locator(".working").count()).toBe(0);
    }
    await page.getByRole("button", { name: /^Battery power/ }).focus();
    await press("Enter");
    const result = async () => shownNumber(await page.locator(".working .result").textContent());
    await expect.poll(result).toBeCloseTo(15.7, 1);
    await press("Escape");
  });

  it("loads a situation, and tells in words what stands there", async () => {
    await tabTo(page, /^sun backward$/);
    await press("Enter");
    await expect.poll(() => speedOf(page, "sun")).toBe(-2000);
    await settled(page);
    const { sun } = await speedsOf(page);
    const words = (id: string): Promise<string | null> => page.locator(`#${id}`).textContent();
    expect(shownNumber(/Sun (.*?) rev/.exec((await words("lever-words")) ?? "")?.[1] ?? "")).toBe(sun);
    expect(await words("flow-words")).toMatch(/Sun machine .*Circulating power/);
    expect(await words("gear-words")).toMatch(/Sun .*Carrier .*Ring/);
  });

  it("counts 3.50 sun turns a carrier turn with the ring held, and 1.40 ring turns with the sun held", async () => {
    await load(page, "charging at rest");
    await page.locator("body").focus();
    await press("m");
    // The sun is the fastest and makes 1/48 of a turn a step.
    for (let i = 0; i < 168; i += 1) await page.keyboard.press("]");
    await expect.poll(counted).toEqual([3.5, 1, 0]);
    await expect.poll(perCarrierTurn).toEqual([3.5, 1, 0]);
    await load(page, "sun at rest");
    await press("m");
    for (let i = 0; i < 67; i += 1) await page.keyboard.press("]");
    await expect.poll(perCarrierTurn).toEqual([0, 1, 1.4]);
    const [sun, carrier, ring] = await counted();
    expect(sun).toBe(0);
    expect((ring ?? 0) / (carrier ?? 1)).toBeCloseTo(1.4, 1);
  });

  it("turns by the space bar, steps by [ and ], and stands still when nothing turns it", async () => {
    const turn = page.getByRole("button", { name: "Turn", exact: true });
    await load(page, "one to one");
    await page.evaluate(`document.activeElement.blur()`);
    const before = await counted();
    await press("Space");
    await expect.poll(async () => (await counted())[1], { timeout: 20_000 }).not.toBe(before[1]);
    await press("Space");
    await turn.waitFor();
    await pictured(page);
    const stopped = await counted();
    for (let i = 0; i < 4; i += 1) await pictured(page);
    expect(await counted()).toEqual(stopped);
    await press("[");
    await expect.poll(async () => (await counted())[1]).toBeLessThan(stopped[1] ?? 0);
  });

  it("gives each view the full height by its letter, and back by Esc", async () => {
    const views = { a: /Gear set/, b: /Lever line/, c: /Power paths/ };
    for (const [key, name] of Object.entries(views)) {
      await press(key);
      for (const other of Object.values(views)) {
        await expect
          .poll(() => page.getByRole("heading", { name: other }).count())
          .toBe(other === name ? 1 : 0);
      }
      const region = page.getByRole("region", { name });
      await expect.poll(async () => (await region.boundingBox())?.height).toBeGreaterThan(500);
      await press("Escape");
    }
    await expect.poll(() => page.getByRole("heading", { level: 2 }).count()).toBe(3);
    await page.getByRole("button", { name: "Enlarge view B" }).dblclick();
    await expect.poll(() => page.getByRole("heading", { level: 2 }).count()).toBe(1);
    await press("Escape");
    await page.getByRole("button", { name: "Enlarge view C" }).focus();
    await press("Enter", "Escape");
    await expect.poll(() => page.getByRole("heading", { level: 2 }).count()).toBe(3);
  });

  it("has a window with all keys, and closes it by Esc", async () => {
    await page.evaluate(`document.activeElement.blur()`);
    await press("?");
    await page.getByRole("dialog").getByText("set the marks").waitFor();
    await press("Escape");
    await expect.poll(() => page.getByRole("dialog").count()).toBe(0);
  });

  it("names what every button does", async () => {
    const names = await page.evaluate<string[]>(`[...document.querySelectorAll("button, [role=button]")]
      .map((one) => one.getAttribute("aria-label") ?? one.textContent)`);
    expect(names.filter((name) => !/[a-z]{3}/i.test(name))).toEqual([]);
    for (const name of Object.values(NAMES)) {
      expect(names.some((one) => one.startsWith(`${name} torque`))).toBe(true);
    }
    expect(errors).toEqual([]);
  });
});
