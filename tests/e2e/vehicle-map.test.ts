import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { textFaults } from "../renderer/support/boxes.ts";
import { DOWNLOADS, type OpenPage, ServedApp } from "./app.ts";
import { seriousFaults } from "./bench-page.ts";
import { settled } from "./settled.ts";

// Software drawing beside other tests is slow.
vi.setConfig({ testTimeout: 120_000 });

let app: ServedApp;
const folder = mkdtempSync(join(tmpdir(), "vehicle-map-"));
beforeAll(async () => {
  app = await ServedApp.start();
}, 240_000);
afterAll(async () => {
  await app?.stop();
  rmSync(folder, { recursive: true });
});

const SPEEDS = [800, 2000, 3500, 5500];
const TORQUES = [10, 50, 100, 140];

/** An invented table in g/kWh that says nothing of its units. */
const TABLE = [
  "speed,torque,fuel",
  ...SPEEDS.flatMap((n) =>
    TORQUES.map((m) => `${n},${m},${(225 + 1500 / m + Math.abs(n - 2400) / 50).toFixed(1)}`),
  ),
].join("\n");

/** A page for each size and scheme; every test leaves the preset in force. */
const pages = new Map<string, OpenPage>();

/** Vehicle with a part in hand. */
async function openPart(width: number, height: number, scheme: "light" | "dark", part: string) {
  const key = `${width} ${scheme}`;
  const opened =
    pages.get(key) ??
    (await app.open(width, height, { scheme, before: DOWNLOADS, place: "vehicle", flat: true }));
  pages.set(key, opened);
  const { page } = opened;
  await expect.poll(() => inForce(page)).toBe("compact");
  await page.getByRole("combobox", { name: "Parts" }).selectOption({ label: part });
  return opened;
}

async function openMap(page: Page, name: string, text: string): Promise<void> {
  const path = join(folder, name);
  writeFileSync(path, text);
  const chooser = page.waitForEvent("filechooser");
  await page.getByRole("button", { name: "Map from CSV" }).click();
  await (await chooser).setFiles(path);
  await page.getByRole("heading", { name: `How ${name} is read` }).waitFor();
}

const inForce = (page: Page) => page.getByRole("combobox", { name: /^Vehicle/ }).inputValue();
const take = (page: Page) => page.getByRole("button", { name: "Take the map" });
const mapRow = (page: Page) => page.getByRole("region", { name: "Engine map" });

async function expectSound(page: Page): Promise<void> {
  await settled(page);
  expect(await textFaults(page)).toEqual([]);
  expect(await seriousFaults(page)).toEqual([]);
}

describe.each([
  [1280, 720, "dark"],
  [1600, 900, "light"],
] as const)("the engine's map from a table at %i × %i, %s", (width, height, scheme) => {
  it("shows its guesses, is drawn before it is taken, and is one step of undo", async () => {
    const { page, errors } = await openPart(width, height, scheme, "Engine");
    await expectSound(page);
    await openMap(page, "map.csv", TABLE);
    await page.getByText("as map.csv would make it; not in force yet").waitFor();
    const unit = page.getByRole("combobox", { name: "Fuel or efficiency: unit" });
    await expect.poll(() => unit.inputValue()).toBe("g/kWh");
    await expect.poll(() => page.getByText("unit guessed from the magnitudes").count()).toBe(2);
    await expectSound(page);
    expect(await inForce(page)).toBe("compact");

    await unit.selectOption("%");
    const alert = page.getByRole("alert");
    await alert.waitFor();
    await expect.poll(() => alert.textContent()).toContain('map.csv, row 2, column "fuel"');
    await expect.poll(() => take(page).isDisabled()).toBe(true);
    await expectSound(page);

    await unit.selectOption("g/kWh");
    await take(page).click();
    await expect.poll(() => inForce(page)).toBe("compact-2");
    await expect.poll(() => mapRow(page).textContent()).toContain("a table of 4 speeds × 4 torques");
    // The keyboard goes on where the table was opened.
    await expect.poll(() => page.evaluate("document.activeElement.textContent.trim()")).toBe("Map from CSV");
    await expectSound(page);
    await page.getByRole("button", { name: "Undo", exact: true }).click();
    await expect.poll(() => inForce(page)).toBe("compact");
    await expect.poll(() => mapRow(page).textContent()).toContain("by a formula");
    expect(errors).toEqual([]);
  });

  it("takes another name and a note", async () => {
    const { page, errors } = await openPart(width, height, scheme, "Name and note");
    await page.getByRole("heading", { name: "Name and note" }).waitFor();
    await expectSound(page);
    const name = page.getByRole("textbox", { name: /^name for people/ });
    await name.fill("Bench mule");
    await name.press("Enter");
    const choice = page.getByRole("combobox", { name: /^Vehicle/ }).locator("option:checked");
    await expect.poll(() => choice.textContent()).toBe("Bench mule");
    const note = page.getByRole("textbox", { name: /^where the numbers come from/ });
    await note.fill("Measured in class.");
    await note.blur();
    const undo = page.getByRole("button", { name: "Undo", exact: true });
    await undo.click();
    await expect.poll(() => note.inputValue()).toMatch(/^Invented for teaching/);
    await undo.click();
    await expect.poll(() => name.inputValue()).toBe("Demo compact");
    await name.fill("");
    await name.press("Enter");
    await page.getByRole("alert").waitFor();
    await expectSound(page);
    await name.press("Escape");
    await page.getByRole("alert").waitFor({ state: "detached" });
    expect(errors).toEqual([]);
  });
});

describe("a table that is no map", () => {
  it("is refused with line, column and value; leaving it changes nothing", async () => {
    const { page, errors } = await openPart(1280, 720, "dark", "Engine");
    await openMap(page, "wrong.csv", TABLE.replace("2000,50,", "2000,50,-").replace("3500,10,", "3500,10,x"));
    const alert = page.getByRole("alert");
    await expect.poll(() => alert.textContent()).toContain('wrong.csv, row 10, column "fuel"');
    const told = (await alert.textContent()) ?? "";
    expect(told).toContain("This is not a number.");
    expect(told).toContain("The value is negative.");
    await page.getByRole("button", { name: "Cancel" }).click();
    await mapRow(page).waitFor();
    expect(await inForce(page)).toBe("compact");
    await openMap(page, "empty.csv", "");
    await expect.poll(() => alert.textContent()).toContain("The file is empty.");
    await page.getByRole("button", { name: "Cancel" }).click();
    expect(errors).toEqual([]);
  });
});

describe("the map in force, saved", () => {
  it("is a template that is taken as it is, in a grid too", async () => {
    const { page, errors } = await openPart(1600, 900, "light", "Engine");
    const download = page.waitForEvent("download");
    await page.getByRole("button", { name: "Save map as CSV" }).click();
    const path = await (await download).path();
    const text = readFileSync(path, "utf8");
    expect(text).toMatch(/^speed \(rev\/min\),torque \(N·m\),fuel flow \(g\/s\)\r\n1000,5,/);
    await openMap(page, "template.csv", text);
    await page
      .getByText(/unit from the header|^from the header/)
      .first()
      .waitFor();
    await take(page).click();
    await expect.poll(() => mapRow(page).textContent()).toContain("a table of 17 speeds");
    const grid = [
      `N·m / rpm / efficiency (%),${SPEEDS}`,
      ...TORQUES.map((m) => [m, 30, 31, 32, 30].join(",")),
    ];
    await openMap(page, "grid.csv", grid.join("\n"));
    const layout = page.getByRole("combobox", { name: "Layout" });
    await expect.poll(() => layout.inputValue()).toBe("grid");
    await expectSound(page);
    await take(page).click();
    await expect.poll(() => mapRow(page).textContent()).toContain("a table of 4 speeds");
    await page.getByRole("button", { name: "Without map" }).click();
    await expect.poll(() => mapRow(page).textContent()).toContain("by a formula");
    expect(errors).toEqual([]);
  });
});
