import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { plotsFor } from "../../../renderer/plots/choice.ts";
import { extentOf, ownExtent } from "../../../renderer/plots/extent.ts";
import { LANES, regimeRuns } from "../../../renderer/plots/lane-draw.ts";
import { PLOTS } from "../../../renderer/plots/registry.ts";
import { roundTicks, timeTicks } from "../../../renderer/plots/ticks.ts";
import {
  follow,
  plotWidth,
  setStretch,
  timeAt,
  windowNow,
  xOf,
  zoom,
} from "../../../renderer/plots/time-frame.ts";
import { chosen, lookAt, runs, shown } from "../../../renderer/state/road.ts";
import { REGIMES } from "../../../sim/run/regimes.ts";
import { aRun } from "../support/a-run.ts";

const one = aRun("udds");

describe("ticks", () => {
  it("of values are round, within the range, two to four for most ranges", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e4, max: 0, noNaN: true }),
        fc.double({ min: 1, max: 1e5, noNaN: true }),
        (least, most) => {
          const ticks = roundTicks(least, most);
          expect(ticks.length).toBeGreaterThanOrEqual(1);
          expect(ticks.length).toBeLessThanOrEqual(4);
          for (const tick of ticks) {
            expect(tick).toBeGreaterThanOrEqual(least - 1e-6 * most);
            expect(tick).toBeLessThanOrEqual(most * (1 + 1e-9));
          }
        },
      ),
    );
    expect(roundTicks(-22, 38)).toEqual([-20, 0, 20]);
    expect(roundTicks(0, 100)).toEqual([0, 50, 100]);
  });

  it("of time are no closer than asked, from a second to a day", () => {
    for (const span of [2, 30, 1369, 86_400]) {
      const ticks = timeTicks(0, span, 700, 77);
      for (let i = 1; i < ticks.length; i += 1) {
        const gap = (((ticks[i] ?? 0) - (ticks[i - 1] ?? 0)) / span) * 700;
        expect(gap).toBeGreaterThanOrEqual(77 - 1e-9);
      }
    }
  });
});

describe("plots", () => {
  it("read a number from every row of every curve, and every curve has another name", () => {
    for (const plot of PLOTS) {
      expect(new Set(plot.curves.map((curve) => curve.id)).size).toBe(plot.curves.length);
      for (const curve of plot.curves) {
        const values = curve.of(one.log);
        expect(values.length, `${plot.id} ${curve.id}`).toBe(one.log.rows);
        for (let i = 0; i < values.length; i += 503) expect(Number.isFinite(values[i])).toBe(true);
      }
    }
  });

  it("are fewer rather than smaller, and the chosen ones in their order", () => {
    expect(plotsFor(5 * 3.3 * 14, 14, null).map(({ id }) => id)).toEqual([
      "speed",
      "power",
      "battery",
      "shafts",
      "recovered",
    ]);
    expect(plotsFor(4 * 3.3 * 14 + 3, 14, null)).toHaveLength(4);
    expect(plotsFor(10, 14, null)).toHaveLength(1);
    expect(plotsFor(900, 14, new Set(["torques", "speed"])).map(({ id }) => id)).toEqual([
      "speed",
      "torques",
    ]);
  });

  it("have room for every value of their curves", () => {
    const values = one.log.view("sunMachineSpeed");
    const { least, most } = extentOf([values], 0, one.log.rows - 1);
    expect(least).toBe(Math.min(0, ...values));
    expect(most).toBe(Math.max(0, ...values));
    const soc = one.log.view("soc");
    const own = ownExtent([soc], 0, one.log.rows - 1);
    expect(own.least).toBeLessThan(Math.min(...soc));
    expect(own.least).toBeGreaterThan(0.3);
  });
});

describe("regime lanes", () => {
  it("cover a window without gap or overlap, each stretch of another regime than the one before", () => {
    const found = regimeRuns(one.regime, 0, one.log.rows - 1, 1e6);
    expect(found[0]?.from).toBe(0);
    expect(found.at(-1)?.until).toBe(one.log.rows - 1);
    for (let i = 1; i < found.length; i += 1) {
      expect(found[i]?.from).toBe(found[i - 1]?.until);
      expect(found[i]?.index).not.toBe(found[i - 1]?.index);
    }
    for (const { index, from } of found) expect(one.regime[from]).toBe(index);
  });

  it("are no more than there are pixels, however long the drive", () => {
    const long = Uint8Array.from({ length: 864_001 }, (_, i) => (i * 7919) % REGIMES.length);
    expect(regimeRuns(long, 0, 864_000, 700).length).toBeLessThanOrEqual(702);
  });

  it("have a place for every family", () => {
    for (const { family } of REGIMES) expect(LANES).toContain(family);
  });
});

describe("the window of time", () => {
  it("zooms about a time that stays where it is, and is never wider than the drive", () => {
    runs.value = [one];
    lookAt(one);
    plotWidth.value = 800;
    const before = xOf(300);
    zoom(4, 300);
    expect(xOf(300)).toBeCloseTo(before, 6);
    expect(timeAt(xOf(333))).toBeCloseTo(333, 9);
    zoom(0.01, 300);
    expect(shown.value).toBeNull();
    expect(windowNow.value.from).toBe(0);
  });

  it("follows the cursor and keeps its width", () => {
    zoom(10, 100);
    const { from, to } = windowNow.value;
    follow(900);
    expect(windowNow.value.from).toBeLessThanOrEqual(900);
    expect(windowNow.value.to).toBeGreaterThanOrEqual(900);
    expect(windowNow.value.to - windowNow.value.from).toBeCloseTo(to - from, 9);
    shown.value = null;
  });

  it("sets a stretch from both ends and never turns it round", () => {
    setStretch("from", 100);
    setStretch("to", 160);
    expect(chosen.value).toEqual({ from: 100, to: 160 });
    setStretch("to", 40);
    expect(chosen.value).toEqual({ from: 0, to: 40 });
    chosen.value = null;
  });
});
