import { describe, expect, it } from "vitest";
import { kmhToMps, mpsToKmh } from "../../../shared/units.ts";
import { GRAVITY, gradeSine, roadLoad } from "../../../sim/drivetrain/road.ts";
import type { Vehicle } from "../../../sim/parameters/schema.ts";
import { compactWith, HeldPlant, withoutLosses } from "./held-plant.ts";

/** A vehicle whose turning masses count together with its mass as exactly 1500 kg, without any other loss. */
function coaster(): Vehicle {
  const withMass = (mass: number): Vehicle =>
    compactWith((compact) => ({
      ...withoutLosses(compact),
      body: { ...compact.body, mass, dragArea: 0.7 },
    }));
  return withMass(1500 - (new HeldPlant(withMass(1000)).effectiveMass - 1000));
}

const START = kmhToMps(100);
const ALPHA = Math.sqrt(9.81 * 0.012);
const BETA = Math.sqrt((1.2 * 0.7) / 3000);

/** Released at 100 km/h at a step of 10 ms: rolling resistance with the source's g = 9.81, air of 1.2 kg/m³. */
function released(): HeldPlant {
  const plant = new HeldPlant(coaster(), { airDensity: 1.2 });
  plant.s.rollingForce = 1500 * 9.81 * 0.012;
  plant.s.ringSpeed = START * plant.p.perMetresPerRing;
  return plant;
}

// Closed form: formula sheet "Vehicle Propulsion Systems" (Nazarbayev University) after Guzzella and Sciarretta, ch. 2.
// Numbers derived from it: m 1500, cr 0.012, cd·Af 0.7, ρ 1.2, g 9.81, v0 100 km/h.
describe("R3, R4 coasting down, 10 ms", () => {
  const closed = (t: number): number =>
    (ALPHA / BETA) * Math.tan(Math.atan((BETA * START) / ALPHA) - ALPHA * BETA * t);

  it("the vehicle counts as 1500 kg", () => {
    expect(Math.abs(released().effectiveMass - 1500)).toBeLessThan(1e-6);
  });

  it.each([
    [10, 88.84],
    [30, 70.536],
    [60, 49.471],
    [120, 18.532],
  ])("after %i s it runs %f km/h (0.1 %; the closed form itself within 1e-5)", (time, printed) => {
    const plant = released();
    plant.runTo(time);
    expect(Math.abs(mpsToKmh(plant.speed) / printed - 1)).toBeLessThan(1e-3);
    expect(Math.abs(plant.speed / closed(time) - 1)).toBeLessThan(1e-5);
  });

  it("stops after 162.84 s and 1860.97 m (0.1 %), and then stands", () => {
    const plant = released();
    while (plant.s.ringSpeed > 0 && plant.steps < 20_000) plant.step();
    expect(Math.abs((plant.steps * plant.p.h) / 162.84 - 1)).toBeLessThan(1e-3);
    expect(Math.abs(plant.distance / 1860.97 - 1)).toBeLessThan(1e-3);
    const still = Math.log(1 + (BETA * START) ** 2 / ALPHA ** 2) / (2 * BETA * BETA);
    expect(Math.abs(plant.distance / still - 1)).toBeLessThan(1e-5);
    plant.runTo(200);
    expect(plant.s.ringSpeed).toBe(0);
    expect(plant.s.ringHeld).toBe(1);
  });
});

describe("road load", () => {
  const body = (change: Partial<Vehicle["body"]>): Vehicle["body"] =>
    compactWith((compact) => ({ body: { ...compact.body, ...change } })).body;

  // SAE J1263 and J2263, ISO 10521-1 (from memory; the form is common knowledge).
  it("R1 F = A + B v + C v² from coast-down", () => {
    const load = roadLoad(
      body({ roadLoad: "coastdown", mass: 1500, coastdownA: 140, coastdownB: 1.3, coastdownC: 0.4 }),
      1500,
      1.189,
      1.189,
    );
    for (const v of [0, 10, 33]) {
      const force = load.rolling + (load.dragB + load.dragC * v) * v;
      expect(Math.abs(force - (140 + 1.3 * v + 0.4 * v * v))).toBeLessThan(1e-9);
    }
  });

  // Parameters of a two-seat car: Larminie and Lowry, Electric Vehicle Technology Explained, 1st ed. ch. 7; result derived.
  it("R6 at 20 m/s: rolling 72.44 N, air 85.50 N, 3158.8 W", () => {
    const load = roadLoad(body({ rollingCoefficient: 0.0048, dragArea: 1.8 * 0.19 }), 1540, 1.25, 1.189);
    const rolling = (load.rolling * 9.8) / GRAVITY;
    const air = (load.dragB + load.dragC * 20) * 20;
    expect(Math.abs(rolling - 72.44)).toBeLessThan(0.005);
    expect(Math.abs(air - 85.5)).toBeLessThan(0.005);
    expect(Math.abs((rolling + air) * 20 - 3158.8)).toBeLessThan(0.05);
  });

  it("R7 standard gravity is 9.80665 m/s² (3rd CGPM, 1901; NIST SP 330; from memory)", () => {
    expect(GRAVITY).toBe(9.80665);
  });

  // Plausibility as in the same formula sheet: Pmax ≈ ½ρ cd·Af v³ at top speed, P ≈ m g v sin α climbing (±30 %).
  it("R5 the compact's engine power climbs and speeds as the rules of thumb say, within 30 %", () => {
    const vehicle = compactWith(() => ({}));
    const { p } = new HeldPlant(vehicle);
    const needed = (v: number, grade: number): number =>
      (p.rolling + (p.dragB + p.dragC * v) * v + p.weight * gradeSine(grade)) * v;
    const top = Math.cbrt((2 * p.enginePower) / (1.189 * vehicle.body.dragArea));
    expect(Math.abs(needed(top, 0) / p.enginePower - 1)).toBeLessThan(0.3);
    const slow = p.enginePower / (p.weight * Math.sin(Math.atan(0.2)));
    expect(Math.abs(needed(slow, 0.2) / p.enginePower - 1)).toBeLessThan(0.3);
  });
});
