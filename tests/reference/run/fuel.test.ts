import { describe, expect, it } from "vitest";
import { combineFuelPerDistance } from "../../../cycles/composite/weighting.ts";
import { gallonsToLitres, litresPer100KmToMpg, mpgToLitresPer100Km } from "../../../shared/units.ts";
import { vehicleSchema } from "../../../sim/parameters/schema.ts";
import { carbonDioxide, consumption, litres } from "../../../sim/run/fuel.ts";

const fuel = vehicleSchema.parse({}).fuel;
/** Joules in an international-table British thermal unit, kilograms in a pound (NIST SP 811). */
const JOULES_PER_BTU = 1055.05585262;
const KILOGRAMS_PER_POUND = 0.45359237;

describe("fuel against published factors", () => {
  it("F1 combined economy of 27.7 and 36.9 mpg is 31.2 (40 CFR Part 600, Appendix II(a)(2))", () => {
    const combined = litresPer100KmToMpg(
      combineFuelPerDistance(mpgToLitresPer100Km(27.7), mpgToLitresPer100Km(36.9)),
    );
    expect(combined).toBeCloseTo(31.2005, 4);
  });

  it("F4 L/100 km = 235.214583 / mpg (exact units, NIST SP 811)", () => {
    expect(mpgToLitresPer100Km(27.7)).toBeCloseTo(8.4915, 4);
    expect(mpgToLitresPer100Km(31.2)).toBeCloseTo(7.5389, 4);
    expect(litresPer100KmToMpg(1)).toBeCloseTo(235.214583, 6);
  });

  it("P3 the test fuel's heat: 18 478 Btu/lb and 0.745 kg/L (40 CFR Part 600, Appendix II(b)(3))", () => {
    const perKilogram = (18478 * JOULES_PER_BTU) / KILOGRAMS_PER_POUND;
    expect(Math.abs(fuel.lowerHeat / perKilogram - 1)).toBeLessThan(1e-3);
    expect(fuel.density).toBe(745);
    expect(litres(fuel, 31.99e6)).toBeCloseTo(1, 2);
  });

  it("P4 the heat a litre lies within the range for gasoline (US DOE, 112 114–116 090 Btu/gal)", () => {
    const perGallon = (fuel.lowerHeat * fuel.density * gallonsToLitres(1)) / 1000 / JOULES_PER_BTU;
    expect(perGallon).toBeGreaterThan(112114);
    expect(perGallon).toBeLessThan(116090);
  });

  it("P1 8 887 g of CO2 a US gallon (EPA-420-F-11-041), within 1.5 %", () => {
    const perGallon = carbonDioxide(fuel, (fuel.lowerHeat * fuel.density * gallonsToLitres(1)) / 1000);
    expect(Math.abs(perGallon / 8887 - 1)).toBeLessThan(0.015);
  });

  it("P8 3.172 kg of CO2 a kilogram of fuel without ethanol (derived from its composition)", () => {
    expect(carbonDioxide(fuel, fuel.lowerHeat) / 1000).toBeCloseTo(3.172, 2);
  });

  it("consumption is the same amount in every unit", () => {
    const used = consumption(fuel, litres(fuel, 1) ** -1 * 5, 100_000);
    expect(used.litres).toBeCloseTo(5, 9);
    expect(used.litresPer100Km).toBeCloseTo(5, 9);
    expect(used.mpg).toBeCloseTo(235.214583 / 5, 5);
  });
});
