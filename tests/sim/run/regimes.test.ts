import { describe, expect, it } from "vitest";
import { REGIMES, type RegimeRow, regimeOf } from "../../../sim/run/regimes.ts";

/** Standing still, everything off. */
const still: RegimeRow = {
  speed: 0,
  grade: 0,
  engineMode: 0,
  engineSpeed: 0,
  engineTorque: 0,
  fuelPower: 0,
  sunSpeed: 0,
  sunElectric: 40,
  ringSpeed: 0,
  outputShaft: 0,
  outputElectric: 50,
  batteryPower: 410,
  auxiliary: 320,
  wheelForceAsk: 0,
  brakeForce: 0,
  axleShare: 0.8,
};
/** Cruising at 54 km/h (ring 162 rad/s), engine at 150 rad/s with 10 kW, battery level. k = 2.5. */
const cruising: RegimeRow = {
  ...still,
  speed: 15,
  engineMode: 2,
  engineSpeed: 200,
  engineTorque: 60,
  fuelPower: 33000,
  ringSpeed: 162,
  sunSpeed: 3.5 * 200 - 2.5 * 162,
  sunElectric: -5000,
  outputShaft: 4500,
  outputElectric: 4800,
  batteryPower: 320,
  wheelForceAsk: 700,
};
const slowing: RegimeRow = {
  ...still,
  speed: 15,
  ringSpeed: 162,
  sunSpeed: -405,
  wheelForceAsk: -1000,
  outputShaft: -11000,
  outputElectric: -10000,
  batteryPower: -9500,
  brakeForce: 200,
};

/** One row for every rule, by its id. */
const SCENES: Record<string, RegimeRow> = {
  cranking: { ...still, engineMode: 1, engineSpeed: 40 },
  stopping: { ...still, engineMode: 3, engineSpeed: 60 },
  "charging-at-rest": { ...cruising, speed: 0, ringSpeed: 0, sunSpeed: 700, outputShaft: 0 },
  idling: { ...still, engineMode: 2, engineSpeed: 105, fuelPower: 3000 },
  "hill-hold": { ...still, grade: 0.08, brakeForce: 1200 },
  "at-rest": still,
  "engine-braking": { ...slowing, engineMode: 2, engineSpeed: 200, engineTorque: -14, fuelPower: 0 },
  "braking-engine-on": { ...slowing, engineMode: 2, engineSpeed: 110, engineTorque: 5, fuelPower: 3000 },
  "regenerative-braking": slowing,
  "blended-braking": { ...slowing, brakeForce: 600, outputShaft: -4000 },
  "friction-braking": { ...slowing, brakeForce: 1000, outputShaft: 0, outputElectric: 90 },
  "reverse-engine": { ...cruising, speed: -2, ringSpeed: -21, wheelForceAsk: -300 },
  "electric-reverse": { ...still, speed: -2, ringSpeed: -21, wheelForceAsk: -300, outputShaft: 600 },
  "electric-drive": { ...still, speed: 8, ringSpeed: 86, wheelForceAsk: 400, outputShaft: 3500 },
  assist: { ...cruising, batteryPower: 6000 },
  "charging-driving": { ...cruising, batteryPower: -6000 },
  "mechanical-point": { ...cruising, ringSpeed: 280, sunSpeed: 0 },
  "circulating-power": {
    ...cruising,
    ringSpeed: 330,
    sunSpeed: -125,
    sunElectric: 900,
    outputElectric: -700,
  },
  direct: { ...cruising, ringSpeed: 200, sunSpeed: 200 },
  "split-below-direct": cruising,
  "split-above-direct": { ...cruising, ringSpeed: 240, sunSpeed: 100 },
  coasting: { ...still, speed: 15, ringSpeed: 162, sunSpeed: -405 },
};

describe("regimes", () => {
  for (const rule of REGIMES) {
    it(`${rule.rule} ${rule.title}`, () => {
      const scene = SCENES[rule.id];
      if (!scene) throw new Error(`no scene for ${rule.id}`);
      expect(REGIMES[regimeOf(scene)]?.id).toBe(rule.id);
    });
  }

  it("R0 the last rule always holds, so the list is total", () => {
    expect(REGIMES.at(-1)?.when(still)).toBe(true);
    expect(REGIMES.at(-1)?.when(cruising)).toBe(true);
  });

  it("rules are numbered in order and ids are unique", () => {
    expect(REGIMES.map((rule) => rule.rule)).toEqual(REGIMES.map((_, i) => `R${i + 1}`));
    expect(new Set(REGIMES.map((rule) => rule.id)).size).toBe(REGIMES.length);
  });
});
