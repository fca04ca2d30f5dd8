import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { messyRecording } from "../../cycles/demo/messy.ts";
import { at } from "../../shared/at.ts";
import { DOWNLOADS, ServedApp } from "./app.ts";
import { shownNumber } from "./bench-page.ts";
import { savedRun } from "./road-page.ts";

// Software drawing beside other tests is slow.
vi.setConfig({ testTimeout: 240_000 });

/** An invented drive with stops, lost reception, a tunnel, wild places; what was really driven is known. */
const { truth, gpx, gaps } = messyRecording(6);
const WAY_KM = at(truth.way, truth.way.length - 1) / 1000;
const LENGTH_S = at(truth.time, truth.time.length - 1);
/** The receiver stands still longer than this at both ends: cutting it away takes no way. */
const STANDING_S = 15;
const NAME = "My way to work";

let app: ServedApp;
let page: Page;
let errors: readonly string[];
const folder = mkdtempSync(join(tmpdir(), "own-drive-"));
beforeAll(async () => {
  app = await ServedApp.start();
  ({ page, errors } = await app.open(1600, 900, { before: DOWNLOADS, place: "cycles", flat: true }));
}, 240_000);
afterAll(async () => {
  await app?.stop();
  rmSync(folder, { recursive: true });
});

const push = (name: string | RegExp) => page.getByRole("button", { name, exact: typeof name === "string" });

/** A figure as recorded and as treated. */
async function figure(name: RegExp): Promise<{ readonly before: number; readonly after: number }> {
  const row = page.getByRole("region", { name: "Before and after" }).getByRole("row", { name });
  const [before = Number.NaN, after = Number.NaN] = (await row.getByRole("cell").allTextContents()).map(
    shownNumber,
  );
  return { before, after };
}

const treated = async (name: RegExp): Promise<number> => (await figure(name)).after;

/** Fuel at equal charge of each line, L/100 km, by strategy and cycle. */
const fuels = new Map<string, number>();

describe("a drive of one's own, from the receiver's file to a report", () => {
  it("is read: what was guessed is told, and how wild it is as it came", async () => {
    const path = join(folder, "recorded.gpx");
    writeFileSync(path, gpx);
    const chooser = page.waitForEvent("filechooser");
    await push("Open a file").click();
    await (await chooser).setFiles(path);
    await push("Before and after").waitFor({ timeout: 60_000 });
    const track = page.getByRole("combobox", { name: "Track" });
    await expect
      .poll(() => track.locator("option:checked").textContent())
      .toContain("1: Invented drive, 20 km (2");
    await page.getByText("1 point has no time and was set aside.").waitFor();
    await page.getByText("1 point repeats the time of another one and was set aside.").waitFor();
    const wild = (await figure(/^Distance/)).before;
    expect(wild).toBeGreaterThan(1.05 * WAY_KM);
    // The usual treatments, each with what it found.
    await page.getByText(/^Speed taken from the places, smoothed for a jitter of .* stops found/).waitFor();
    const longest = Math.max(...gaps.map(({ start, end }) => end - start));
    const filled = await page.getByText(/gaps filled, the longest/).textContent();
    expect(shownNumber(/longest (\d+) s/.exec(filled ?? "")?.[1] ?? "")).toBeCloseTo(longest, -1);
  });

  it("is cleaned by hand: without smoothing it is refused aloud; smoothed, filled and cut it keeps its way", async () => {
    await push("Smooth: remove").click();
    const refusal = page.getByRole("alert");
    await refusal.getByText(/faster than any road vehicle/).waitFor();
    await expect
      .poll(() => refusal.textContent())
      .toMatch(/recorded\.gpx, at \d.*\d+ km\/h.*up to 400 km\/h/);
    await push("Fill gaps: remove").click();
    await page.getByText(/gaps filled, the longest/).waitFor({ state: "detached" });
    await page.getByRole("combobox", { name: "Add a treatment" }).selectOption({ label: "Fill gaps" });
    await page.getByText(/gaps filled, the longest/).waitFor();
    for (const [name, text] of [
      ["Stretch from", String(STANDING_S)],
      ["Stretch to", String(Math.floor(LENGTH_S) - STANDING_S)],
    ] as const) {
      const field = page.getByRole("textbox", { name });
      await field.fill(text);
      await field.press("Enter");
    }
    await push("Keep only this").click();
    await page.getByText(/^Cut to 15 to \d+ s; time counted from the cut\.$/).waitFor();
    const left = Math.floor(LENGTH_S) - 2 * STANDING_S;
    const clock = `${Math.floor(left / 60)}:${String(left % 60).padStart(2, "0")}`;
    await page.getByRole("row", { name: new RegExp(`^Duration .* ${clock}$`) }).waitFor();
    expect(Math.abs((await treated(/^Distance/)) / WAY_KM - 1)).toBeLessThan(0.005);
    expect(Math.abs((await treated(/^Ascent/)) / truth.ascent - 1)).toBeLessThan(0.05);
    expect(await treated(/^Most speeding up/)).toBeLessThan(4.5);
    const name = page.getByRole("textbox", { name: "Name" });
    // A nameless one is not taken: the name stands there again.
    await name.fill("");
    await name.press("Enter");
    await expect.poll(() => name.inputValue()).toBe("Invented drive, 20 km");
    await name.fill(NAME);
    await name.press("Enter");
    await push("Keep as own cycle").click();
    await page.getByRole("navigation", { name: "All cycles" }).getByRole("button", { name: NAME }).waitFor();
  });

  it("runs on Road, from end to end", async () => {
    await push("Drive it on Road").click();
    const cycle = page.getByRole("combobox", { name: "Cycle" });
    await expect.poll(() => cycle.locator("option:checked").textContent()).toBe(NAME);
    await push(/^Run/).click();
    await push("Pause").click({ timeout: 60_000 });
    await push(/^fuel .* balanced$/).waitFor({ timeout: 60_000 });
  });

  it("is set beside the urban cycle with two strategies, and every row is read", async () => {
    await page.keyboard.press("3");
    const choose = (group: string) => page.getByRole("group", { name: group });
    await choose("Strategies").waitFor();
    for (const box of await choose("Strategies").getByRole("checkbox").all()) await box.uncheck();
    for (const name of ["Rules", "Thermostat"])
      await page.getByRole("checkbox", { name, exact: true }).check();
    await choose("Cycles").getByRole("checkbox", { name: NAME }).check();
    expect(
      await choose("Cycles")
        .getByRole("checkbox", { name: /Urban Dynamometer/ })
        .isChecked(),
    ).toBe(true);
    await page.getByRole("checkbox", { name: /^Find the bound/ }).uncheck();
    await push("Compare").click();
    await push("Compare").waitFor({ timeout: 120_000 });
    const table = page.getByRole("table", { name: /^Table of 4 lines/ });
    for (const cycle of ["udds", "my-way-to-work"]) {
      for (const strategy of ["Rules", "Thermostat"]) {
        const row = table.getByRole("row", { name: new RegExp(`^${strategy}, .*, ${cycle}`) });
        const [litres, , , starts, minutes] = (await row.getByRole("cell").allTextContents()).map(
          shownNumber,
        );
        fuels.set(`${strategy} ${cycle}`, litres ?? Number.NaN);
        expect(litres, `${strategy} ${cycle}`).toBeGreaterThan(2);
        expect(litres, `${strategy} ${cycle}`).toBeLessThan(12);
        expect(starts, `${strategy} ${cycle}`).toBeGreaterThan(0);
        expect(minutes, `${strategy} ${cycle}`).toBeGreaterThan(0);
      }
    }
    // Both strategies differ on both cycles, and the cycles with each.
    expect(new Set(fuels.values()).size).toBe(4);
  });

  it("goes out as a report that opens from the disk, asks for nothing, and tells cycle, distance and fuel", async () => {
    await page.keyboard.press("2");
    await page.getByRole("combobox", { name: "More" }).waitFor();
    const path = join(folder, "report.html");
    writeFileSync(path, await savedRun(page, "report"));
    const opened = await page.context().newPage();
    try {
      const asked: string[] = [];
      opened.on("request", (request) => asked.push(request.url()));
      await opened.goto(pathToFileURL(path).href);
      await opened.getByRole("heading", { name: `Demo compact on ${NAME}`, exact: true }).waitFor();
      const value = async (label: string): Promise<number> => {
        const row = opened.getByRole("row", { name: new RegExp(`^${label} `) });
        return shownNumber(await row.getByRole("cell").first().textContent());
      };
      // Driven, so not the very way of the cycle: the driver follows it within his limits.
      expect(Math.abs((await value("Distance")) / WAY_KM - 1)).toBeLessThan(0.01);
      expect(await value("Charge-balanced")).toBeCloseTo(fuels.get("Rules my-way-to-work") ?? Number.NaN, 2);
      for (const done of [/smoothed for a jitter of/, /gaps filled, the longest/, /^Cut to 15 to/])
        await opened.getByText(done).first().waitFor();
      expect(asked).toEqual([pathToFileURL(path).href]);
    } finally {
      await opened.close();
    }
    expect(errors).toEqual([]);
  });
});
