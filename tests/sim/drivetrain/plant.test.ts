import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { engineMap, frictionTorque, fullLoadTorque, mapFuelPower } from "../../../sim/drivetrain/engine.ts";
import { limitTorque } from "../../../sim/drivetrain/machine.ts";
import { burn, move, release } from "../../../sim/drivetrain/plant.ts";
import { type LimitId, limitsIn } from "../../../sim/limits.ts";
import { compactWith, HeldPlant } from "../../reference/drivetrain/held-plant.ts";
import { anyVehicle } from "../../support/random.ts";
import { even } from "./even.ts";

const SEED = 2718;
/** Rest, creeping or any speed. Below 1e-12 there is only rest: products of such speeds would vanish in rounding. */
const restOr = (min: number, max: number) =>
  fc
    .oneof(fc.constant(0), even(-1e-3, 1e-3), even(min, max))
    .map((value) => (Math.abs(value) < 1e-12 ? 0 : value));

/** Any state and any torques that a machine of the compact may have there. */
const scene = fc.record({
  carrier: restOr(0, 520).map(Math.abs),
  ring: restOr(-150, 450),
  carrierAcceleration: even(-300, 300),
  ringAcceleration: even(-40, 40),
  engine: fc.oneof(fc.constant(0), even(0, 160)),
  sun: even(-42, 42),
  output: even(-190, 190),
  brake: fc.oneof(fc.constant(0), even(0, 16000)),
  grade: even(-5000, 5000),
  mesh: even(-80, 80),
  drive: even(-1500, 1500),
});

/** Makes the step that a scene asks for, up to its end speeds. */
function moved(plant: HeldPlant, r: typeof scene extends fc.Arbitrary<infer T> ? T : never): HeldPlant["s"] {
  const { p, s } = plant;
  s.carrierSpeed = r.carrier;
  s.ringSpeed = r.ring;
  s.carrierAcceleration = r.carrierAcceleration;
  s.ringAcceleration = r.ringAcceleration;
  s.indicatedTorque = r.engine;
  s.meshTorque = r.mesh;
  s.driveTorque = r.drive;
  s.gradeForce = r.grade;
  s.brakeForce = r.brake;
  s.sunTorque = limitTorque(
    { peakTorque: p.sunPeakTorque, peakPower: p.sunPeakPower, maxSpeed: p.sunTop },
    r.sun,
    p.k1 * r.carrier - p.k * r.ring,
  );
  s.outputTorque = limitTorque(
    { peakTorque: p.outPeakTorque, peakPower: p.outPeakPower, maxSpeed: p.outTop },
    r.output,
    p.reduction * r.ring,
  );
  release(p, s);
  s.ringBound = (s.brakeForce + s.rollingForce) * p.metresPerRing;
  move(p, s);
  return s;
}

describe(`the plant's step over random states (seed ${SEED})`, () => {
  const plant = new HeldPlant(compactWith(() => ({})));
  const { p } = plant;
  const every = (check: (s: HeldPlant["s"]) => void): void =>
    fc.assert(
      fc.property(scene, (r) => check(moved(plant, r))),
      { seed: SEED, numRuns: 2000 },
    );

  it("C1 never turns the engine backward, and its friction only opposes it unless the stop holds it", () => {
    every((s) => {
      expect(s.carrierEnd).toBeGreaterThanOrEqual(0);
      expect(s.carrierMean).toBeGreaterThanOrEqual(0);
      expect(s.carrierReaction).toBeGreaterThanOrEqual(-s.frictionBound * (1 + 1e-9) - 1e-9);
      if (s.carrierHeld === 0) expect(Math.abs(s.carrierReaction + s.frictionBound)).toBeLessThan(1e-9);
      else expect(s.carrierEnd).toBe(0);
    });
  });

  it("C2 brakes and rolling never drive: their work is a loss in every step", () => {
    every((s) => {
      expect(s.ringReaction * s.ringMean).toBeLessThanOrEqual(1e-9 * s.ringBound);
      expect(Math.abs(s.ringReaction)).toBeLessThanOrEqual(s.ringBound + 1e-9 * (1 + s.ringBound));
      if (s.ringHeld === 1) expect(s.ringEnd).toBe(0);
      else if (s.ringEnd !== 0) expect(Math.sign(s.ringReaction) * Math.sign(s.ringEnd)).not.toBe(1);
    });
  });

  it("C2 the usual cases taken first give what the full solution gives: end speeds follow from all torques", () => {
    every((s) => {
      const qc = s.freeCarrier + s.carrierReaction;
      const qr = s.freeRing + s.ringReaction;
      const size = 1 + Math.abs(s.carrierSpeed) + Math.abs(s.ringSpeed);
      const c = s.carrierSpeed + p.h * (p.inverseCc * qc + p.inverseCr * qr);
      const r = s.ringSpeed + p.h * (p.inverseCr * qc + p.inverseRr * qr);
      expect(Math.abs(s.carrierEnd - c)).toBeLessThan(1e-9 * size);
      expect(Math.abs(s.ringEnd - r)).toBeLessThan(1e-9 * size);
    });
  });

  it("work of all torques is the change of kinetic energy, to rounding", () => {
    every((s) => {
      const energy = (c: number, r: number): number =>
        0.5 * (p.massCc * c * c + 2 * p.massCr * c * r + p.massRr * r * r);
      const change = energy(s.carrierEnd, s.ringEnd) - energy(s.carrierSpeed, s.ringSpeed);
      const qc = s.freeCarrier + s.carrierReaction;
      const qr = s.freeRing + s.ringReaction;
      const work = p.h * (qc * s.carrierMean + qr * s.ringMean);
      const size = 1 + energy(s.carrierSpeed, s.ringSpeed) + Math.abs(work);
      expect(Math.abs(change - work)).toBeLessThan(1e-9 * size);
    });
  });

  it("M2 eased or not, the sun machine keeps torque and power at the step's start speed", () => {
    every((s) => {
      const w = Math.abs(p.k1 * s.carrierSpeed - p.k * s.ringSpeed);
      expect(Math.abs(s.sunTorque)).toBeLessThanOrEqual(p.sunPeakTorque * (1 + 1e-12));
      expect(Math.abs(s.sunTorque) * w).toBeLessThanOrEqual(p.sunPeakPower * (1 + 1e-9));
    });
  });

  it("M1 electrical power is never below shaft power", () => {
    every((s) => {
      expect(s.sunElectric).toBeGreaterThanOrEqual(s.sunTorque * s.sunMean);
      expect(s.outputElectric).toBeGreaterThanOrEqual(s.outputTorque * s.outputMean);
    });
  });

  it("holds for other vehicles too", () => {
    fc.assert(
      fc.property(anyVehicle, fc.array(scene, { minLength: 20, maxLength: 20 }), (vehicle, scenes) => {
        const other = new HeldPlant(vehicle);
        for (const r of scenes) {
          const s = moved(other, r);
          expect(s.carrierEnd).toBeGreaterThanOrEqual(0);
          expect(s.ringReaction * s.ringMean).toBeLessThanOrEqual(1e-9 * s.ringBound);
          if (s.carrierHeld === 0) expect(Math.abs(s.carrierReaction + s.frictionBound)).toBeLessThan(1e-9);
        }
      }),
      { seed: SEED, numRuns: 25 },
    );
  });
});

describe("contacts over hand-made sequences", () => {
  /** Runs steps with torques from a schedule and counts the changes of both contacts. */
  function changes(steps: number, schedule: (plant: HeldPlant, step: number) => void) {
    const plant = new HeldPlant(compactWith(() => ({})));
    const count = { carrier: 0, ring: 0 };
    for (let i = 0; i < steps; i += 1) {
      const { carrierHeld, ringHeld } = plant.s;
      schedule(plant, i);
      plant.step();
      if (plant.s.carrierHeld !== carrierHeld) count.carrier += 1;
      if (plant.s.ringHeld !== ringHeld) count.ring += 1;
    }
    return { plant, count };
  }

  it("a sun torque ramped to and past breakaway releases the engine once, exactly there", () => {
    const breakaway = 18 / 3.5;
    let released = Number.NaN;
    const { plant, count } = changes(1000, ({ s }, i) => {
      s.brakeForce = 16000;
      s.sunTorque = (1.2 * breakaway * i) / 1000;
      if (s.carrierHeld === 0 && Number.isNaN(released)) released = (1.2 * breakaway * (i - 1)) / 1000;
    });
    expect(count.carrier).toBe(1);
    expect(plant.s.carrierSpeed).toBeGreaterThan(0);
    expect(Math.abs(released / breakaway - 1)).toBeLessThan(2e-3);
  });

  it("a torque that swings round breakaway changes the engine's state no more than twice a swing", () => {
    const breakaway = 18 / 3.5;
    const { count } = changes(4000, ({ s }, i) => {
      s.brakeForce = 16000;
      s.sunTorque = breakaway * (i % 400 < 200 ? 1.3 : -0.5);
    });
    expect(count.carrier).toBeGreaterThanOrEqual(10);
    expect(count.carrier).toBeLessThanOrEqual(20);
  });

  it("an engine running down against its friction comes to rest once and stays", () => {
    const { plant, count } = changes(2000, ({ s }, i) => {
      s.brakeForce = 16000;
      if (i === 0) s.carrierSpeed = 200;
    });
    expect(plant.s.carrierSpeed).toBe(0);
    // Released by the hand-made start, then held.
    expect(count.carrier).toBe(2);
  });

  it("a slope whose pull swings round what the brake holds moves the vehicle only while it exceeds it", () => {
    const { count, plant } = changes(3000, ({ p, s }, i) => {
      s.brakeForce = 1000;
      s.gradeForce = (1000 + p.rolling) * (i % 1000 < 50 ? 1.02 : 0.98);
    });
    expect(count.ring).toBe(6);
    expect(plant.s.ringSpeed).toBe(0);
  });

  it("a step through zero speed, forward to backward, is no rest", () => {
    const plant = new HeldPlant(
      compactWith(() => ({})),
      { step: 0.1 },
    );
    plant.s.ringSpeed = 0.05;
    plant.s.outputTorque = -190;
    plant.step();
    expect(plant.s.ringSpeed).toBeLessThan(-0.5);
    expect(plant.s.ringHeld).toBe(0);
  });

  it("bringing the engine to its stop is logged when the stop bears more than breakaway, with no one-way clutch", () => {
    const seen = (oneWayClutch: boolean): LimitId[] => {
      const plant = new HeldPlant(compactWith((v) => ({ engine: { ...v.engine, oneWayClutch } })));
      plant.s.sunTorque = -40;
      plant.s.brakeForce = 16000;
      plant.step();
      expect(plant.s.carrierReaction).toBeGreaterThan(18);
      return limitsIn(plant.s.limits);
    };
    expect(seen(false)).toContain("engine-stop");
    expect(seen(true)).not.toContain("engine-stop");
  });
});

describe("easing the engine on to its stop", () => {
  /** The last step of a stop: the sun machine's torque would throw the engine back. */
  const stopped = (inertia: number, sunTorque: number, brakeForce: number): HeldPlant => {
    const plant = new HeldPlant(compactWith((plain) => ({ sunMachine: { ...plain.sunMachine, inertia } })));
    plant.s.carrierSpeed = 0.5;
    plant.s.ringSpeed = 120;
    plant.s.sunTorque = sunTorque;
    plant.s.brakeForce = brakeForce;
    plant.step();
    return plant;
  };

  it("gives up as much torque as the stop would bear, so that nothing bounces", () => {
    const { s, p } = stopped(0.02, -25, 0);
    expect(s.carrierSpeed).toBe(0);
    expect(Math.abs(s.carrierReaction)).toBeLessThan(1e-6);
    expect(s.sunTorque).toBeGreaterThan(-25);
    // Engine and sun, with the ring going on as it does, from 0.5 rad/s to rest in a step.
    const free = p.k1 * s.sunTorque - p.k * s.meshLossTorque;
    const needed = -0.5 * p.perH * p.massCc + p.massCr * s.ringChange;
    expect(Math.abs(free - needed)).toBeLessThan(1e-6);
  });

  it("keeps the machine's torque limit: where that is not enough, the stop bears the rest", () => {
    const { s } = stopped(1, 0, 16000);
    expect(s.carrierSpeed).toBe(0);
    expect(s.sunTorque).toBe(0);
    expect(s.carrierReaction).toBeGreaterThan(42 * 3.5);
  });
});

describe("fuel of a step", () => {
  const { engine } = compactWith(() => ({}));
  const axis = (count: number, from: number, to: number): number[] =>
    Array.from({ length: count }, (_, i) => from + ((to - from) * i) / (count - 1));
  const map = {
    speed: axis(12, 90, 530),
    torque: axis(10, 0, 140),
    fuelPower: axis(12, 90, 530).map((w) => axis(10, 0, 140).map((t) => 4000 + 2.6 * w * t + 9 * w)),
  };
  const gridded = new HeldPlant(compactWith((plain) => ({ engine: { ...plain.engine, map } })));

  it(`a gridded map is read in the loop as outside it, in any order of points (seed ${SEED})`, () => {
    const flat = engineMap({ ...engine, map });
    if (!flat) throw new Error("the engine has a map");
    const { p, s } = gridded;
    fc.assert(
      fc.property(even(60, 560), even(0, 160), (w, brake) => {
        s.carrierMean = w;
        s.frictionBound = frictionTorque(engine, w);
        s.indicatedTorque = brake + s.frictionBound;
        s.carrierReaction = -s.frictionBound;
        burn(p, s);
        expect(Math.abs(s.fuelPower / mapFuelPower(flat, w, brake) - 1)).toBeLessThan(1e-12);
      }),
      { seed: SEED, numRuns: 1000 },
    );
  });

  it("below the map's least torque falls with the indicated torque to nothing, and is nothing without it", () => {
    const { p, s } = gridded;
    s.carrierMean = 200;
    s.frictionBound = 14;
    s.carrierReaction = -14;
    const burnt = (indicated: number): number => {
      s.indicatedTorque = indicated;
      burn(p, s);
      return s.fuelPower;
    };
    expect(Math.abs(burnt(7) / burnt(14) - 0.5)).toBeLessThan(1e-12);
    expect(burnt(1e-9)).toBeLessThan(1e-3);
    expect(burnt(0)).toBe(0);
  });

  it("the loop's Willans form agrees with the one outside to the grid of the full-load table", () => {
    const plain = new HeldPlant(compactWith(() => ({})));
    const { p, s } = plain;
    fc.assert(
      fc.property(even(110, 520), even(0.05, 1), (w, load) => {
        const brake = load * fullLoadTorque(engine, w);
        const friction = frictionTorque(engine, w);
        s.carrierMean = w;
        s.indicatedTorque = brake + friction;
        s.carrierReaction = -friction;
        burn(p, s);
        const over = Math.max(0, load - engine.loadKnee);
        const off = (w - engine.bestSpeed) / engine.bestSpeed;
        const efficiency = 0.44 * (1 - 0.1 * off * off) * (1 - 5.5 * over * over);
        expect(Math.abs((s.fuelPower * efficiency) / ((brake + friction) * w) - 1)).toBeLessThan(5e-4);
      }),
      { seed: SEED, numRuns: 500 },
    );
  });
});
