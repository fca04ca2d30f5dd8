import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { divide } from "../../../renderer/flow/divide.ts";
import { flowLabels } from "../../../renderer/flow/label-wishes.ts";
import { flowLayout } from "../../../renderer/flow/layout.ts";
import { firstBench, loadSituation } from "../../../renderer/state/bench.ts";
import { SITUATIONS } from "../../../renderer/state/situations.ts";
import { overlap, roughMeasure } from "../../../renderer/ui/labels.ts";
import { type BenchFlows, benchAt } from "../../../sim/bench/bench.ts";
import { vehicleById } from "../../../sim/vehicle/presets/registry.ts";

const v = vehicleById("compact");
const pointOf = (index: number) => {
  const situation = SITUATIONS[index];
  if (!situation) throw new Error("no situation");
  return benchAt(v, loadSituation(firstBench("compact", v), v, situation));
};
const flowsOf = (engine: number, sun: number, outputMachine: number): BenchFlows => ({
  engine,
  sun,
  ring: engine - sun,
  battery: outputMachine - sun,
  outputMachine,
  output: engine - sun + outputMachine,
});
const size = { width: 1130, height: 160, text: 14 };

describe("the flow sheet", () => {
  it("gives every bar as much on its left as on its right, for any powers (seed 77)", () => {
    const power = fc.integer({ min: -60_000, max: 60_000 });
    fc.assert(
      fc.property(power, power, power, (engine, sun, out) => {
        const f = flowsOf(engine, sun, out);
        const { sunOver, outputOver, batteryOver } = divide(f);
        const a = Math.abs;
        expect(a(f.engine) + sunOver).toBeCloseTo(a(f.sun) - sunOver + a(f.ring), 6);
        expect(a(f.ring) + a(out) - outputOver).toBeCloseTo(a(f.output) + outputOver, 6);
        expect(a(f.sun) + a(f.battery) - batteryOver).toBeCloseTo(a(out) + batteryOver, 6);
      }),
      { seed: 77 },
    );
  });

  it("draws widths to one scale", () => {
    const { flows } = pointOf(2);
    const { ribbons, perWatt } = flowLayout({ ...size, flows });
    for (const { power, width } of ribbons) expect(width).toBeCloseTo(Math.max(1.2, power * perWatt), 6);
    const of = (id: string): number => ribbons.find((one) => one.id === id)?.width ?? 0;
    expect(of("sun") + of("mechanical")).toBeCloseTo(of("engine"), 6);
  });

  it("turns chevrons the way the power runs", () => {
    const start = flowLayout({ ...size, flows: pointOf(0).flows });
    const angle = (id: string): number => start.ribbons.find((one) => one.id === id)?.mark.angle ?? 0;
    expect(Math.cos((angle("engine") * Math.PI) / 180)).toBeCloseTo(-1, 6);
    expect(Math.cos((angle("sunLink") * Math.PI) / 180)).toBeCloseTo(-1, 6);
  });

  it("closes the loop when power circulates, and only then", () => {
    const loops = SITUATIONS.map(
      (_, index) => flowLayout({ ...size, flows: pointOf(index).flows }).circulating > 0,
    );
    expect(loops).toEqual(SITUATIONS.map((one) => one.id === "sun-backward"));
    const { ribbons } = flowLayout({ ...size, flows: pointOf(6).flows });
    expect(ribbons.filter((one) => one.loop).map((one) => one.id)).toEqual([
      "mechanical",
      "sunOver",
      "sunLink",
      "outputLink",
      "outputMachineOver",
    ]);
  });

  for (const sheet of [size, { width: 870, height: 118, text: 14 }, { width: 2900, height: 290, text: 25 }]) {
    it(`keeps its labels apart and its ribbons inside, ${sheet.width} wide`, () => {
      for (const [index, situation] of SITUATIONS.entries()) {
        const { flows, shares } = pointOf(index);
        const layout = flowLayout({ ...sheet, flows });
        const labels = flowLabels(layout, { ...sheet, flows, shares }, roughMeasure);
        for (const [i, a] of labels.entries()) {
          for (const b of labels.slice(i + 1)) {
            expect(overlap(a.box, b.box), `${situation.id}: ${a.id} over ${b.id}`).toBeLessThan(1);
          }
        }
        for (const { outline } of layout.ribbons) {
          for (const [x, y] of outline) {
            expect(x).toBeGreaterThanOrEqual(0);
            expect(x).toBeLessThanOrEqual(sheet.width);
            expect(y).toBeGreaterThanOrEqual(0);
            expect(y).toBeLessThanOrEqual(sheet.height);
          }
        }
      }
    });
  }
});
