import fc from "fast-check";
import type { CycleTrace } from "../../shared/cycle.ts";
import type { StrategyAnswer, StrategyDefinition, StrategyInput } from "../../sim/control/strategy.ts";
import { type Vehicle, vehicleSchema } from "../../sim/parameters/schema.ts";

/** Tooth counts and planets that fit together. */
const TEETH = [
  [40, 30, 100, 4],
  [40, 32, 104, 4],
  [30, 22, 74, 4],
  [32, 20, 72, 4],
  [36, 27, 90, 3],
  [30, 30, 90, 3],
] as const;

const compact = vehicleSchema.parse({});

/** Vehicles round the demo compact: other teeth, masses, sizes, losses, charge windows, clutch and friction. */
export const anyVehicle: fc.Arbitrary<Vehicle> = fc
  .record({
    teeth: fc.constantFrom(...TEETH),
    efficiency: fc.double({ min: 0.95, max: 1, noNaN: true }),
    mass: fc.double({ min: 0.6, max: 2, noNaN: true }),
    engine: fc.double({ min: 0.6, max: 1.05, noNaN: true }),
    inertia: fc.double({ min: 0.5, max: 2, noNaN: true }),
    output: fc.double({ min: 0.5, max: 2, noNaN: true }),
    drive: fc.double({ min: 2.6, max: 4.5, noNaN: true }),
    battery: fc.double({ min: 0.5, max: 8, noNaN: true }),
    resistance: fc.double({ min: 0.3, max: 2, noNaN: true }),
    rc: fc.constantFrom(0, 0.03, 0.1),
    clutch: fc.boolean(),
    grip: fc.double({ min: 0.3, max: 1.1, noNaN: true }),
  })
  .map((r) =>
    vehicleSchema.parse({
      gearSet: {
        sunTeeth: r.teeth[0],
        planetTeeth: r.teeth[1],
        ringTeeth: r.teeth[2],
        planets: r.teeth[3],
        basicEfficiency: r.efficiency,
      },
      finalDrive: { ratio: r.drive },
      body: { mass: compact.body.mass * r.mass, tyreFriction: r.grip },
      engine: {
        fullLoadTorque: compact.engine.fullLoadTorque.map((t) => t * r.engine),
        inertia: compact.engine.inertia * r.inertia,
        oneWayClutch: r.clutch,
      },
      outputMachine: { peakTorque: compact.outputMachine.peakTorque * r.output },
      battery: {
        capacityAh: compact.battery.capacityAh * r.battery,
        resistanceDischarge: compact.battery.resistanceDischarge * r.resistance,
        resistanceCharge: compact.battery.resistanceCharge * r.resistance,
        polarisationResistance: r.rc,
      },
    }),
  );

/** A drive of straight pieces: stops, sprints, backing up and hills, within what a person might ask. */
export const anyCycle: fc.Arbitrary<CycleTrace> = fc
  .array(
    fc.record({
      length: fc.integer({ min: 1, max: 12 }),
      speed: fc.oneof(
        fc.constant(0),
        fc.double({ min: 0, max: 40, noNaN: true }),
        fc.double({ min: -4, max: 0, noNaN: true }),
      ),
      grade: fc.oneof(fc.constant(0), fc.double({ min: -0.15, max: 0.15, noNaN: true })),
    }),
    { minLength: 2, maxLength: 8 },
  )
  .map((pieces) => {
    const time = [0];
    const speed = [0];
    const grade = [0];
    for (const piece of pieces) {
      time.push((time[time.length - 1] ?? 0) + piece.length);
      speed.push(piece.speed);
      grade.push(piece.grade);
    }
    return traceOf("random", time, speed, grade);
  });

/** A cycle from plain lists. */
export function traceOf(
  id: string,
  time: readonly number[],
  speed: readonly number[],
  grade: readonly number[] = time.map(() => 0),
): CycleTrace {
  return {
    id,
    title: id,
    source: "made for a test",
    time: Float64Array.from(time),
    speed: Float64Array.from(speed),
    grade: Float64Array.from(grade),
    phases: [],
    soaks: [],
    treatment: [],
  };
}

/** A strategy that answers at random, nonsense included; the same seed gives the same answers. */
export function randomStrategy(seed: number): StrategyDefinition {
  return {
    id: `random-${seed}`,
    title: "Random",
    about: "For tests.",
    regeneration: seed % 3 !== 0,
    create: () => {
      let state = seed >>> 0 || 1;
      const next = (): number => {
        state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
        return state / 2 ** 32;
      };
      return {
        decide(_now: StrategyInput, answer: StrategyAnswer) {
          answer.engineOn = next() < 0.5;
          const odd = next();
          if (odd < 0.03) answer.enginePower = Number.NaN;
          else if (odd < 0.05) answer.enginePower = Number.POSITIVE_INFINITY;
          else answer.enginePower = (next() - 0.2) * 120000;
          answer.engineSpeed = next() < 0.5 ? 0 : (next() - 0.1) * 800;
        },
      };
    },
  };
}
