import { describe, expect, it } from "vitest";
import {
  carrierSpeed,
  meshLossTorque,
  planetSpeed,
  planetSpinOnCarrier,
  powerShares,
  ringSpeed,
  sunSpeed,
  torquesFromEngine,
  torquesFromMesh,
} from "../../../sim/drivetrain/gear-set.ts";

/** Half a unit of the last printed digit, unless a row says more. */
const teeth = (sunTeeth: number, planetTeeth: number, ringTeeth: number) => ({
  sunTeeth,
  planetTeeth,
  ringTeeth,
  planets: 3,
});

describe("speeds of planetary sets against textbooks", () => {
  it("K1 Shigley's Mechanical Engineering Design, Ex. 13-5 (from memory): 20/30/80, sun −100, ring held", () => {
    const carrier = carrierSpeed(4, -100, 0);
    expect(carrier).toBeCloseTo(-20, 12);
    expect(planetSpeed(teeth(20, 30, 80), carrier, 0)).toBeCloseTo(100 / 3, 12);
  });

  it("K2 Khurmi and Gupta, Theory of Machines, Ex. 13.6: 32/20/72, ring held, carrier 18", () => {
    expect(sunSpeed(72 / 32, 18, 0)).toBeCloseTo(58.5, 12);
    expect(planetSpeed(teeth(32, 20, 72), 18, 0)).toBeCloseTo(-46.8, 12);
  });

  it("K3 Khurmi and Gupta, Ex. 13.7; Sarkar, Ill. 11 (0.03846): 40/25/90, sun +1, ring −1/2", () => {
    expect(carrierSpeed(90 / 40, 1, -0.5)).toBeCloseTo(-5 / 130, 12);
  });

  it("K4 the same, ring held: carrier 0.3077", () => {
    expect(carrierSpeed(90 / 40, 1, 0)).toBeCloseTo(40 / 130, 12);
  });

  it("K5 Sarkar, Theory of Machines, ch. 4 Ill. 10: 48/24/96, ring held, carrier −20", () => {
    expect(sunSpeed(2, -20, 0)).toBeCloseTo(-60, 12);
    expect(planetSpeed(teeth(48, 24, 96), -20, 0)).toBeCloseTo(60, 12);
  });

  it("K6 Khurmi and Gupta, Ex. 13.9: sun to turn 5 times the carrier with the ring held gives 14/21/56", () => {
    expect(sunSpeed(56 / 14, 1, 0)).toBeCloseTo(5, 12);
    expect(14 + 2 * 21).toBe(56);
  });

  it("K7 Khurmi and Gupta, Ex. 13.17: 20/80, sun 1000; ring 0, then +10", () => {
    expect(carrierSpeed(4, 1000, 0)).toBeCloseTo(200, 12);
    expect(carrierSpeed(4, 1000, 10)).toBeCloseTo(208, 12);
  });

  it("K8 Khurmi and Gupta, Ex. 13.4: gears 36 and 45 on an arm at 150; the 36 at 0, then −300", () => {
    const other = (sun: number): number => 150 + planetSpinOnCarrier(teeth(36, 45, 126), sun, 150);
    expect(other(0)).toBeCloseTo(270, 12);
    expect(other(-300)).toBeCloseTo(510, 12);
  });

  it("K9 Sarkar, Ill. 16: bevel differential is k = 1; carrier 200, one wheel 210", () => {
    expect(ringSpeed(1, 210, 200)).toBeCloseTo(190, 12);
  });

  it("K10 University of Ljubljana, planetary transmission reference run: 21/108, ratio 6.14286", () => {
    expect(sunSpeed(108 / 21, 1, 0)).toBeCloseTo(6.14286, 5);
  });

  it("the check set 40/32/104 (common practice, no source)", () => {
    const k = 104 / 40;
    expect(sunSpeed(k, 1, 0)).toBeCloseTo(3.6, 12);
    expect(ringSpeed(k, 0, 1)).toBeCloseTo(1.385, 3);
    expect(sunSpeed(k, 0, 1)).toBeCloseTo(-2.6, 12);
  });
});

describe("torques, power and loss", () => {
  it("T1 Khurmi and Gupta, Ex. 13.20: 16/64, 100 N·m at the sun, ring reaction 400, carrier 500", () => {
    const t = torquesFromMesh(4, 100, 0);
    expect(t).toEqual({ sun: 100, ring: 400, carrier: -500 });
  });

  it("T3 sun in, ring held, carrier out: (1 + k η0)/(1 + k) (Müller 1982; Pennestrì and Freudenstein 1993; from memory)", () => {
    for (const [k, expected] of [
      [2.6, 0.985556],
      [4, 0.984],
    ] as const) {
      const loss = meshLossTorque(0.98, 100, 1e9);
      const t = torquesFromMesh(k, 100 - loss, loss);
      // The model takes 1 − η0 of the mesh torque; at the sun that is the exact statement to second order.
      const efficiency = -(t.carrier / t.sun) / (1 + k);
      expect(Math.abs(efficiency - expected)).toBeLessThan(5e-4);
    }
  });

  it("T4 carrier in, ring held, sun out: the exact statement (1 + k)/(1 + k/η0) = 0.985475 within 5e-4 (derived)", () => {
    const k = 2.6;
    const relative = -1e9;
    const mesh = -100;
    const loss = meshLossTorque(0.98, mesh, -relative);
    const t = torquesFromMesh(k, mesh, loss);
    const efficiency = (-t.sun * (1 + k)) / t.carrier;
    expect(Math.abs(efficiency - 0.985475)).toBeLessThan(5e-4);
  });

  it("T6 turning as one block loses nothing, whatever the torque", () => {
    expect(meshLossTorque(0.97, 500, 0)).toBe(0);
  });
});

describe("power split (k = 2.6)", () => {
  it("S1 the ring takes k/(1 + k) of the engine's torque, the sun 1/(1 + k) (Benford and Leising, SAE 810102; from memory)", () => {
    const t = torquesFromEngine(2.6, 1);
    expect(-t.ring).toBeCloseTo(0.722222, 6);
    expect(-t.sun).toBeCloseTo(0.277778, 6);
  });

  it("S3 electrical share and sun speed over the speed ratio (derived; formula after Miller 2006, from memory)", () => {
    const rows = [
      [0, 1, 3.6],
      [0.5, 0.638889, 2.3],
      [1, 0.277778, 1],
      [18 / 13, 0, 0],
      [2, -0.444444, -1.6],
    ] as const;
    for (const [ratio, electrical, sun] of rows) {
      expect(powerShares(2.6, 1, ratio).electrical).toBeCloseTo(electrical, 6);
      expect(sunSpeed(2.6, 1, ratio)).toBeCloseTo(sun, 12);
    }
  });
});
