import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";
import { expect } from "vitest";
import { SHAFTS, type Shaft, type ShaftValues } from "../../sim/bench/shafts.ts";
import { settled } from "./settled.ts";

/** k of the demo compact: 100 / 40 teeth. */
export const K = 2.5;

/** A shaft's name on the screen. */
export const NAMES: Readonly<Record<Shaft, string>> = { sun: "Sun", carrier: "Carrier", ring: "Ring" };

/** A shown number: thin spaces and the true minus taken out; the first that the text holds. */
export function shownNumber(text: string | null): number {
  const plain = (text ?? "").replaceAll("\u202f", "").replaceAll("\u2212", "-");
  const found = /-?\d+(\.\d+)?/.exec(plain);
  return found ? Number(found[0]) : Number.NaN;
}

export const slider = (page: Page, shaft: Shaft) =>
  page.getByRole("slider", { name: `${NAMES[shaft]} speed`, exact: true });

export const card = (page: Page, shaft: Shaft) =>
  page.getByRole("region", { name: NAMES[shaft], exact: true });

/** Speed of a shaft as its handle on the lever line tells it, rev/min. */
export const speedOf = async (page: Page, shaft: Shaft): Promise<number> =>
  Number(await slider(page, shaft).getAttribute("aria-valuenow"));

/** All three. */
export async function speedsOf(page: Page): Promise<ShaftValues> {
  const [sun, carrier, ring] = await Promise.all(SHAFTS.map((shaft) => speedOf(page, shaft)));
  return { sun: sun ?? Number.NaN, carrier: carrier ?? Number.NaN, ring: ring ?? Number.NaN };
}

/** Speed of a shaft as its card shows it, typed or following, rev/min. */
export async function cardSpeed(page: Page, shaft: Shaft): Promise<number> {
  const typed = card(page, shaft).getByRole("textbox");
  if ((await typed.count()) > 0) return shownNumber(await typed.inputValue());
  return shownNumber(
    await card(page, shaft)
      .getByRole("button", { name: new RegExp(`^${NAMES[shaft]} speed`) })
      .textContent(),
  );
}

/** Each is told to a whole rev/min. */
export function expectGearEquation({ sun, carrier, ring }: ShaftValues, k = K): void {
  expect(Math.abs(sun + k * ring - (1 + k) * carrier)).toBeLessThanOrEqual(0.5 * (1 + k + 1 + k));
}

/** Loads a situation, and waits until the line has swept over. */
export async function load(page: Page, name: string): Promise<void> {
  const button = page.getByRole("button", { name, exact: true });
  await button.click();
  await expect.poll(() => button.getAttribute("aria-pressed")).toBe("true");
  await settled(page);
}

export const role = (page: Page, shaft: Shaft, name: "Drive" | "Hold" | "Follow") =>
  card(page, shaft).getByRole("button", { name, exact: true });

/** Types a number into a field and takes it. */
export async function type(page: Page, name: string, value: string): Promise<void> {
  const field = page.getByRole("textbox", { name, exact: true });
  await field.fill(value);
  await field.press("Enter");
}

/** Waits until the 3D view has drawn. */
export const gearSetDrawn = (page: Page): Promise<unknown> =>
  page.waitForFunction(`!document.querySelector(".canvas-note")`);

/** Serious and critical faults that axe-core finds on the page as it stands. */
export async function seriousFaults(page: Page): Promise<readonly string[]> {
  if (!(await page.evaluate("'axe' in window"))) {
    const path = createRequire(import.meta.url).resolve("axe-core/axe.min.js");
    await page.addScriptTag({ content: readFileSync(path, "utf8") });
  }
  return page.evaluate<string[]>(`axe.run({ resultTypes: ["violations"] }).then(({ violations }) => violations
    .filter(({ impact, id }) => impact === "serious" || impact === "critical" || id === "label-content-name-mismatch")
    .map(({ id, nodes }) => id + ": " + nodes.map(({ html }) => html).join(" ")))`);
}
