import { readFile } from "node:fs/promises";
import Papa from "papaparse";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { textFaults } from "../renderer/support/boxes.ts";
import { DOWNLOADS, ServedApp } from "./app.ts";
import { seriousFaults, shownNumber } from "./bench-page.ts";
import { setScheme, settled } from "./settled.ts";

// Software drawing beside other tests is slow.
vi.setConfig({ testTimeout: 240_000 });

const WRONG = `export function decide(now, memory) {
  const missing = now.vehicle.socTarget - now.soc;
  if (now.demand_kW < 9 && missing < 0.05) return { engineOn: false };
  return { engineOn: true, enginePower_kW: now.demnd_kW + 60 * missing };
}
`;

let app: ServedApp;
let page: Page;
let errors: readonly string[];
beforeAll(async () => {
  app = await ServedApp.start();
  ({ page, errors } = await app.open(1280, 720, { before: DOWNLOADS, place: "compare", flat: true }));
}, 240_000);
afterAll(() => app?.stop());

const view = (name: string) => page.getByRole("tab", { name, exact: true }).click();
const push = (name: string | RegExp) => page.getByRole("button", { name, exact: typeof name === "string" });
const editor = () => page.getByRole("textbox", { name: "Text of the strategy" });

/** Saves by the list at the top and reads the file. */
async function saved(kind: string): Promise<string> {
  const download = page.waitForEvent("download");
  await page.getByRole("combobox", { name: "Save", exact: true }).selectOption(kind);
  return readFile(await (await download).path(), "utf8");
}

/** Texts cut off or over each other at both sizes, and what keeps a reader out in both themes. */
async function expectClean(): Promise<void> {
  for (const [width, height, colorScheme] of [
    [1280, 720, "dark"],
    [1920, 1080, "light"],
  ] as const) {
    await page.setViewportSize({ width, height });
    await setScheme(page, colorScheme);
    // The drawings follow the window's size with the next pictures.
    await settled(page);
    expect(await textFaults(page), `${width} ${colorScheme}`).toEqual([]);
    expect(await seriousFaults(page), `${width} ${colorScheme}`).toEqual([]);
  }
}

describe("a student's own strategy", () => {
  it("is written with an error, whose line is marked with its second, and mended", async () => {
    await view("Own strategy");
    await push("Empty").click();
    await page.getByRole("textbox", { name: "Name" }).fill("Late charger");
    await page.getByRole("textbox", { name: "Name" }).press("Enter");
    await editor().fill(WRONG);
    await push("Check").click();
    await page.getByText("The text can be read").waitFor();
    await push("Run").click();
    const alert = page.getByRole("alert");
    await alert.waitFor({ timeout: 60_000 });
    expect(await alert.textContent()).toMatch(
      /Line 4 at \d+\.\d s of the drive.*enginePower_kW is not a number/,
    );
    await expect.poll(() => page.locator(".cm-fault-line").textContent()).toContain("demnd_kW");
    await expect.poll(() => page.locator(".cm-fault-word").textContent()).toBe("demnd_kW");
    await expect.poll(() => page.locator(".cm-fault-number").textContent()).toBe("4");
    await expectClean();

    await push("Put demand_kW").click();
    await expect.poll(() => editor().textContent()).toContain("now.demand_kW + 60");
    await push("Run").click();
    await push("Set beside others").waitFor({ timeout: 60_000 });
    await expect.poll(() => alert.count()).toBe(0);
  });

  it("keeps every letter that is typed quickly, none as a key of the page, and is left by Escape and Tab", async () => {
    await editor().press("Control+End");
    const typed = "// p t g 1 2 3: quickly typed, no letter lost";
    await page.keyboard.type(typed);
    await expect.poll(() => editor().textContent()).toContain(typed);
    await page.keyboard.press("Escape");
    await page.keyboard.press("Tab");
    await expect.poll(() => page.evaluate("document.activeElement.textContent")).toBe("Check");
    expect(await page.evaluate("document.documentElement.dataset.mode ?? ''")).toBe("");
  });

  it("is compared with two others on two cycles against the optimum, and the table goes into a file", async () => {
    await push("Set beside others").click();
    const chosen = ["Rules", "Thermostat", "Late charger own"];
    for (const box of await page.getByRole("group", { name: "Strategies" }).getByRole("checkbox").all())
      await box.uncheck();
    for (const name of chosen) await page.getByRole("checkbox", { name, exact: true }).check();
    await page.getByRole("checkbox", { name: /Urban Dynamometer/ }).uncheck();
    await page.getByRole("checkbox", { name: /New York/ }).check();
    await page.getByRole("checkbox", { name: /class 3b: low/ }).check();
    await push("Compare").click();
    await push("Compare").waitFor({ timeout: 120_000 });
    const table = page.getByRole("table", { name: /Table of 6 lines/ });
    await push(/^Late charger, .*nycc/).click();
    const cells = await table
      .getByRole("row", { name: /Late charger, .*nycc/ })
      .getByRole("cell")
      .allTextContents();
    const bound = await table
      .getByRole("row", { name: /^optimum bound/ })
      .getByRole("cell")
      .allTextContents();
    const [litres = Number.NaN, over = Number.NaN] = cells.map(shownNumber);
    const least = shownNumber(bound[0] ?? "");
    expect(over).toBeGreaterThan(0);
    // Both litres are told to a hundredth.
    expect(Math.abs(over - (litres / least - 1) * 100)).toBeLessThan(0.35);

    const { data } = Papa.parse<Record<string, string>>((await saved("table")).trimEnd(), { header: true });
    expect(data.map(({ cycle, strategy }) => `${cycle} ${strategy}`)).toEqual(
      ["nycc", "wltc-class3b-low"].flatMap((cycle) =>
        ["Rules", "Thermostat", "Late charger"].map((name) => `${cycle} ${name}`),
      ),
    );
    expect(Number(data[2]?.fuel_l_per_100km).toFixed(2)).toBe(litres.toFixed(2));
    const curves = Papa.parse<Record<string, string>>((await saved("curves")).trimEnd(), { header: true });
    expect(Object.keys(curves.data[0] ?? {})).toContain("soc_3_late_charger");
    await expectClean();
  });

  it("shows its fuel over the optimum in time, and where the engine worked", async () => {
    await page.getByRole("combobox", { name: /^difference to/ }).selectOption({ label: "optimum" });
    const cursor = page.getByRole("slider", { name: "Time", exact: true });
    await cursor.press("End");
    const values = page.getByRole("table", { name: "Difference" });
    const own = values.getByRole("row", { name: /Late charger/ }).getByRole("cell");
    await expect.poll(async () => shownNumber(await own.textContent())).toBeGreaterThan(0);
    await push("Engine").click();
    const firing = page.getByRole("table", { name: "Engine at work" }).getByRole("row", { name: /firing/ });
    await expect
      .poll(async () => shownNumber(await firing.getByRole("cell").first().textContent()))
      .toBeGreaterThan(10);
    await expectClean();
  });

  it("is there again after a reload, also for Road; one that fails says so in its line and the others go on", async () => {
    await expect
      .poll(() => page.evaluate<string>(`localStorage["trishaft.project"] ?? ""`))
      .toContain("now.demand_kW + 60");
    await page.reload();
    await page.getByRole("heading", { name: "Compare", exact: true }).waitFor();
    await view("Own strategy");
    await editor().waitFor();
    await expect.poll(() => editor().textContent()).toContain("now.demand_kW + 60");
    await editor().fill(
      "export const decide = (now) => now.time_s > 5 ? { engineOn: 1 } : { engineOn: false };",
    );
    await view("Strategies");
    for (const name of ["Equivalent consumption, adapted", "Thermostat", "Rules, no regeneration"])
      await page.getByRole("checkbox", { name, exact: true }).uncheck();
    await page.getByRole("checkbox", { name: "Late charger own", exact: true }).check();
    await page.getByRole("checkbox", { name: /Urban Dynamometer/ }).uncheck();
    await page.getByRole("checkbox", { name: "Stop and go", exact: true }).check();
    await page.getByRole("checkbox", { name: /^Find the bound/ }).uncheck();
    await push("Compare").click();
    await push("Compare").waitFor({ timeout: 60_000 });
    const table = page.getByRole("table", { name: /^Table of/ });
    await expect
      .poll(() => table.getByRole("row", { name: /^Late charger/ }).textContent())
      .toMatch(/Not driven.*line 1.*engineOn is neither true nor false/);
    await expect.poll(() => table.getByRole("row", { name: /^Rules/ }).count()).toBe(1);
    await page.keyboard.press("2");
    const strategies = page.getByRole("combobox", { name: "Strategy", exact: true });
    await strategies.selectOption({ label: "Late charger" });
    await page.keyboard.press("3");
    expect(errors).toEqual([]);
  });
});

describe("a sweep", () => {
  it("varies two parameters, reads a cell by keyboard, and goes into a file that can be repeated", async () => {
    await view("Sweep");
    const number = (name: string) => page.getByRole("textbox", { name, exact: true });
    await number("First parameter: Values").fill("2");
    await page.getByRole("combobox", { name: "Second parameter" }).selectOption("run.headWind");
    await number("Second parameter: Values").fill("2");
    await page.getByRole("combobox", { name: "Cycle", exact: true }).selectOption("stop-and-go");
    await page.getByRole("checkbox", { name: "Equivalent consumption, adapted" }).uncheck();
    await push("Sweep").click();
    await push("Sweep").waitFor({ timeout: 60_000 });
    const cell = (name: RegExp) => page.getByRole("gridcell", { name });
    await cell(/Payload, kg: 0; Head wind, km\/h: −30/).focus();
    await page.keyboard.press("ArrowUp");
    await page.keyboard.press("ArrowRight");
    const here = "document.activeElement.getAttribute('aria-label')";
    await expect
      .poll(() => page.evaluate<string | null>(here))
      .toMatch(/Payload, kg: 400; Head wind, km\/h: 30\. Fuel .*: \d/);
    const file = JSON.parse(await saved("json"));
    expect(file).toMatchObject({ format: "trishaft-runs", complete: true, runs: 4 });
    expect(file.plan.axes.map(({ path }: { path: string }) => path)).toEqual(["run.payload", "run.headWind"]);
    await expectClean();
  });
});

describe("the study of regeneration", () => {
  it("maps what comes back and what limits it, also as a table and a file", async () => {
    await view("Regeneration");
    for (const side of ["Speed at the start", "Rate of braking"])
      await page.getByRole("textbox", { name: `${side}: Values`, exact: true }).fill("2");
    await push("Brake").click();
    await push("Brake").waitFor({ timeout: 60_000 });
    const hard = page.getByRole("gridcell", { name: /^120\.0 km\/h, 4\.00 m\/s²/ });
    await expect
      .poll(() => hard.getAttribute("aria-label"))
      .toMatch(/Came back \d+ %; Limit: the battery takes no more/);
    await expectClean();
    const { data } = Papa.parse<Record<string, string>>((await saved("csv")).trimEnd(), { header: true });
    await push("Table").click();
    const rows = page.getByRole("table", { name: "Share that comes back" }).getByRole("row");
    await expect.poll(() => rows.count()).toBe(1 + data.length);
    expect(shownNumber(await rows.nth(1).getByRole("cell").first().textContent())).toBeCloseTo(
      100 * Number(data[0]?.recovered_share),
      0,
    );
    expect(errors).toEqual([]);
  });
});
