import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cycleById } from "../../../cycles/catalogue.ts";
import { COMPOSITE_TESTS, compositeById } from "../../../cycles/composite/registry.ts";
import { combineFuelPerDistance, weightCityBags } from "../../../cycles/composite/weighting.ts";
import { faultsOf } from "../faults-of.ts";

describe("composite tests", () => {
  it.each(COMPOSITE_TESTS)("$id: weights add up to 1 and every cycle exists", ({ parts }) => {
    expect(parts.reduce((sum, part) => sum + part.weight, 0)).toBeCloseTo(1, 12);
    for (const part of parts) expect(() => cycleById(part.cycle)).not.toThrow();
  });

  it("are found by id, and an unknown id is refused with the known ones", () => {
    expect(compositeById("combined").parts.map((part) => part.cycle)).toEqual(["ftp75", "hwfet"]);
    const [fault] = faultsOf(() => compositeById("mixed"));
    expect(fault).toMatchObject({ value: "mixed", accepted: "combined, combined-warm" });
  });
});

const amount = fc.double({ min: 0, max: 1e6, noNaN: true });
const distance = fc.double({ min: 1, max: 1e5, noNaN: true });
const bag = fc.record({ amount, distance });

describe("weightCityBags", () => {
  it("gives the plain amount per distance when cold and hot start are alike", () => {
    fc.assert(
      fc.property(bag, bag, (transient, stabilised) => {
        const plain = (transient.amount + stabilised.amount) / (transient.distance + stabilised.distance);
        const weighted = weightCityBags({ coldTransient: transient, stabilised, hotTransient: transient });
        expect(Math.abs(weighted - plain)).toBeLessThanOrEqual(1e-12 * plain);
      }),
    );
  });

  it("gives the cold start 43 parts and the hot start 57", () => {
    const empty = { amount: 0, distance: 1 };
    const one = { amount: 2, distance: 1 };
    expect(weightCityBags({ coldTransient: one, stabilised: empty, hotTransient: empty })).toBeCloseTo(
      0.43,
      15,
    );
    expect(weightCityBags({ coldTransient: empty, stabilised: empty, hotTransient: one })).toBeCloseTo(
      0.57,
      15,
    );
    expect(weightCityBags({ coldTransient: empty, stabilised: one, hotTransient: empty })).toBeCloseTo(1, 15);
  });
});

describe("combineFuelPerDistance", () => {
  it("lies between city and highway, nearer to the city", () => {
    expect(combineFuelPerDistance(10, 0)).toBeCloseTo(5.5, 12);
    expect(combineFuelPerDistance(0, 10)).toBeCloseTo(4.5, 12);
    expect(combineFuelPerDistance(6, 6)).toBeCloseTo(6, 12);
  });
});
