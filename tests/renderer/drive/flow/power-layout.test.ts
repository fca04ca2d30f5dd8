import { describe, expect, it } from "vitest";
import { BARS } from "../../../../renderer/drive/flow/bars.ts";
import { askedFlows } from "../../../../renderer/drive/flow/kinds.ts";
import { placesOf } from "../../../../renderer/drive/flow/places.ts";
import { powerLabels } from "../../../../renderer/drive/flow/power-labels.ts";
import { powerLayout } from "../../../../renderer/drive/flow/power-layout.ts";
import { demandsOf, peaksOf, scaleFor, steppedScale } from "../../../../renderer/drive/flow/scale.ts";
import { overlap, roughMeasure } from "../../../../renderer/ui/labels.ts";
import { at } from "../../../../shared/at.ts";
import { type Flows, flowsAt } from "../../../../sim/run/flows.ts";
import { FREE_ENDS } from "./ends.ts";
import { runsOfAllKinds, spread } from "./runs.ts";

/** The sheet's box in windows of 1280 x 720, 1600 x 900, 1920 x 1080 and on a projector. */
const SIZES = [
  { width: 726, height: 250, text: 14 },
  { width: 842, height: 306, text: 14 },
  { width: 1120, height: 400, text: 14 },
  { width: 1172, height: 560, text: 20 },
];
const SIZE = at(SIZES, 1);
const NONE = new Set<never>();

const runs = runsOfAllKinds();

/** Every chosen row of every run at the run's scale and at the moment's. */
function eachSheet(
  size: (typeof SIZES)[number],
  check: (layout: ReturnType<typeof powerLayout>, at: string, speed: number) => void,
) {
  const places = placesOf(size);
  for (const { name, log } of runs) {
    const whole = scaleFor(places, peaksOf(log, log));
    for (const row of spread(log.rows, 50)) {
      const flows = flowsAt(log, row);
      for (const perWatt of [whole, steppedScale(places, demandsOf(flows))]) {
        const layout = powerLayout({ ...size, flows, perWatt, asked: NONE });
        check(layout, `${name}, row ${row}`, at(log.view("speed"), row));
      }
    }
  }
}

/** A row by what its flows do. */
function rowWhere(what: (flows: Flows) => boolean): Flows {
  for (const { log } of runs) {
    for (let row = 0; row < log.rows; row += 1) {
      const flows = flowsAt(log, row);
      if (what(flows)) return flows;
    }
  }
  throw new Error("no such row");
}

const sheetOf = (flows: Flows) => powerLayout({ ...SIZE, flows, perWatt: 0.001, asked: NONE });

describe("the flow sheet of an instant", () => {
  it("has bars as tall on the left as on the right, to scale, on real rows", () => {
    const faults: string[] = [];
    eachSheet(SIZE, ({ bars }, name) => {
      for (const { id, left, right, height } of bars) {
        if (Math.abs(left - right) > 0.05 || height !== Math.max(left, right)) faults.push(`${name}: ${id}`);
      }
    });
    expect(faults).toEqual([]);
  });

  it("shows the empty way of what does not flow, and of nothing else", () => {
    const still = rowWhere((f) => f.engine === 0 && f.fuel === 0 && f.wheels === 0 && f.source === 0);
    expect(sheetOf(still).ways).toHaveLength(10);
    const all = rowWhere((f) => f.engine > 15_000 && f.battery > 3000 && Math.abs(f.sun) > 2000);
    expect(sheetOf(all).ways).toEqual([]);
  });

  it("draws every bar half as tall as all that meets it", () => {
    const flows = rowWhere((f) => f.engine > 15_000 && f.battery > 3000);
    const { bars } = sheetOf(flows);
    for (const { id, left: l, right: r, free } of BARS) {
      const sum = [...l, ...r, ...free].reduce((total, one) => total + Math.abs(flows[one]), 0);
      expect(bars.find((bar) => bar.id === id)?.height, id).toBeCloseTo((sum / 2) * 0.001, 1);
    }
  });

  for (const size of SIZES) {
    it(`keeps everything in its box and its labels apart, ${size.width} by ${size.height} px`, () => {
      const faults: string[] = [];
      eachSheet(size, (layout, name, speed) => {
        const { foot } = layout.places;
        for (const { id, middle, width } of layout.ribbons) {
          const inside = middle.every(
            ([x, y]) =>
              x >= 0 && x <= size.width && y - width / 2 > -3 && y + width / 2 < foot + size.text * 0.3,
          );
          if (!inside) faults.push(`${name}: ${id} leaves the box`);
        }
        for (const { id, box } of layout.turns) {
          if (box.y < -4 || box.y + box.height > foot + size.text)
            faults.push(`${name}: ${id} leaves the box`);
        }
        const labels = powerLabels(layout, speed < 0, roughMeasure);
        for (const [i, a] of labels.entries()) {
          for (const b of labels.slice(i + 1)) {
            if (overlap(a.box, b.box) > 3) faults.push(`${name}: ${a.id} over ${b.id}`);
          }
        }
      });
      expect(faults).toEqual([]);
    });
  }

  it("keeps names and bars on their places, whatever flows", () => {
    const seen = new Map<string, number>();
    eachSheet(SIZE, ({ bars }) => {
      for (const { id, x } of bars) {
        expect(x).toBe(seen.get(id) ?? x);
        seen.set(id, x);
      }
    });
    expect(seen.size).toBe(9);
  });

  it("turns chevrons the way the power runs", () => {
    const ahead = (flows: Flows, id: string): number => {
      const ribbon = sheetOf(flows).ribbons.find((one) => one.id === id);
      return Math.cos(((ribbon?.mark.angle ?? Number.NaN) * Math.PI) / 180);
    };
    const driving = rowWhere((f) => f.engine > 15_000 && f.battery > 3000);
    expect(ahead(driving, "engine")).toBeGreaterThan(0.8);
    expect(ahead(driving, "outputElectric")).toBeCloseTo(1, 6);
    const braking = rowWhere((f) => f.battery < -10_000 && f.outputShaft < -10_000 && f.fuel === 0);
    expect(ahead(braking, "wheels")).toBeCloseTo(-1, 6);
    expect(ahead(braking, "outputElectric")).toBeCloseTo(-1, 6);
    expect(ahead(braking, "source")).toBeCloseTo(-1, 6);
  });

  it("closes the loop when power circulates, and only then", () => {
    const circulating = rowWhere((f) => f.sun < -8000 && f.outputShaft < -8000 && f.engine > 5000);
    const sheet = sheetOf(circulating);
    expect(sheet.circulating).toBeGreaterThan(5000);
    expect(sheet.ribbons.filter(({ loop }) => loop).map(({ id }) => id)).toEqual(
      ["sunOver", "ring", "sunElectric", "outputElectric", "outputShaftOver"].sort(
        (a, b) => order(sheet, a) - order(sheet, b),
      ),
    );
    expect(sheetOf(rowWhere((f) => f.engine > 15_000 && f.sun > 5000)).circulating).toBe(0);
  });

  it("brings what slows the vehicle down round its bar to air, rolling and brakes", () => {
    const braking = rowWhere((f) => f.brake > 4000 && f.wheels < -10_000);
    const { ribbons } = sheetOf(braking);
    const round = ribbons.find(({ id }) => id === "speedingUpRound");
    const taken = FREE_ENDS.reduce((sum, id) => sum + Math.max(0, braking[id]), 0);
    expect(round?.width).toBeCloseTo(taken * 0.001, 2);
  });

  it("takes a motored engine's friction round under its bar", () => {
    const motored = rowWhere((f) => f.engine < -3000 && f.fuel === 0);
    const ids = sheetOf(motored).ribbons.map(({ id }) => id);
    expect(ids).toContain("engineLossRound");
    expect(ids).not.toContain("fuel");
  });

  it("draws the thinnest ribbon 1.2 px wide and says that it is little", () => {
    const flows = rowWhere((f) => Math.abs(f.ring) > 1 && Math.abs(f.ring) < 40 && f.battery > 3000);
    const layout = sheetOf(flows);
    expect(layout.ribbons.find(({ id }) => id === "ring")?.width).toBe(1.2);
    const labels = powerLabels(layout, false, roughMeasure);
    expect(labels.find(({ id }) => id === "value:ring")?.text).toBe("< 0.1");
  });

  it("shows every number to 0.1 kW", () => {
    const faults: string[] = [];
    eachSheet(SIZE, (layout, name) => {
      for (const { id, text } of powerLabels(layout, false, roughMeasure)) {
        if (!id.startsWith("value:")) continue;
        const size = Math.abs(layout.flows[id.slice(6) as keyof Flows]);
        const said = size < 50 && size > 0.5 ? "< 0.1" : (size / 1000).toFixed(1);
        if (!text.endsWith(said)) faults.push(`${name}: ${id} says ${text} of ${size} W`);
      }
    });
    expect(faults).toEqual([]);
  });

  it("tells nothing of what is asked: neither width, direction nor number", () => {
    const asked = askedFlows(new Set(["battery-power"] as const));
    const sheets = [
      rowWhere((f) => f.battery > 5000 && f.engine > 0),
      rowWhere((f) => f.battery < -5000 && f.engine > 0),
    ].map((flows) => powerLayout({ ...SIZE, flows, perWatt: 0.001, asked }));
    for (const layout of sheets) {
      const ribbon = layout.ribbons.find(({ id }) => id === "battery");
      expect(ribbon).toMatchObject({ asked: true, backward: false, width: 12 });
      expect(layout.ribbons.some(({ id }) => id === "batteryOver")).toBe(false);
      const labels = powerLabels(layout, false, roughMeasure);
      expect(labels.find(({ id }) => id === "value:battery")?.text).toBe("?");
      expect(labels.some(({ id }) => id === "word:battery")).toBe(false);
    }
  });
});

const order = (sheet: ReturnType<typeof sheetOf>, id: string): number =>
  sheet.ribbons.findIndex((one) => one.id === id);
