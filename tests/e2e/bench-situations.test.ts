import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { en } from "../../renderer/texts/en.ts";
import { SHAFTS, type Shaft } from "../../sim/bench/shafts.ts";
import { givenSpeeds, SITUATIONS, type Situation } from "../../sim/bench/situations.ts";
import { ServedApp } from "./app.ts";
import {
  cardSpeed,
  expectGearEquation,
  gearSetDrawn,
  load,
  NAMES,
  role,
  shownNumber,
  slider,
  speedOf,
  speedsOf,
  type,
} from "./bench-page.ts";
import { pictured, settled } from "./settled.ts";

// Software drawing beside other tests is slow.
vi.setConfig({ testTimeout: 240_000 });

let app: ServedApp;
let page: Page;
let errors: readonly string[];
beforeAll(async () => {
  app = await ServedApp.start();
  ({ page, errors } = await app.open(1600, 900));
}, 240_000);
afterAll(() => app?.stop());

const nameOf = ({ id }: Situation): string => en.situations[id].name;
const sentence = (): Promise<string | null> => page.locator(".say h3").textContent();

/** What the button made of each situation, for the other two ways to be held against. */
const byButton = new Map<string, { readonly sentence: string | null; readonly sun: number }>();

/** Clicks into the canvas until the part under it is the sun. */
async function pickSun(): Promise<void> {
  const box = await page.getByRole("img", { name: /three dimensions/ }).boundingBox();
  if (!box) throw new Error("no canvas");
  for (const [x, y] of [
    [0.5, 0.42],
    [0.47, 0.5],
    [0.5, 0.5],
    [0.55, 0.45],
    [0.45, 0.42],
  ] as const) {
    await page.mouse.click(box.x + x * box.width, box.y + y * box.height);
    await pictured(page);
    if ((await page.locator(".part-line").textContent())?.startsWith(NAMES.sun)) return;
  }
  throw new Error("the sun is not under any of the points");
}

/** Drags a handle of the lever line until it stands at a speed. @returns rev/min a px */
async function drag(shaft: Shaft, target: number): Promise<number> {
  const before = await speedOf(page, shaft);
  const box = await slider(page, shaft).boundingBox();
  if (!box) throw new Error("no handle");
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  const towards = target > before ? -1 : 1;
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x, y + 12 * towards);
  await pictured(page);
  const perPixel = Math.abs((await speedOf(page, shaft)) - before) / 12;
  if (perPixel > 0) await page.mouse.move(x, y + (Math.abs(target - before) / perPixel) * towards);
  await pictured(page);
  await page.mouse.up();
  return perPixel;
}

async function typeTorques({ engineTorque, outputTorque }: Situation): Promise<void> {
  await type(page, "Engine torque, typed", String(engineTorque));
  const matched = page.getByRole("checkbox", { name: "matched" });
  if (outputTorque === null) await matched.check();
  else await type(page, "Output machine, typed", String(outputTorque));
}

describe("every situation of the bench", () => {
  it("is reached by its button, with the same numbers in card, lever line, 3D pick and working", async () => {
    await gearSetDrawn(page);
    await pickSun();
    const seen = new Set<string>();
    for (const one of SITUATIONS) {
      await load(page, nameOf(one));
      const speeds = await speedsOf(page);
      expectGearEquation(speeds);
      for (const { shaft, rpm } of one.given) expect(speeds[shaft], one.id).toBe(rpm);
      for (const shaft of SHAFTS) expect(await cardSpeed(page, shaft), one.id).toBe(speeds[shaft]);
      const picked = async () =>
        shownNumber(((await page.locator(".part-line").textContent()) ?? "").split(", ")[1] ?? "");
      await expect.poll(picked, { message: one.id }).toBe(speeds.sun);
      const { follower } = givenSpeeds(one);
      await page.getByRole("button", { name: new RegExp(`^${NAMES[follower]} speed`) }).click();
      await expect
        .poll(async () => shownNumber(await page.locator(".working .result").textContent()), {
          message: one.id,
        })
        .toBe(speeds[follower]);
      await page.keyboard.press("Escape");
      const told = await slider(page, follower).getAttribute("aria-valuetext");
      expect(shownNumber(told), one.id).toBe(speeds[follower]);
      byButton.set(one.id, { sentence: await sentence(), sun: speeds.sun });
      seen.add(JSON.stringify(speeds));
    }
    expect(seen.size).toBe(SITUATIONS.length);
    expect(errors).toEqual([]);
  });

  it("is reached by typing, and the app knows it again", async () => {
    for (const one of SITUATIONS) {
      const { follower } = givenSpeeds(one);
      await role(page, follower, "Follow").click();
      // A limit may stop the first on its way until the second has moved.
      for (const { shaft, rpm } of [...one.given, one.given[0]]) {
        await type(page, `${NAMES[shaft]} speed, typed`, String(rpm));
      }
      await typeTorques(one);
      const button = page.getByRole("button", { name: nameOf(one), exact: true });
      await expect
        .poll(() => button.getAttribute("aria-pressed"), { message: one.id, timeout: 5000 })
        .toBe("true");
      const { sentence: told, sun } = byButton.get(one.id) ?? {};
      await expect.poll(sentence, { message: one.id }).toBe(told);
      await expect.poll(() => speedOf(page, "sun"), { message: one.id }).toBe(sun);
    }
  });

  it("is reached by dragging the handles of the lever line, held shafts by Hold", async () => {
    for (const one of SITUATIONS) {
      const { follower } = givenSpeeds(one);
      await role(page, follower, "Follow").click();
      for (const { shaft, rpm } of [...one.given, one.given[0]]) {
        const off = Math.abs((await speedOf(page, shaft)) - rpm);
        if (off === 0) continue;
        if (rpm === 0) await role(page, shaft, "Hold").click();
        else {
          const perPixel = await drag(shaft, rpm);
          const left = Math.abs((await speedOf(page, shaft)) - rpm);
          expect(Math.min(left, off), `${one.id}, ${shaft}`).toBeLessThanOrEqual(Math.max(perPixel, 50));
        }
      }
      await typeTorques(one);
      await settled(page);
      for (const { shaft, rpm } of one.given) {
        expect(Math.abs((await speedOf(page, shaft)) - rpm), `${one.id}, ${shaft}`).toBeLessThanOrEqual(50);
        expect(await cardSpeed(page, shaft), one.id).toBe(await speedOf(page, shaft));
      }
      expectGearEquation(await speedsOf(page));
      // One to one is one speed in a thousand: a hand comes close, the sentence then names its neighbours.
      if (one.id !== "one-to-one") expect(await sentence(), one.id).toBe(byButton.get(one.id)?.sentence);
    }
    expect(errors).toEqual([]);
  });

  it("is left by dragging the whole line, which shifts all three alike", async () => {
    await load(page, "one to one");
    const before = await speedsOf(page);
    const line = page.getByRole("slider", { name: /Whole line/ });
    const box = await line.boundingBox();
    if (!box) throw new Error("no line");
    const [x, y] = [box.x + box.width * 0.4, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x, y - 15, { steps: 3 });
    await page.mouse.up();
    await settled(page);
    const after = await speedsOf(page);
    expect(after.sun).toBeGreaterThan(before.sun);
    for (const shaft of SHAFTS) expect(after[shaft] - before[shaft]).toBeCloseTo(after.sun - before.sun, -1);
    await page.getByRole("button", { name: "Undo" }).click();
    await expect.poll(() => speedsOf(page)).toEqual(before);
  });

  it("says why a move stopped at a limit", async () => {
    await load(page, "engine pull-away");
    await type(page, "Carrier speed, typed", "9000");
    await expect.poll(sentence).toMatch(/top speed/);
    await load(page, "electric pull-away");
    await type(page, "Carrier speed, typed", "-200");
    await expect.poll(sentence).toBe("The engine never turns backward");
    await expect.poll(() => speedOf(page, "carrier")).toBe(0);
  });

  it("shows that the torques on the line have neither sum nor moment", async () => {
    await load(page, "sun backward");
    await page.getByRole("button", { name: /Sun torque .*: sum and moment/ }).click();
    const results = async () => (await page.locator(".working .result").allTextContents()).map(shownNumber);
    await expect.poll(results).toEqual([0, 0]);
    await page.keyboard.press("Escape");
  });
});
