import { readFile } from "node:fs/promises";
import type { Page } from "playwright-core";
import { expect } from "vitest";
import { shownNumber } from "./bench-page.ts";
import { pictured } from "./settled.ts";

/** Goes to Road by its key. */
export async function goToRoad(page: Page): Promise<void> {
  await page.keyboard.press("2");
  // The heading stands there before the place is loaded.
  await page.getByRole("combobox", { name: "Cycle" }).waitFor();
}

/** Chooses a cycle, runs it, and pauses it as soon as it plays. */
export async function runCycle(page: Page, cycle: string): Promise<void> {
  await page.getByRole("combobox", { name: "Cycle" }).selectOption(cycle);
  await page.getByRole("button", { name: /^Run/ }).click();
  await page.getByRole("button", { name: "Pause" }).click({ timeout: 60_000 });
  await page.getByRole("button", { name: "Play", exact: true }).waitFor();
}

const cursor = (page: Page) => page.getByRole("slider", { name: "Time", exact: true });

/** Puts the cursor on a row of the log, somewhere near a share of the drive. @returns the row */
export async function cursorNear(page: Page, share: number): Promise<number> {
  const { x, y, width, height } = await page.evaluate<Record<"x" | "y" | "width" | "height", number>>(
    "document.querySelector('.time-cursor').parentElement.getBoundingClientRect().toJSON()",
  );
  await page.mouse.click(x + 2 + share * (width - 4), y + height / 2);
  // A frame on is a whole row.
  await cursor(page).press("ArrowRight");
  await pictured(page);
  return Math.round(Number(await cursor(page).getAttribute("aria-valuenow")) * 10);
}

/** A value of the readouts at the cursor, as it is shown. */
export const readout = async (page: Page, plot: string, name: string): Promise<string> =>
  (await page
    .getByRole("table", { name: new RegExp(`^${plot},`) })
    .getByRole("row", { name: new RegExp(`^${name} `) })
    .getByRole("button")
    .textContent()) ?? "";

/** Every value of the readouts at the cursor, by the name of its reading. The first, where one stands twice. */
export async function readoutTexts(page: Page): Promise<ReadonlyMap<string, string>> {
  const cells = await page.evaluate<[string, string][]>(
    "[...document.querySelectorAll('.readouts [data-reading]')].map((cell) => [cell.dataset.reading, cell.textContent])",
  );
  return new Map(cells.reverse());
}

/** Speeds of the three shafts as the readouts show them, rev/min. */
export async function readoutSpeeds(page: Page) {
  const [sun, carrier, ring] = await Promise.all(
    ["sun", "carrier", "ring"].map(async (name) => shownNumber(await readout(page, "Shafts", name))),
  );
  return { sun, carrier, ring };
}

/** Every number of the flow sheet, kW, by the name of its flow. */
export async function flowTable(page: Page): Promise<ReadonlyMap<string, number>> {
  const cells = await page.evaluate<[string, string][]>(
    "[...document.querySelectorAll('td[data-flow]')].map((cell) => [cell.dataset.flow, cell.textContent])",
  );
  return new Map(cells.map(([id, text]) => [id, text.startsWith("<") ? 0 : shownNumber(text)]));
}

/** Saves the run and reads the file. */
export async function savedRun(page: Page, as: "csv" | "report"): Promise<string> {
  const download = page.waitForEvent("download");
  await page.getByRole("combobox", { name: "More" }).selectOption(as);
  const path = await (await download).path();
  expect(path).toBeTruthy();
  return readFile(path, "utf8");
}
