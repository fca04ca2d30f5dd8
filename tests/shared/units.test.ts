import fc from "fast-check";
import { describe, expect, it } from "vitest";
import * as units from "../../shared/units.ts";
import { even } from "../sim/drivetrain/even.ts";

const SEED = 3600;

type Conversion = (value: number) => number;
const PAIRS: readonly (readonly [string, Conversion, Conversion])[] = [
  ["rev/min", units.rpmToRadPerS, units.radPerSToRpm],
  ["km/h", units.kmhToMps, units.mpsToKmh],
  ["mph", units.mphToMps, units.mpsToMph],
  ["miles", units.milesToMetres, units.metresToMiles],
  ["kWh", units.kwhToJoules, units.joulesToKwh],
  ["Ah", units.ampHoursToCoulombs, units.coulombsToAmpHours],
  ["gallons", units.gallonsToLitres, units.litresToGallons],
  ["lbf", units.lbfToNewtons, units.newtonsToLbf],
  ["lbf·ft", units.poundFeetToNewtonMetres, units.newtonMetresToPoundFeet],
  ["lbf/mph", units.lbfPerMphToNPerMps, units.nPerMpsToLbfPerMph],
  ["lbf/mph²", units.lbfPerMph2ToNPerMps2, units.nPerMps2ToLbfPerMph2],
  ["°C", units.celsiusToKelvin, units.kelvinToCelsius],
  ["per cent", units.percentToShare, units.shareToPercent],
];

describe(`conversions (seed ${SEED})`, () => {
  it.each(PAIRS)(
    "%s there and back is the same number, both ways, to 1e-15 of its size",
    (name, there, back) => {
      const offset = name === "°C" ? 300 : 0;
      fc.assert(
        fc.property(even(-1e6, 1e6), (value) => {
          const slack = 1e-15 * (Math.abs(value) + offset) + 1e-300;
          expect(Math.abs(back(there(value)) - value)).toBeLessThanOrEqual(slack);
          expect(Math.abs(there(back(value)) - value)).toBeLessThanOrEqual(slack);
        }),
        { seed: SEED, numRuns: 300 },
      );
    },
  );

  it("every export that has a partner stands in the list", () => {
    const listed = new Set(PAIRS.flatMap(([, there, back]) => [there, back]));
    const own: unknown[] = [units.litresPer100KmToMpg, units.mpgToLitresPer100Km];
    const missing = Object.entries(units).filter(([, f]) => !listed.has(f) && !own.includes(f));
    expect(missing.map(([name]) => name)).toEqual([]);
  });

  // NIST SP 811 and the definitions it rests on: mile 1609.344 m, US gallon 3.785411784 L, pound-force 4.4482216152605 N.
  it.each([
    ["rpmToRadPerS", units.rpmToRadPerS(60), 2 * Math.PI],
    ["kmhToMps", units.kmhToMps(36), 10],
    ["mphToMps", units.mphToMps(1), 0.44704],
    ["milesToMetres", units.milesToMetres(1), 1609.344],
    ["kwhToJoules", units.kwhToJoules(1), 3.6e6],
    ["ampHoursToCoulombs", units.ampHoursToCoulombs(6), 21600],
    ["gallonsToLitres", units.gallonsToLitres(1), 3.785411784],
    ["lbfToNewtons", units.lbfToNewtons(1), 4.4482216152605],
    ["lbfPerMphToNPerMps (R2)", units.lbfPerMphToNPerMps(1), 4.4482216152605 / 0.44704],
    ["lbfPerMph2ToNPerMps2 (R2)", units.lbfPerMph2ToNPerMps2(1), 4.4482216152605 / 0.44704 ** 2],
    ["celsiusToKelvin", units.celsiusToKelvin(20), 293.15],
    ["percentToShare", units.percentToShare(5), 0.05],
  ])("%s has the defined factor", (_name, got, defined) => {
    expect(Math.abs(got / defined - 1)).toBeLessThan(1e-14);
  });

  it("F4 L/100 km and mpg: 235.214583 over each other, one function its own inverse", () => {
    expect(Math.abs(units.mpgToLitresPer100Km(1) - 235.214583)).toBeLessThan(5e-7);
    expect(Math.abs(units.mpgToLitresPer100Km(27.7) / (235.2145833333 / 27.7) - 1)).toBeLessThan(1e-9);
    expect(Math.abs(units.mpgToLitresPer100Km(31.2) - 7.5389)).toBeLessThan(5e-5);
    expect(Math.abs(units.litresPer100KmToMpg(units.mpgToLitresPer100Km(41)) - 41)).toBeLessThan(1e-13);
    expect(units.litresPer100KmToMpg(0)).toBe(Number.POSITIVE_INFINITY);
  });
});
