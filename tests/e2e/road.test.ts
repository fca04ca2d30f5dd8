import { writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { PLOTS, readingsOf, said } from "../../renderer/plots/registry.ts";
import { instantValue } from "../../renderer/plots/time/source.ts";
import { num, shaftSpeed } from "../../renderer/state/format.ts";
import { type Run, readNow } from "../../renderer/state/run.ts";
import { at } from "../../shared/at.ts";
import { mpsToKmh } from "../../shared/units.ts";
import { CHANNELS } from "../../sim/run/channels.ts";
import { FLOW_NODES, FLOWS } from "../../sim/run/flows.ts";
import { spanFigures } from "../../sim/run/span.ts";
import { aRun } from "../renderer/support/a-run.ts";
import { DOWNLOADS, type OpenPage, ServedApp } from "./app.ts";
import { shownNumber } from "./bench-page.ts";
import {
  cursorNear,
  flowTable,
  readout,
  readoutSpeeds,
  readoutTexts,
  runCycle,
  savedRun,
} from "./road-page.ts";
import { pictured, settled } from "./settled.ts";

// Software drawing beside other tests is slow.
vi.setConfig({ testTimeout: 240_000 });

const UNITS = { shaft: "rpm", road: "kmh" } as const;
const udds = aRun("udds");

let app: ServedApp;
let open: OpenPage;
let page: Page;
beforeAll(async () => {
  app = await ServedApp.start();
  open = await app.open(1600, 900, { before: DOWNLOADS, place: "road" });
  page = open.page;
  await runCycle(page, "udds");
}, 240_000);
afterAll(() => app?.stop());

describe("a drive over the urban cycle", () => {
  it("shows the same three speeds everywhere at the moment when the sun passes through zero", async () => {
    const moment = udds.summary?.moments.find(({ id }) => id === "sun-through-zero");
    if (!moment) throw new Error("the sun never passes through zero");
    await page.getByRole("button", { name: /sun passes through zero/ }).click();
    const { speeds } = readNow(udds, moment.row);
    const rpm = (speed: number): number => shownNumber(shaftSpeed(UNITS, speed));
    const expected = { sun: rpm(speeds.sun), carrier: rpm(speeds.carrier), ring: rpm(speeds.ring) };
    await expect.poll(() => readoutSpeeds(page)).toEqual(expected);
    // What readers hear follows with the next picture.
    await settled(page);
    const lever = await page.locator("#road-lever-words").textContent();
    for (const [name, speed] of [
      ["Sun", speeds.sun],
      ["Carrier", speeds.carrier],
      ["Ring", speeds.ring],
    ] as const) {
      expect(lever).toContain(`${name} ${shaftSpeed(UNITS, speed)} rev/min`);
    }
    const canvas = page.getByRole("img", { name: /Gear set in three dimensions/ });
    await page.waitForFunction(`!document.querySelector(".canvas-note")`);
    const box = await canvas.boundingBox();
    if (!box) throw new Error("no gear set");
    await page.mouse.click(box.x + box.width * 0.47, box.y + box.height * 0.5);
    await expect.poll(() => page.locator(".part-line").textContent()).toMatch(/^(Sun|Carrier|Ring)/);
    const picked = (await page.locator(".part-line").textContent()) ?? "";
    const shaft = (["Sun", "Carrier", "Ring"] as const).find((name) => picked.startsWith(name));
    expect(shaft, `picked: ${picked}`).toBeDefined();
    const of = { Sun: speeds.sun, Carrier: speeds.carrier, Ring: speeds.ring }[shaft ?? "Sun"];
    expect(picked).toContain(`${shaftSpeed(UNITS, of)} rev/min`);

    const [header = "", ...lines] = (await savedRun(page, "csv")).trimEnd().split("\n");
    expect(lines).toHaveLength(udds.log.rows);
    const cells = lines[moment.row]?.split(",") ?? [];
    const row = Object.fromEntries(header.split(",").map((name, i) => [name, cells[i]]));
    for (const { id, column } of CHANNELS) {
      expect(Number(row[column]), column).toBeCloseTo(at(udds.log.view(id), moment.row), 9);
    }
  });

  it("goes out as a report: one file without script or network, which opens from the disk", async () => {
    const report = await savedRun(page, "report");
    expect(report).not.toMatch(/<script|https?:|<link|<img|<iframe|@import/i);
    const path = join(tmpdir(), "trishaft-report.html");
    await writeFile(path, report);
    const opened = await page.context().newPage();
    try {
      const asked: string[] = [];
      opened.on("request", (request) => asked.push(request.url()));
      await opened.goto(pathToFileURL(path).href);
      await opened.getByRole("heading", { name: /compact on EPA Urban/ }).waitFor();
      expect(await opened.getByText(num(udds.summary?.fuel.l_per_100km ?? 0, 3)).count()).toBeGreaterThan(0);
      expect(asked).toEqual([pathToFileURL(path).href]);
    } finally {
      await opened.close();
    }
  });

  it("plays, and the cursor moves on with the clock and no faster", async () => {
    const slider = page.getByRole("slider", { name: "Time", exact: true });
    const time = async (): Promise<number> => Number(await slider.getAttribute("aria-valuenow"));
    const before = await time();
    await page.getByRole("button", { name: "Play", exact: true }).click();
    await expect.poll(time, { timeout: 60_000 }).toBeGreaterThan(before + 0.5);
    await page.getByRole("button", { name: "Pause" }).click();
    await page.getByRole("button", { name: "Play", exact: true }).waitFor();
    await pictured(page);
    const stopped = await time();
    for (let i = 0; i < 4; i += 1) await pictured(page);
    expect(await time()).toBe(stopped);
  });

  it("says of a stretch how much was recovered and what bound", async () => {
    const slider = page.getByRole("slider", { name: "Time", exact: true });
    await page.getByRole("button", { name: /strongest regeneration/ }).click();
    await slider.focus();
    for (let i = 0; i < 3; i += 1) await slider.press("Shift+ArrowLeft");
    await slider.press("s");
    for (let i = 0; i < 6; i += 1) await slider.press("Shift+ArrowRight");
    await slider.press("e");
    const moment = udds.summary?.moments.find(({ id }) => id === "strongest-regeneration");
    const row = moment?.row ?? 0;
    const figures = spanFigures(udds.log, udds.regime, udds.request.vehicle, row - 30, row + 30);
    const stretch = page.getByRole("region", { name: /Stretch/ });
    await expect.poll(() => stretch.textContent()).toContain(num(figures.recovered / 1000, 1));
    expect(figures.limits.length).toBeGreaterThan(0);
    await stretch.getByRole("button", { name: "Close" }).click();
    expect(open.errors).toEqual([]);
  });
});

/** Everything that the readouts and the flow sheet show, against the engine's own columns. */
async function compare(run: Run, share: number): Promise<void> {
  const row = await cursorNear(page, share);
  const now = readNow(run, row);
  const texts = await readoutTexts(page);
  // A check of nothing would always hold.
  expect(texts.size).toBeGreaterThan(8);
  for (const plot of PLOTS.slice(0, 5)) {
    for (const reading of readingsOf(plot)) {
      const how = reading.shown ?? plot.shown;
      const text = texts.get(reading.id);
      if (text === undefined) continue;
      const shown = shownNumber(text);
      const expected = shownNumber(said(how, UNITS, instantValue(reading.source, now)));
      expect(shown, `${plot.id} ${reading.id} at row ${row}`).toBe(expected);
    }
  }
  const table = await flowTable(page);
  for (const id of FLOWS) {
    const shown = table.get(`flow:${id}`) ?? Number.NaN;
    expect(
      Math.abs(Math.abs(shown) * 1000 - Math.abs(now.flows[id])),
      `${id} at row ${row}`,
    ).toBeLessThanOrEqual(101);
  }
  for (const node of FLOW_NODES) {
    const sum = (ids: readonly string[]): number =>
      ids.reduce((all, id) => all + (table.get(`flow:${id}`) ?? 0), 0);
    const parts = node.in.length + node.out.length;
    expect(Math.abs(sum(node.in) - sum(node.out)), `${node.id} at row ${row}`).toBeLessThanOrEqual(
      0.051 * parts + 0.1,
    );
  }
}

/** What follows is not about the gear set in three dimensions. */
describe("what the screen shows is the log", () => {
  beforeAll(async () => {
    await page.context().close();
    open = await app.open(1600, 900, { place: "road", flat: true });
    page = open.page;
  }, 240_000);

  for (const [cycle, title] of [
    ["udds", "urban"],
    ["us06", "aggressive"],
    ["hill-down", "down a hill"],
  ] as const) {
    it(`at moments drawn from the ${title} drive`, async () => {
      const run = cycle === "udds" ? udds : aRun(cycle);
      await runCycle(page, cycle);
      for (let i = 0; i < 17; i += 1) await compare(run, ((i * 0.618_034) % 1) * 0.98 + 0.01);
      expect(open.errors).toEqual([]);
    });
  }
});

describe("driving by hand", () => {
  it("answers to the keys, and is kept as a cycle with its run", async () => {
    await page.getByRole("button", { name: "Take the pedals" }).click();
    await page.getByRole("button", { name: "Start driving" }).click();
    await page.getByRole("button", { name: "End and keep" }).waitFor({ timeout: 60_000 });
    const speed = async (): Promise<number> =>
      shownNumber(await page.getByRole("region", { name: "Pedals" }).textContent());
    await page.getByRole("button", { name: "Forward" }).click();
    await page.keyboard.down("ArrowUp");
    await expect.poll(speed, { timeout: 60_000 }).toBeGreaterThan(25);
    await page.keyboard.up("ArrowUp");
    await page.keyboard.down("ArrowDown");
    await expect.poll(speed, { timeout: 60_000 }).toBeLessThan(0.5);
    await page.keyboard.up("ArrowDown");
    await page.keyboard.press("r");
    await page.keyboard.down("ArrowUp");
    await expect.poll(speed, { timeout: 60_000 }).toBeLessThan(-2);
    await page.keyboard.up("ArrowUp");
    await page.getByRole("button", { name: "End and keep" }).click();
    await page.getByRole("button", { name: "Play", exact: true }).waitFor();
    await expect
      .poll(() => page.getByRole("combobox", { name: "Cycle" }).locator("option").allInnerTexts())
      .toContain("Driven by hand 1");
    await page.getByRole("slider", { name: "Time", exact: true }).press("End");
    await expect
      .poll(async () => Math.abs(shownNumber(await readout(page, "Speed", "road"))))
      .toBeLessThan(mpsToKmh(9));
    expect(open.errors).toEqual([]);
  });
});

describe("predict, then reveal", () => {
  it("hides a quantity everywhere, takes a guess, and shows by how much it is off", async () => {
    await runCycle(page, "udds");
    await page.getByRole("button", { name: /sun passes through zero/ }).click();
    await page.getByRole("button", { name: "Predict" }).click();
    await page.getByRole("checkbox", { name: "Sun speed" }).check();
    await expect.poll(() => readout(page, "Shafts", "sun")).toBe("?");
    await expect.poll(() => page.locator("#road-lever-words").textContent()).toContain("Sun ?");
    const guess = page.getByRole("textbox", { name: "Your guess: Sun speed" });
    await guess.fill("100");
    await guess.press("Tab");
    await page.getByRole("button", { name: "Reveal" }).click();
    await expect.poll(() => readout(page, "Shafts", "sun")).not.toBe("?");
    await expect
      .poll(() => page.getByRole("region", { name: "Predict, then reveal" }).textContent())
      .toMatch(/off by/);
    await page
      .getByRole("region", { name: "Predict, then reveal" })
      .getByRole("button", { name: "End" })
      .click();
  });
});
