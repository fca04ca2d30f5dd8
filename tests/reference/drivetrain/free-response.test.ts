import { describe, expect, it } from "vitest";
import { at } from "../../../shared/at.ts";
import { MESH_SMOOTHING } from "../../../sim/drivetrain/gear-set.ts";
import type { Vehicle } from "../../../sim/parameters/schema.ts";
import { GEAR_SMOOTHING } from "../../../sim/settings.ts";
import { type Motion, TiedBodies } from "./bodies.ts";
import { compactWith, HeldPlant, withoutLosses } from "./held-plant.ts";
import { integrate, type Rates } from "./integrate.ts";
import { orders } from "./orders.ts";

/** Torques held through a scene, N·m: the engine's indicated torque, the sun machine, the output machine. */
interface Held {
  readonly engine: number;
  readonly sun: number;
  readonly output: number;
}

const GRAVITY = 9.80665;
const DENSITY = 1.189;
const WIND = 3;

/**
 * The same motion stated anew from the vehicle's own numbers: bodies tied by forces, drag, rolling, engine friction and
 * the three gear losses. The losses depend on the very forces they change, so they are found by repetition.
 */
function rates(vehicle: Vehicle, held: Held): Rates {
  const bodies = new TiedBodies(vehicle);
  const { gearSet: g, engine: e, body, finalDrive, outputMachine: o } = vehicle;
  const perRing = body.wheelRadius / finalDrive.ratio;
  const k = g.ringTeeth / g.sunTeeth;
  return (_time, state) => {
    const carrier = at(state, 0);
    const ring = at(state, 1);
    const air = ring * perRing + WIND;
    const road =
      0.5 * DENSITY * body.dragArea * air * Math.abs(air) + body.rollingCoefficient * body.mass * GRAVITY;
    const friction = e.friction0 + e.friction1 * carrier + e.friction2 * carrier * carrier;
    const slide = (1 + k) * carrier - k * ring - carrier;
    const slideFade = slide / (Math.abs(slide) + MESH_SMOOTHING);
    const ringFade = ring / (Math.abs(ring) + GEAR_SMOOTHING);
    let motion: Motion | null = null;
    for (let round = 0; round < 14; round += 1) {
      const mesh = (1 - g.basicEfficiency) * Math.abs(motion?.mesh ?? 0) * slideFade;
      const drive = (1 - finalDrive.efficiency) * Math.abs(motion?.drive ?? 0) * ringFade;
      const reduction = (1 - o.reductionEfficiency) * o.reduction * Math.abs(held.output) * ringFade;
      motion = bodies.motion({
        sun: held.sun - mesh,
        carrier: held.engine - friction + mesh,
        ring: -drive - reduction,
        machine: held.output,
        vehicle: -road,
      });
    }
    return [motion?.carrier ?? Number.NaN, motion?.ring ?? Number.NaN];
  };
}

/** Largest relative error of both speeds over some times. */
function deviation(
  vehicle: Vehicle,
  held: Held,
  start: readonly [number, number],
  times: number[],
  step = 0.01,
) {
  const exact = integrate(rates(vehicle, held), start, times);
  const plant = new HeldPlant(vehicle, { step, headWind: WIND });
  const { s } = plant;
  s.carrierSpeed = start[0];
  s.ringSpeed = start[1];
  s.indicatedTorque = held.engine;
  s.sunTorque = held.sun;
  s.outputTorque = held.output;
  let worst = 0;
  times.forEach((time, i) => {
    plant.runTo(time);
    const [carrier = Number.NaN, ring = Number.NaN] = exact[i] ?? [];
    worst = Math.max(worst, Math.abs(s.carrierSpeed / carrier - 1), Math.abs(s.ringSpeed / ring - 1));
  });
  return worst;
}

const compact = compactWith((vehicle) => ({
  // Breakaway as the friction at rest, so that a scene may start there without a jump.
  engine: { ...vehicle.engine, breakaway: vehicle.engine.friction0 },
}));
const ideal = compactWith((vehicle) => ({
  gearSet: { ...vehicle.gearSet, basicEfficiency: 1 },
  finalDrive: { ...vehicle.finalDrive, efficiency: 1 },
  outputMachine: { ...vehicle.outputMachine, reductionEfficiency: 1 },
  engine: compact.engine,
}));

const SCENES: readonly [string, Held, readonly [number, number]][] = [
  ["output machine alone, engine dragged down", { engine: 14, sun: 0, output: 60 }, [200, 5]],
  ["sun machine holds the engine, both drive the ring", { engine: 70, sun: -17, output: 25 }, [150, 60]],
  ["sun machine motors, output machine brakes", { engine: 40, sun: 6, output: -30 }, [120, 250]],
  ["run-down of everything", { engine: 0, sun: 0, output: 0 }, [500, 330]],
];

describe("free response of both degrees of freedom against a general-purpose integrator, 10 ms, 3 m/s head wind", () => {
  const times = [0.5, 1, 2, 4];

  it.each(SCENES)("without gear losses: %s, within 5e-6", (_title, held, start) => {
    expect(deviation(ideal, held, start, times)).toBeLessThan(5e-6);
  });

  it.each(SCENES)(
    "with losses of meshes, final drive and reduction: %s, within 5e-4",
    (_title, held, start) => {
      expect(deviation(compact, held, start, times)).toBeLessThan(5e-4);
    },
  );

  it("spins up from rest: output machine, sun machine and engine together", () => {
    const held = { engine: 45, sun: -5, output: 90 };
    expect(deviation(ideal, held, [0, 0], [0.5, 2, 8])).toBeLessThan(1e-5);
    expect(deviation(compact, held, [0, 0], [0.5, 2, 8])).toBeLessThan(1e-3);
  });
});

describe("order of the step over the whole motion (0.1 s halved four times, errors at 2 s; range 0.1–0.006 s)", () => {
  const steps = [0.1, 0.05, 0.025, 0.0125, 0.00625];
  const held = { engine: 60, sun: -14, output: 40 };
  const start = [250, 90] as const;

  it("is two without gear losses (drag and friction at the half-step prediction): within 10 %", () => {
    const errors = steps.map((step) => deviation(ideal, held, start, [2], step));
    for (const order of orders(errors)) expect(Math.abs(order - 2)).toBeLessThan(0.2);
  });

  it("is one with them (they use the load of the step before): within 10 %", () => {
    const errors = steps.map((step) => deviation(compact, held, start, [2], step));
    for (const order of orders(errors)) expect(Math.abs(order - 1)).toBeLessThan(0.1);
  });

  it("is one with the mesh loss alone: within 10 %", () => {
    const meshes = { ...ideal, gearSet: compact.gearSet };
    const errors = steps.map((step) => deviation(meshes, held, start, [2], step));
    for (const order of orders(errors)) expect(Math.abs(order - 1)).toBeLessThan(0.1);
  });
});

describe("closed forms of a plant without losses", () => {
  it("constant torques are integrated exactly whatever the step (1e-12 of the speeds)", () => {
    const vehicle = compactWith((plain) => ({
      ...withoutLosses(plain),
      body: { ...plain.body, dragArea: 0, rollingCoefficient: 0 },
    }));
    for (const step of [0.1, 0.01, 0.001]) {
      const plant = new HeldPlant(vehicle, { step });
      const { p, s } = plant;
      s.carrierSpeed = 100;
      s.ringSpeed = 50;
      s.indicatedTorque = 50;
      s.sunTorque = -12;
      s.outputTorque = 30;
      plant.runTo(3);
      const m = new TiedBodies(vehicle).motion({ sun: -12, carrier: 50, ring: 0, machine: 30, vehicle: 0 });
      // 3 s of up to 3000 steps: each adds a rounding of the speed.
      expect(Math.abs(s.carrierSpeed / (100 + 3 * m.carrier) - 1)).toBeLessThan(1e-12);
      expect(Math.abs(s.ringSpeed / (50 + 3 * m.ring) - 1)).toBeLessThan(1e-12);
      expect(p.dragC).toBe(0);
    }
  });

  // Linear friction on the engine and linear drag on the vehicle exchange their momentum through the sun: two coupled
  // exponentials q' = −M⁻¹ D q, solved by its eigenvectors (derived).
  it("two inertias that exchange momentum through the sun, both damped: order two within 10 %, range 0.1–0.006 s", () => {
    const vehicle = compactWith((plain) => ({
      ...withoutLosses(plain),
      engine: { ...withoutLosses(plain).engine, friction1: 0.4 },
      sunMachine: { ...plain.sunMachine, inertia: 0.2 },
      body: {
        ...plain.body,
        roadLoad: "coastdown",
        mass: 300,
        coastdownA: 0,
        coastdownB: 300,
        coastdownC: 0,
      },
    }));
    const start = [300, 140] as const;
    const closed = (p: HeldPlant["p"], time: number): [number, number] => {
      const drag = 300 * p.metresPerRing * p.metresPerRing;
      const a = [-p.inverseCc * 0.4, -p.inverseCr * drag, -p.inverseCr * 0.4, -p.inverseRr * drag] as const;
      const half = (a[0] + a[3]) / 2;
      const root = Math.sqrt(half * half - (a[0] * a[3] - a[1] * a[2]));
      const fast = Math.exp((half - root) * time);
      const slow = Math.exp((half + root) * time);
      // exp(A t) = slow-part and fast-part by Lagrange's polynomials in A.
      const same = (slow * (root - half) + fast * (root + half)) / (2 * root);
      const times = (slow - fast) / (2 * root);
      return [
        same * start[0] + times * (a[0] * start[0] + a[1] * start[1]),
        same * start[1] + times * (a[2] * start[0] + a[3] * start[1]),
      ];
    };
    const errors = [0.1, 0.05, 0.025, 0.0125, 0.00625].map((step) => {
      const plant = new HeldPlant(vehicle, { step });
      const { p, s } = plant;
      s.carrierSpeed = start[0];
      s.ringSpeed = start[1];
      plant.runTo(2);
      const [carrier, ring] = closed(p, 2);
      expect(carrier).toBeGreaterThan(5);
      return Math.hypot(s.carrierSpeed - carrier, s.ringSpeed - ring);
    });
    for (const order of orders(errors)) expect(Math.abs(order - 2)).toBeLessThan(0.2);
  });
});
