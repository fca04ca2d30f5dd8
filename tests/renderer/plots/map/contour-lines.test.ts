import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { contourLines, levelsOf } from "../../../../renderer/plots/map/contour-lines.ts";
import { engineEfficiencyMap, type MapGrid, machineEfficiencyMap } from "../../../../sim/vehicle/maps.ts";
import { vehicleById } from "../../../../sim/vehicle/presets/registry.ts";

/** A grid over [−a, a] × [−b, b] of a function. */
function gridOf(a: number, b: number, count: number, value: (x: number, y: number) => number): MapGrid {
  const x = { from: -a, to: a, count };
  const y = { from: -b, to: b, count };
  const at = (end: number, i: number): number => -end + (2 * end * i) / (count - 1);
  const values = Float64Array.from({ length: count * count }, (_, i) =>
    value(at(a, i % count), at(b, Math.floor(i / count))),
  );
  return { x, y, values };
}

describe("contour lines", () => {
  it("of a cone are circles of the right radius", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.2, max: 0.9, noNaN: true }), (radius) => {
        const [found] = contourLines(
          gridOf(300, 40, 61, (x, y) => 1 - Math.hypot(x / 300, y / 40)),
          [1 - radius],
        );
        expect(found?.lines.length).toBe(1);
        for (const [x, y] of found?.lines[0] ?? []) {
          expect(Math.abs(Math.hypot(x / 300, y / 40) - radius)).toBeLessThan(0.01);
        }
      }),
    );
  });

  it("end at the edge of the grid and do not run along it", () => {
    const [found] = contourLines(
      gridOf(1, 1, 41, (x, y) => x + 0 * y),
      [0.25],
    );
    expect(found?.lines.length).toBe(1);
    const line = found?.lines[0] ?? [];
    for (const [x] of line) expect(x).toBeCloseTo(0.25, 9);
    expect(Math.abs((line.at(-1)?.[1] ?? 0) - (line[0]?.[1] ?? 0))).toBeCloseTo(2, 9);
  });

  it("stay whole where a ring begins in the middle of an open line", () => {
    // A ridge across the grid: two open lines, whichever place the ring begins at.
    for (const turn of [0, 1]) {
      const [found] = contourLines(
        gridOf(1, 1, 41, (x, y) => 1 - Math.abs(turn === 0 ? x : y)),
        [0.5],
      );
      expect(found?.lines.length).toBe(2);
    }
  });
});

describe("the levels of a map", () => {
  it("are whole percentages below the best, the two best first", () => {
    const grid = engineEfficiencyMap(vehicleById("compact").engine);
    const levels = levelsOf(grid, "engine");
    const best = Math.max(...grid.values);
    expect(levels[0]).toBeLessThan(best);
    expect(levels[0]).toBeGreaterThan(best - 0.013);
    for (const level of levels) expect(level * 100).toBeCloseTo(Math.round(level * 100), 9);
    expect([...levels].sort((a, b) => b - a)).toEqual(levels);
  });

  it("are all found on the map", () => {
    const grid = machineEfficiencyMap(vehicleById("van").outputMachine);
    const levels = levelsOf(grid, "machine");
    for (const { lines } of contourLines(grid, levels)) expect(lines.length).toBeGreaterThan(0);
  });
});
