import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { solveContacts } from "../../../sim/drivetrain/contacts.ts";
import { HeldPlant, vehicleOf } from "../../reference/drivetrain/held-plant.ts";
import { even } from "./even.ts";

const SEED = 41;
const speedOrRest = (least: number, most: number) => fc.oneof(fc.constant(0), even(least, most));

describe(`contacts over random states (seed ${SEED})`, () => {
  const { p, s } = new HeldPlant(vehicleOf({}));

  it("C2 each reaction is inside its bounds and stops its shaft, or at a bound while the shaft moves the other way", () => {
    fc.assert(
      fc.property(
        speedOrRest(0, 500),
        speedOrRest(-100, 600),
        even(-500, 500),
        even(-3000, 3000),
        even(0, 60),
        even(0, 2000),
        (carrier, ring, freeCarrier, freeRing, friction, bound) => {
          Object.assign(s, {
            carrierSpeed: carrier,
            ringSpeed: ring,
            freeCarrier,
            freeRing,
            frictionBound: friction,
            ringBound: bound,
          });
          solveContacts(p, s);
          const low = ring >= 0 ? -bound : 0;
          const high = ring <= 0 ? bound : 0;
          const slack = 1e-6;
          // The engine never turns backward.
          expect(s.carrierEnd).toBeGreaterThanOrEqual(0);
          expect(s.carrierReaction).toBeGreaterThanOrEqual(-friction - slack);
          if (s.carrierReaction > -friction + slack) expect(s.carrierEnd).toBe(0);
          // Friction on the ring only opposes.
          expect(s.ringReaction).toBeGreaterThanOrEqual(low - slack * (1 + bound));
          expect(s.ringReaction).toBeLessThanOrEqual(high + slack * (1 + bound));
          if (s.ringEnd > slack) expect(s.ringReaction).toBeCloseTo(low, 5);
          if (s.ringEnd < -slack) expect(s.ringReaction).toBeCloseTo(high, 5);
          // End speeds are what the torques give.
          const qc = freeCarrier + s.carrierReaction;
          const qr = freeRing + s.ringReaction;
          expect(s.carrierEnd).toBeCloseTo(carrier + p.h * (p.inverseCc * qc + p.inverseCr * qr), 6);
          expect(s.ringEnd).toBeCloseTo(ring + p.h * (p.inverseCr * qc + p.inverseRr * qr), 6);
        },
      ),
      { seed: SEED, numRuns: 3000 },
    );
  });
});

describe("contacts in scenes", () => {
  it("a vehicle on a slope stands while the brake can hold it, and rolls when it cannot", () => {
    const plant = new HeldPlant(vehicleOf({}));
    plant.s.gradeForce = plant.p.weight * 0.1;
    plant.s.brakeForce = 1600;
    plant.runTo(2);
    expect(plant.speed).toBe(0);
    plant.s.brakeForce = 1000;
    plant.runTo(4);
    expect(plant.speed).toBeLessThan(-0.3);
  });

  it("a standing engine does not turn below its breakaway torque and turns above it", () => {
    const plant = new HeldPlant(vehicleOf({}));
    plant.s.brakeForce = 16000;
    plant.s.sunTorque = 4.5;
    plant.runTo(0.5);
    expect(plant.s.carrierSpeed).toBe(0);
    plant.s.sunTorque = 8;
    plant.runTo(1);
    expect(plant.s.carrierSpeed).toBeGreaterThan(5);
  });

  it("with the sun machine pushing back, the engine's stop holds the carrier and the ring is driven", () => {
    const plant = new HeldPlant(vehicleOf({ engine: { oneWayClutch: true } }));
    plant.s.sunTorque = -40;
    plant.runTo(1);
    expect(plant.s.carrierSpeed).toBe(0);
    expect(plant.s.carrierReaction).toBeGreaterThan(18);
    expect(plant.speed).toBeGreaterThan(0.3);
  });

  it("friction braking to rest changes state once and does not chatter", () => {
    const plant = new HeldPlant(vehicleOf({}));
    plant.s.ringSpeed = 20;
    plant.s.brakeForce = 3000;
    let changes = 0;
    let held = plant.s.ringHeld;
    plant.runTo(4, (s) => {
      if (s.ringHeld !== held) changes += 1;
      held = s.ringHeld;
    });
    expect(plant.speed).toBe(0);
    expect(changes).toBeLessThanOrEqual(2);
  });
});
