import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { at } from "../../../shared/at.ts";
import { interpolate, lookUp, monotoneCubic, tabulate } from "../../../sim/drivetrain/table.ts";
import { even } from "./even.ts";

const SEED = 517;

/** Rising x with any y, 2 to 12 points. */
const points = fc
  .array(
    fc.record({
      gap: even(0.01, 5),
      y: even(-50, 50),
    }),
    {
      minLength: 2,
      maxLength: 12,
    },
  )
  .map((list) => {
    let sum = 0;
    return {
      x: list.map(({ gap }) => {
        sum += gap;
        return sum;
      }),
      y: list.map(({ y }) => y),
    };
  });

describe(`linear interpolation (seed ${SEED})`, () => {
  it("passes every point, holds outside and stays between neighbours", () => {
    fc.assert(
      fc.property(points, even(0, 1), ({ x, y }, share) => {
        x.forEach((value, i) => {
          expect(Math.abs(interpolate(x, y, value) - at(y, i))).toBeLessThan(1e-12);
        });
        const last = x.length - 1;
        expect(interpolate(x, y, at(x, 0) - 7)).toBe(at(y, 0));
        expect(interpolate(x, y, at(x, last) + 7)).toBe(at(y, last));
        for (let i = 0; i < last; i += 1) {
          const middle = at(x, i) + share * (at(x, i + 1) - at(x, i));
          const expected = at(y, i) + share * (at(y, i + 1) - at(y, i));
          expect(Math.abs(interpolate(x, y, middle) - expected)).toBeLessThan(1e-9);
        }
      }),
      { seed: SEED, numRuns: 200 },
    );
  });
});

describe("uniform table", () => {
  const table = tabulate(-2, 3, 50, (x) => 4 - 3 * x);

  it("is exact for a straight line, at the samples and between, and holds outside", () => {
    for (let x = -2; x <= 3; x += 0.013) expect(Math.abs(lookUp(table, x) - (4 - 3 * x))).toBeLessThan(1e-12);
    expect(lookUp(table, -2)).toBe(10);
    expect(lookUp(table, -1e9)).toBe(10);
    expect(lookUp(table, 3)).toBe(-5);
    expect(lookUp(table, 1e9)).toBe(-5);
  });

  it("errs by no more than an eighth of curvature times step squared", () => {
    const square = tabulate(0, 1, 20, (x) => x * x);
    let worst = 0;
    for (let x = 0; x <= 1; x += 0.0007) worst = Math.max(worst, Math.abs(lookUp(square, x) - x * x));
    expect(worst).toBeLessThanOrEqual((2 / 8) * 0.05 * 0.05 * (1 + 1e-9));
    expect(worst).toBeGreaterThan((2 / 8) * 0.05 * 0.05 * 0.9);
  });
});

describe(`monotone cubic (seed ${SEED})`, () => {
  it("passes every point, and between two points never leaves them", () => {
    fc.assert(
      fc.property(points, ({ x, y }) => {
        const curve = monotoneCubic(x, y);
        for (let i = 0; i + 1 < x.length; i += 1) {
          const [x0, x1, y0, y1] = [at(x, i), at(x, i + 1), at(y, i), at(y, i + 1)];
          expect(Math.abs(curve(x0) - y0)).toBeLessThan(1e-12);
          const slack = 1e-9 * (1 + Math.abs(y0) + Math.abs(y1));
          let before = y0;
          for (let j = 1; j <= 20; j += 1) {
            const now = curve(x0 + ((x1 - x0) * j) / 20);
            if (y1 >= y0) expect(now).toBeGreaterThanOrEqual(before - slack);
            else expect(now).toBeLessThanOrEqual(before + slack);
            before = now;
          }
          expect(Math.abs(before - y1)).toBeLessThan(slack);
        }
      }),
      { seed: SEED, numRuns: 300 },
    );
  });

  it("is a straight line through points on one, also unequally spaced", () => {
    const x = [0, 0.1, 0.15, 0.9, 1];
    const curve = monotoneCubic(
      x,
      x.map((v) => 3 + 2 * v),
    );
    for (let v = 0; v <= 1; v += 0.01) expect(Math.abs(curve(v) - (3 + 2 * v))).toBeLessThan(1e-12);
  });

  it("is the same curve read from the other end", () => {
    const x = [0, 0.1, 0.2, 0.5, 1];
    const y = [3, 3.3, 3.5, 3.6, 4];
    const back = x.map((v) => 1 - v).reverse();
    const curve = monotoneCubic(x, y);
    const mirrored = monotoneCubic(back, [...y].reverse());
    for (let v = 0; v <= 1; v += 0.01) expect(Math.abs(curve(v) - mirrored(1 - v))).toBeLessThan(1e-12);
  });

  // PchipInterpolator of scipy 1.17.1 (the same slopes after Fritsch and Butland) at places whose two neighbours are
  // inner points; at the ends both programs choose their slopes differently.
  it.each([
    [0.15, 3.548289473684211],
    [0.25, 3.60716049382716],
    [0.42, 3.6725037037037036],
    [0.55, 3.727428878153516],
    [0.72, 3.8581115782215245],
    [0.85, 3.972756182734142],
  ])("the compact's cell at a charge of %f: %f V, as an independent program has it (1e-12)", (soc, volts) => {
    const curve = monotoneCubic(
      [0, 0.1, 0.2, 0.35, 0.5, 0.65, 0.8, 0.9, 1],
      [3.2, 3.5, 3.58, 3.65, 3.7, 3.8, 3.93, 4.02, 4.15],
    );
    expect(Math.abs(curve(soc) - volts)).toBeLessThan(1e-12);
  });

  it.each([
    [0.03, 3.0516564393010768],
    [0.2, 3.4834456768382562],
    [0.4, 3.65741012498333],
    [0.6, 3.849707247805255],
    [0.7, 3.9600006069442726],
    [0.9, 4.081831451648844],
  ])("a cell with very unequal points at %f: %f V, as the same program has it (1e-12)", (soc, volts) => {
    const curve = monotoneCubic(
      [0, 0.0151, 0.0452, 0.0955, 0.1508, 0.2915, 0.4573, 0.8342, 0.9497, 1],
      [2.5061, 2.8981, 3.1461, 3.3231, 3.4218, 3.5737, 3.7017, 4.0637, 4.1009, 4.1932],
    );
    expect(Math.abs(curve(soc) - volts)).toBeLessThan(1e-12);
  });
});
