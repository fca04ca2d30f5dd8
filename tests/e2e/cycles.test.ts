import { mkdtempSync, readFileSync, rmSync, truncateSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { messyRecording } from "../../cycles/demo/messy.ts";
import { readCycleFile } from "../../shared/cycle-file.ts";
import { textFaults } from "../renderer/support/boxes.ts";
import { DOWNLOADS, ServedApp } from "./app.ts";
import { seriousFaults, shownNumber } from "./bench-page.ts";
import { projected, setScheme, settled } from "./settled.ts";

// Software drawing beside other tests is slow.
vi.setConfig({ testTimeout: 240_000 });

let app: ServedApp;
let page: Page;
let errors: readonly string[];
const folder = mkdtempSync(join(tmpdir(), "cycles-"));
const file = (name: string, text: string): string => {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
};

beforeAll(async () => {
  app = await ServedApp.start();
  ({ page, errors } = await app.open(1600, 900, { before: DOWNLOADS, place: "cycles", flat: true }));
}, 240_000);
afterAll(async () => {
  await app?.stop();
  rmSync(folder, { recursive: true });
});

async function goToCycles(): Promise<void> {
  await page.getByRole("link", { name: "Cycles" }).click();
  await page.getByRole("heading", { name: "All cycles" }).waitFor();
}

async function open(path: string): Promise<void> {
  const chooser = page.waitForEvent("filechooser");
  await page.getByRole("button", { name: "Open a file" }).click();
  await (await chooser).setFiles(path);
}

const listed = (name: RegExp) =>
  page.getByRole("navigation", { name: "All cycles" }).getByRole("button", { name });

async function typeStretch(from: string, to: string): Promise<void> {
  for (const [name, text] of [
    ["Stretch from", from],
    ["Stretch to", to],
  ] as const) {
    const field = page.getByRole("textbox", { name });
    await field.fill(text);
    await field.press("Enter");
  }
}

/** Figures as recorded and as treated, by name. */
async function figure(name: RegExp): Promise<readonly number[]> {
  const row = page.getByRole("region", { name: "Before and after" }).getByRole("row", { name });
  return (await row.getByRole("cell").allTextContents()).map((text) => shownNumber(text));
}

describe("a messy recording, from the file to the road", () => {
  it("is read, cleaned as usual, and shown before and after", async () => {
    await open(file("messy.gpx", messyRecording().gpx));
    await page.getByRole("button", { name: "Before and after" }).waitFor({ timeout: 60_000 });
    await expect
      .poll(() => page.getByRole("combobox", { name: "Track" }).textContent())
      .toContain("Invented drive, 20 km");
    await expect.poll(() => page.getByText("1 point has no time and was set aside.").count()).toBe(1);
    // The last of the treatments.
    await expect.poll(() => page.getByText(/gaps filled, the longest 39 s/).count()).toBe(1);
    await settled(page);
    const [wild = 0, driven = 0] = await figure(/^Distance/);
    expect(wild).toBeGreaterThan(22);
    // The invented drive is 20 km long (`cycles/demo/messy.ts`).
    expect(Math.abs(driven / 20 - 1)).toBeLessThan(0.005);
    const [jump = 0, real = 0] = await figure(/^Most speeding up/);
    expect(jump).toBeGreaterThan(100);
    expect(real).toBeLessThan(4);
    expect((await figure(/^Ascent/))[1]).toBeLessThan(300);
  });

  it("changes with its treatments, refuses what cannot be, and comes back by undo", async () => {
    const limit = page.getByRole("combobox", { name: "Add a treatment" });
    await limit.selectOption({ label: "Limit acceleration" });
    await page.getByText("4. Limit acceleration").waitFor();
    const field = page.getByRole("textbox", { name: "speeding up" }).last();
    await field.fill("1.2");
    await field.press("Enter");
    await expect.poll(async () => (await figure(/^Most speeding up/))[1]).toBeLessThan(1.25);
    await field.fill("99");
    await field.press("Enter");
    await page.getByRole("alert").getByText("Accepted: 0.1 … 20 m/s²").waitFor();
    await typeStretch("1:00", "20:00");
    await page.getByRole("button", { name: "Keep only this" }).click();
    await page.getByText("Cut to 60 to 1200 s; time counted from the cut.").waitFor();
    // The last two only: the limit as it was typed stays.
    await page.keyboard.press("Control+z");
    await page.getByText("Cut to 60 to 1200 s").waitFor({ state: "detached" });
    await expect.poll(async () => (await figure(/^Distance/))[1]).toBeGreaterThan(19);
  });

  it("loses nothing to a broken file, one too large, and one that is no drive", async () => {
    await open(file("broken.gpx", messyRecording().gpx.slice(0, 9000)));
    const refused = page.getByRole("alert").filter({ hasText: "everything open stays as it was" });
    await refused.getByText("broken.gpx").first().waitFor();
    const large = file("large.csv", "");
    truncateSync(large, 70 * 1024 * 1024);
    await open(large);
    await refused.getByText("The file is too large.").waitFor();
    await open(file("words.csv", "some words\nand no numbers\n"));
    await page.getByText("Not clear yet").first().waitFor();
    await page.keyboard.press("Control+z");
    await page.getByRole("button", { name: "Before and after" }).waitFor();
    await open(file("route.gpx", '<gpx version="1.1"><rte><rtept lat="1" lon="2"/></rte></gpx>'));
    await refused.getByText(/a route: a plan of where to go/).waitFor();
    await page.getByRole("button", { name: "Dismiss" }).click();
    await expect.poll(async () => (await figure(/^Distance/))[1]).toBeGreaterThan(19);
  });

  it("is kept, driven on Road, and still there after the window was closed", async () => {
    await page.getByRole("button", { name: "Keep as own cycle" }).click();
    await listed(/^Invented drive/).waitFor();
    await page.getByRole("button", { name: "Drive it on Road" }).click();
    await page.getByRole("heading", { name: "Road", exact: true }).waitFor();
    const cycle = page.getByRole("combobox", { name: "Cycle" });
    await expect.poll(() => cycle.locator("option:checked").textContent()).toContain("Invented drive");
    await page.getByRole("button", { name: /^Run/ }).click();
    await page.getByRole("button", { name: "Pause" }).click({ timeout: 60_000 });
    await expect
      .poll(() => page.getByRole("button", { name: /^fuel/ }).textContent())
      .toMatch(/\d L\/100 km/);
    await page.reload();
    await page.getByRole("heading", { name: "Road", exact: true }).waitFor();
    await expect
      .poll(async () => await cycle.locator("option:checked").textContent())
      .toContain("Invented drive");
    await goToCycles();
    await listed(/^Invented drive/).click();
    await page.getByRole("button", { name: "Before and after" }).waitFor({ timeout: 30_000 });
    await expect.poll(async () => (await figure(/^Most speeding up/))[1]).toBeLessThan(1.25);
  });

  it("travels as a file of its own", async () => {
    const download = page.waitForEvent("download");
    await page.getByRole("combobox", { name: "Save as" }).selectOption("file");
    const path = await (await download).path();
    const { trace, recording } = readCycleFile(readFileSync(path, "utf8"), "saved");
    expect(recording?.treatments.map(({ kind }) => kind)).toEqual([
      "smooth",
      "fillGaps",
      "startAndEndAtRest",
      "limitAcceleration",
    ]);
    expect(recording?.raw.kind).toBe("positions");
    await open(file("again.cycle.json", readFileSync(path, "utf8")));
    await expect.poll(async () => await listed(/^Invented drive/).count()).toBe(2);
    expect(trace.title).toContain("Invented drive");
  });
});

describe("a log with more than speed", () => {
  it("is shown with its guesses, follows another unit, and is laid over the run", async () => {
    const rows = Array.from({ length: 120 }, (_, i) => {
      const speed = Math.max(0, 40 * Math.sin((i * Math.PI) / 119));
      return `${i},${speed.toFixed(3)},${1000 + 10 * i},${60 - i / 50}`;
    });
    await open(file("log.csv", `time_s,speed_kmh,engine_speed_rpm,soc_percent\n${rows.join("\n")}\n`));
    const unit = page.getByRole("combobox", { name: "Speed: unit", exact: true });
    await expect.poll(async () => await unit.inputValue()).toBe("km/h");
    await expect.poll(async () => (await figure(/^Top speed/))[1]).toBeCloseTo(40, 0);
    await unit.selectOption("mph");
    // 40 mph = 64.37 km/h.
    await expect.poll(async () => (await figure(/^Top speed/))[1]).toBeCloseTo(64.37, 0);
    await unit.selectOption("km/h");
    await expect.poll(async () => (await figure(/^Top speed/))[1]).toBeCloseTo(40, 0);
    await page.getByRole("button", { name: "Drive it on Road" }).click();
    await page.getByRole("button", { name: /^Run/ }).click();
    await page.getByRole("button", { name: "Pause" }).click({ timeout: 60_000 });
    await page.getByRole("button", { name: "Lay the recording over" }).click();
    await page
      .getByRole("row", { name: /^recorded/ })
      .first()
      .waitFor();
    await goToCycles();
  });

  it("can be dropped onto the place as well", async () => {
    await page.evaluate(`(() => {
      const data = new DataTransfer();
      data.items.add(new File(["time_s,speed_kmh\\n0,0\\n5,30\\n9,0\\n"], "dropped.csv"));
      const place = document.querySelector("#place");
      for (const kind of ["dragover", "drop"])
        place.dispatchEvent(new DragEvent(kind, { bubbles: true, cancelable: true, dataTransfer: data }));
    })()`);
    await listed(/^dropped/).waitFor();
    await expect.poll(async () => (await figure(/^Top speed/))[1]).toBeCloseTo(30, 0);
    await page.keyboard.press("Control+z");
  });

  it("a manoeuvre follows its fields while they are typed, and is kept as it is set", async () => {
    await listed(/^Cruise/).click();
    const speed = page.getByRole("textbox", { name: "Steady speed." });
    await speed.fill("70");
    await page.getByRole("img", { name: /^Cruise, speed 70 km\/h: speed over time/ }).waitFor();
    await speed.fill("700");
    await page
      .getByRole("alert")
      .getByText(/out of range/)
      .waitFor();
    await speed.press("Tab");
    await expect.poll(() => speed.inputValue()).toBe("70");
    await page.getByRole("button", { name: "Keep as own cycle" }).click();
    await listed(/^Cruise, speed 70 km\/h/).waitFor();
  });
});

describe("own cycles of two windows", () => {
  it("are all there afterwards, and what was removed is gone, though the window closed at once", async () => {
    const { page: first } = await app.open(1280, 720);
    const second = await first.context().newPage();
    const list = (of: Page) => of.getByRole("navigation", { name: "All cycles" });
    const own = async (of: Page) => (await list(of).textContent())?.split("Standard")[0];
    for (const one of [first, second]) {
      await one.goto(`${app.address}#cycles`);
      await one.reload();
      await list(one).waitFor();
    }
    const keep = async (of: Page, name: RegExp) => {
      await list(of).getByRole("button", { name }).last().click();
      await of.getByRole("button", { name: "Keep as own cycle" }).click();
    };
    await keep(first, /^Cruise/);
    await keep(second, /^Launch/);
    await second.close();
    await first.reload();
    // Kept at the same time, they may stand in either order.
    await expect.poll(() => own(first)).toMatch(/^Your own\s*(Cruise.*Launch|Launch.*Cruise)/s);
    await list(first)
      .getByRole("button", { name: /^Launch/ })
      .first()
      .click();
    await first.getByRole("button", { name: "Remove" }).click();
    await first.reload();
    await expect.poll(() => own(first)).toMatch(/^Your own\s*Cruise[\d:\s]*$/);
    await first.context().close();
  });
});

describe("the place Cycles", () => {
  for (const [width, height] of [
    [1280, 720],
    [1920, 1080],
  ] as const) {
    for (const scheme of ["light", "dark"] as const) {
      it(`${width} × ${height}, ${scheme}: no text over another, none cut off, none small; nothing that keeps a reader out`, async () => {
        await page.setViewportSize({ width, height });
        await setScheme(page, scheme);
        for (const name of [/^EPA city test/, /^Hill down/, /^log/]) {
          await listed(name).click();
          await typeStretch("0:30", "1:00");
          await settled(page);
          expect(await textFaults(page), String(name)).toEqual([]);
        }
        expect(await seriousFaults(page)).toEqual([]);
        await page.getByRole("button", { name: "Projector" }).click();
        await projected(page, true);
        await settled(page);
        expect(await textFaults(page, 20)).toEqual([]);
        expect(await seriousFaults(page)).toEqual([]);
        await page.getByRole("button", { name: "Leave projector" }).click();
        await projected(page, false);
      });
    }
  }

  it("threw nothing", () => expect(errors).toEqual([]));
});
