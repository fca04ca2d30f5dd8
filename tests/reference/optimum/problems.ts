import type { Source } from "../../../sim/study/optimum/battery.ts";
import type { Problem } from "../../../sim/study/optimum/problem.ts";

/** A battery without loss or limit: charge is energy over `energy`, J. */
export function idealSource(energy: number): Source {
  return {
    openCircuit: Float64Array.of(1000, 1000),
    socSteps: 1,
    resistanceDischarge: 0,
    resistanceCharge: 0,
    charge: energy / 1000,
    packLeast: 0,
    packMost: 2000,
    currentMostOut: 1e9,
    currentMostIn: 1e9,
    standby: 0,
    socFloor: 0,
    socCeiling: 1,
    taper: 1e-9,
  };
}

/** One point: battery power, W, and fuel power, W. */
export interface Point {
  readonly power: number;
  readonly fuel: number;
}

/** A problem of stages of one second with their running points, and with the engine at rest where that may be. */
export function problemFrom(
  stages: readonly { readonly points: readonly Point[]; readonly rest: number }[],
  more: Partial<Problem> & Pick<Problem, "source" | "startSoc" | "endSoc">,
): Problem {
  const first: number[] = [];
  const count: number[] = [];
  const power: number[] = [];
  const fuel: number[] = [];
  for (const { points } of stages) {
    first.push(power.length);
    count.push(points.length);
    for (const point of [...points].sort((a, b) => a.power - b.power)) {
      power.push(point.power);
      fuel.push(point.fuel);
    }
  }
  return {
    stages: stages.length,
    stage: 1,
    first: Int32Array.from(first),
    count: Int32Array.from(count),
    power: Float64Array.from(power),
    fuel: Float64Array.from(fuel),
    restPower: Float64Array.from(stages, (stage) => stage.rest),
    shed: new Float64Array(stages.length),
    overdraw: new Float64Array(stages.length),
    startFuel: 0,
    startEnergy: 0,
    startOn: true,
    ...more,
  };
}
