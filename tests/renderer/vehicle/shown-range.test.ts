import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { shownEnds, shownValue, toSi } from "../../../renderer/vehicle/shown-range.ts";
import { shownUnit } from "../../../renderer/vehicle/shown-units.ts";
import { readTyped } from "../../../renderer/vehicle/typed.ts";
import { isQuantity } from "../../../sim/parameters/quantity.ts";
import { DECLARATIONS, declarationAt } from "../../../sim/vehicle/declarations.ts";

const quantities = DECLARATIONS.flatMap(({ path, meta }) => (isQuantity(meta) ? [{ path, meta }] : []));

/** A parameter with its unit, and a value that it accepts: an end now and then. */
const accepted = fc
  .record({
    of: fc.constantFrom(...quantities),
    share: fc.oneof(fc.constantFrom(0, 1, 1e-9, 1 - 1e-9, 1e-5), fc.double({ min: 0, max: 1, noNaN: true })),
    figures: fc.constantFrom(2, 3, 4, 6, 17),
  })
  .map(({ of: { path, meta }, share, figures }) => {
    const exact = meta.min + share * (meta.max - meta.min);
    const round = Number(exact.toPrecision(figures));
    const value = Math.min(meta.max, Math.max(meta.min, round));
    return { path, meta, unit: shownUnit(path, meta), value };
  });

const declared = (path: string) => {
  const meta = declarationAt(path)?.meta;
  if (!meta || !isQuantity(meta)) throw new Error(path);
  return { meta, unit: shownUnit(path, meta) };
};

/** What a field of one number makes of a text. */
const typed = (path: string, text: string): unknown =>
  readTyped(path, { ...declared(path).meta, kind: "number" }, text, undefined);

describe("the range of a parameter as it is shown", () => {
  it.each([
    // 50 and 160 rad/s; 1 rad/s is 9.549297 rev/min (arithmetic: 60 / 2π).
    ["engine.idleSpeed", "478", "1520"],
    ["sunMachine.maxSpeed", "1910", "28600"],
    ["engine.noStopBelow", "-23.15", "106.85"],
  ])("of %s has few digits: %s … %s", (path, least, most) => {
    const { meta, unit } = declared(path);
    expect(shownEnds(unit, meta)).toEqual([least, most]);
  });

  it("is accepted whole, and leaves out no more than a hundredth of an end", () => {
    for (const { path, meta } of quantities) {
      const unit = shownUnit(path, meta);
      const ends = shownEnds(unit, meta);
      for (const end of ends) {
        expect(typed(path, end), `${path} ${end}`).toBeGreaterThanOrEqual(meta.min);
        expect(typed(path, end), `${path} ${end}`).toBeLessThanOrEqual(meta.max);
      }
      const [least, most] = ends.map(Number);
      for (const [shown, end] of [
        [least, unit.toShown(meta.min)],
        [most, unit.toShown(meta.max)],
      ] as const)
        expect(Math.abs((shown ?? 0) - end), path).toBeLessThanOrEqual(0.01 * Math.abs(end));
    }
  });

  it("holds every value that stands beside it, and a value shown would be accepted", () => {
    fc.assert(
      fc.property(accepted, ({ path, meta, unit, value }) => {
        const shown = Number(shownValue(unit, meta, value));
        const [least = Number.NaN, most = Number.NaN] = shownEnds(unit, meta, [value]).map(Number);
        expect(shown).toBeGreaterThanOrEqual(least);
        expect(shown).toBeLessThanOrEqual(most);
        for (const number of [least, most, shown]) {
          const back = typed(path, String(number));
          expect(back).toBeGreaterThanOrEqual(meta.min);
          expect(back).toBeLessThanOrEqual(meta.max);
        }
        const exact = unit.toShown(value);
        expect(Math.abs(shown - exact)).toBeLessThanOrEqual(6e-4 * Math.abs(exact));
      }),
      { numRuns: 1000 },
    );
  });

  it("never takes in what is refused", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...quantities),
        fc.double({ min: 1e-9, max: 1, noNaN: true }),
        fc.boolean(),
        ({ path, meta }, share, below) => {
          const unit = shownUnit(path, meta);
          const off = share * Math.max(Math.abs(meta.min), Math.abs(meta.max));
          const shown = unit.toShown(below ? meta.min - off : meta.max + off);
          const si = toSi(unit, meta, shown);
          fc.pre(si < meta.min || si > meta.max);
          const [least = 0, most = 0] = shownEnds(unit, meta).map(Number);
          expect(shown < least || shown > most).toBe(true);
        },
      ),
      { numRuns: 1000 },
    );
  });
});

describe("a value as it is shown", () => {
  it("stands as it was typed, and with four digits where it is round in SI only", () => {
    const { meta, unit } = declared("engine.idleSpeed");
    expect(shownValue(unit, meta, 105)).toBe("1003");
    for (const text of ["1002.5", "987.654", "1000"])
      expect(shownValue(unit, meta, unit.fromShown(Number(text)))).toBe(text);
  });
});

describe("a list", () => {
  it("keeps two numbers apart that are shown alike", () => {
    const { meta, unit } = declared("engine.fullLoadSpeed");
    const alike = [500.000001, 500.000002];
    const texts = alike.map((value) => shownValue(unit, meta, value));
    expect(texts[0]).toBe(texts[1]);
    expect(readTyped("engine.fullLoadSpeed", meta, texts.join(" "), alike)).toEqual(alike);
  });
});
