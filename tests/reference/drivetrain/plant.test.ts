import { Solver } from "odex";
import { describe, expect, it } from "vitest";
import { kmhToMps, mpsToKmh } from "../../../shared/units.ts";
import type { VehicleInput } from "../../../sim/parameters/schema.ts";
import { BarePlant } from "../../support/plant.ts";

/** Gear losses and engine friction out of the way, so that closed forms hold. */
const lossless: VehicleInput = {
  gearSet: { basicEfficiency: 1 },
  finalDrive: { efficiency: 1 },
  outputMachine: { reductionEfficiency: 1 },
  engine: { friction0: 0, friction1: 0, friction2: 0, breakaway: 0 },
};

/** Rotating masses made as small as the parameters allow. */
const light: VehicleInput = {
  ...lossless,
  gearSet: { basicEfficiency: 1, ringInertia: 0.001, carrierInertia: 0, planetInertia: 0, planetMass: 0 },
  sunMachine: { inertia: 0.0005 },
  outputMachine: { inertia: 0.0005, reductionEfficiency: 1, reduction: 1 },
  body: { mass: 1500, rollingCoefficient: 0.012, dragArea: 0.7, wheelInertia: 0.1 },
};

describe("R3, R4 coasting down (closed form after Guzzella and Sciarretta, ch. 2, as printed in a formula sheet)", () => {
  const gravity = 9.80665;
  const start = kmhToMps(100);
  /** v(t) = (α/β) tan(arctan(β v0/α) − α β t); the little mass that still turns counts with the vehicle's. */
  const closed = (t: number, mass: number): number => {
    const alpha = Math.sqrt((gravity * 0.012 * 1500) / mass);
    const beta = Math.sqrt((1.2 * 0.7) / (2 * mass));
    return (alpha / beta) * Math.tan(Math.atan((beta * start) / alpha) - alpha * beta * t);
  };

  it("speeds after 10, 30, 60 and 120 s within 0.1 % at 10 ms", () => {
    const plant = new BarePlant(light);
    plant.s.ringSpeed = start / plant.p.metresPerRing;
    for (const [time, printed] of [
      [10, 88.84],
      [30, 70.536],
      [60, 49.471],
      [120, 18.532],
    ] as const) {
      plant.runTo(time);
      const mass = plant.p.massRr / plant.p.metresPerRing ** 2;
      expect(Math.abs(plant.speed / closed(time, mass) - 1)).toBeLessThan(1e-4);
      // The printed row has no turning mass and g = 9.81: 0.1 % each.
      expect(Math.abs(mpsToKmh(plant.speed) - printed)).toBeLessThan(0.1);
    }
  });

  it("comes to rest after 162.84 s and stays there", () => {
    const plant = new BarePlant(light);
    plant.s.ringSpeed = start / plant.p.metresPerRing;
    plant.runTo(162);
    expect(plant.speed).toBeGreaterThan(0);
    plant.runTo(164);
    expect(plant.speed).toBe(0);
    plant.runTo(170);
    expect(plant.speed).toBe(0);
  });
});

/** Accelerations of the same plant written out anew: three bodies on a lever and the force that ties them. */
function constrained(
  plant: BarePlant,
  engine: number,
  sun: number,
  ring: number,
): { carrier: number; ring: number } {
  const { p } = plant;
  const k = p.k;
  // Unknowns: ω̇c, ω̇r, Tm with ωs = (1+k)ωc − kωr; planets' spin left out (inertia zero in this vehicle).
  const inertiaRing = p.ringSideInertia + p.wheelSideInertia;
  // Jc ω̇c = Te + (1+k) Tm ; Js ω̇s = Ts − Tm ; Jr ω̇r = Tr − k Tm
  // Eliminate Tm = Ts − Js((1+k)ω̇c − kω̇r).
  const a11 = p.carrierInertia + p.sunInertia * (1 + k) * (1 + k);
  const a12 = -p.sunInertia * k * (1 + k);
  const a22 = inertiaRing + p.sunInertia * k * k;
  const b1 = engine + (1 + k) * sun;
  const b2 = ring - k * sun;
  const det = a11 * a22 - a12 * a12;
  return { carrier: (b1 * a22 - a12 * b2) / det, ring: (a11 * b2 - a12 * b1) / det };
}

describe("S6 the mass matrix against bodies tied by a constraint force (after Liu and Peng 2008, from memory)", () => {
  it("gives the same accelerations to 1e-10", () => {
    const plant = new BarePlant({
      ...lossless,
      gearSet: { basicEfficiency: 1, planetInertia: 0 },
      body: { dragArea: 0.1, rollingCoefficient: 0.003 },
    });
    const { p, s } = plant;
    for (const [engine, sun, output] of [
      [80, -20, 50],
      [0, 35, -120],
      [120, 0, 0],
    ] as const) {
      s.carrierSpeed = 200;
      s.ringSpeed = 150;
      s.indicatedTorque = engine;
      s.sunTorque = sun;
      s.outputTorque = output;
      s.rollingForce = 0;
      const air = p.dragC * (150 * p.metresPerRing) ** 2 * p.metresPerRing;
      s.ringAcceleration = 0;
      plant.runTo(plant.time + p.h);
      const expected = constrained(plant, engine, sun, p.reduction * output - air);
      expect(Math.abs(s.carrierChange / expected.carrier - 1)).toBeLessThan(1e-10);
      expect(Math.abs(s.ringChange / expected.ring - 1)).toBeLessThan(1e-10);
    }
  });
});

/** Solution at a time of y' = rates(t, y) with y(0) = start, to 1e-11. */
function integrate(rates: (t: number, y: number[]) => number[], start: number[], time: number): number[] {
  const solver = new Solver(start.length);
  solver.absoluteTolerance = 1e-11;
  solver.relativeTolerance = 1e-11;
  return solver.solve(rates, 0, start, time).y;
}

describe("free response against a general-purpose integrator (odex, Gragg–Bulirsch–Stoer extrapolation)", () => {
  it("torques on both machines and the engine, air drag, rolling: speeds within 2e-5 after 20 s", () => {
    const plant = new BarePlant({
      ...lossless,
      engine: { ...lossless.engine, friction0: 8, friction1: 0.02, friction2: 3e-5 },
    });
    const { p, s } = plant;
    s.carrierSpeed = 150;
    s.ringSpeed = 60;
    s.indicatedTorque = 60;
    s.sunTorque = -12;
    s.outputTorque = 20;
    const rates = (_t: number, q: number[]): number[] => {
      const [c = 0, r = 0] = q;
      const v = r * p.metresPerRing;
      const friction = p.friction0 + p.friction1 * c + p.friction2 * c * c;
      const qc = 60 - friction + p.k1 * -12;
      const qr = p.reduction * 20 - p.k * -12 - (p.dragC * v * v + p.rolling) * p.metresPerRing;
      return [p.inverseCc * qc + p.inverseCr * qr, p.inverseCr * qc + p.inverseRr * qr];
    };
    for (const time of [1, 5, 20]) {
      const [carrier = 0, ring = 0] = integrate(rates, [150, 60], time);
      plant.runTo(time);
      expect(Math.abs(s.carrierSpeed / carrier - 1)).toBeLessThan(2e-5);
      expect(Math.abs(s.ringSpeed / ring - 1)).toBeLessThan(2e-5);
    }
  });

  it("battery with an RC pair at constant power: charge and RC voltage within 1e-6 after 60 s", () => {
    const plant = new BarePlant({
      battery: {
        cellSoc: [0, 1],
        cellVoltage: [3.4, 4.0],
        polarisationResistance: 0.05,
        polarisationTime: 15,
      },
    });
    const { p, s } = plant;
    const power = 9000;
    const rates = (_t: number, y: number[]): number[] => {
      const [soc = 0, u = 0] = y;
      const e = 54 * (3.4 + 0.6 * soc) - u;
      const i = (e - Math.sqrt(e * e - 4 * 0.12 * power)) / (2 * 0.12);
      return [-i / p.charge, (i - u / 0.05) * (0.05 / 15)];
    };
    const exact = integrate(rates, [0.6, 0], 60);
    plant.runTo(60, (state) => {
      state.awake = 0;
      state.auxiliaryPower = power;
    });
    expect(Math.abs(s.soc - (exact[0] ?? 0))).toBeLessThan(1e-6);
    expect(Math.abs(s.rcVoltage - (exact[1] ?? 0))).toBeLessThan(1e-5);
  });
});

/** Order from errors at steps each half of the one before. */
function orders(errors: readonly number[]): number[] {
  return errors.slice(1).map((error, i) => Math.log2((errors[i] ?? 0) / error));
}

describe("measured order of the integrator (halved four times)", () => {
  const STEPS = [0.1, 0.05, 0.025, 0.0125, 0.00625];

  it("is exact for constant torques, whatever the step", () => {
    const ends = STEPS.map((step) => {
      // Air of the least density: the ring's motion is slow, so drag is below the last digits looked at.
      const plant = new BarePlant(
        { ...lossless, body: { dragArea: 0.1, rollingCoefficient: 0.003 } },
        step,
        0.3,
      );
      const { p, s } = plant;
      s.rollingForce = 0;
      s.carrierSpeed = 100;
      s.indicatedTorque = 50;
      s.sunTorque = -50 / p.k1;
      plant.runTo(1);
      const expected = 100 + p.inverseCr * (-p.k * s.sunTorque);
      expect(Math.abs(s.carrierSpeed / expected - 1)).toBeLessThan(1e-6);
      return s.carrierSpeed;
    });
    expect(Math.max(...ends) - Math.min(...ends)).toBeLessThan(1e-7);
  });

  it("is two for an engine running down against viscous friction", () => {
    const errors = STEPS.map((step) => {
      const plant = new BarePlant(
        {
          ...lossless,
          engine: { friction0: 0, friction1: 0.3, friction2: 0, breakaway: 0 },
          sunMachine: { inertia: 0.0005 },
        },
        step,
      );
      plant.s.carrierSpeed = 300;
      plant.s.brakeForce = 15000;
      const inertia = plant.p.massCc;
      plant.runTo(1);
      return Math.abs(plant.s.carrierSpeed - 300 * Math.exp(-0.3 / inertia));
    });
    // The first step has no acceleration to predict with, so the asymptotic range begins at the second halving.
    for (const order of orders(errors).slice(1)) {
      expect(order).toBeGreaterThan(1.8);
      expect(order).toBeLessThan(2.2);
    }
  });

  it("is two for a coast-down with quadratic drag", () => {
    const errors = STEPS.map((step) => {
      const plant = new BarePlant(
        { ...light, body: { mass: 300, rollingCoefficient: 0.003, dragArea: 8, wheelInertia: 0.1 } },
        step,
      );
      plant.s.rollingForce = 0;
      plant.s.ringSpeed = 50 / plant.p.metresPerRing;
      // The slowing sun pushes the engine against its stop, so only the ring's mass counts.
      const { p } = plant;
      const c = (p.dragC * p.metresPerRing ** 3) / p.massRr;
      const w = plant.s.ringSpeed;
      plant.runTo(10);
      return Math.abs(plant.s.ringSpeed - w / (1 + c * w * 10));
    });
    for (const order of orders(errors).slice(1)) {
      expect(order).toBeGreaterThan(1.8);
      expect(order).toBeLessThan(2.2);
    }
  });
});
