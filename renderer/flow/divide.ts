import type { BenchFlows } from "../../sim/bench/bench.ts";

/** Powers below this are nothing, W. */
export const NOTHING = 0.5;

/** Size of a power, W. */
export const size = Math.abs;

/** Half the sum that balances a bar: what of a path has to come in from the other side. */
const turned = (path: number, same: number, other: number): number =>
  Math.max(0, (size(path) + size(other) - size(same)) / 2);

/** How the paths divide where they have to turn round, so that each bar gets as much on its left as on its right. */
export function divide(f: BenchFlows) {
  const sunOver = Math.min(size(f.sun), turned(f.sun, f.engine, f.ring));
  const outputOver = Math.min(size(f.outputMachine), turned(f.outputMachine, f.output, f.ring));
  const batteryOver = Math.min(size(f.battery), turned(f.battery, f.outputMachine, f.sun));
  return { sunOver, outputOver, batteryOver };
}

/** Full-sheet steps, W: the scale only changes from step to step, so that small moves can be seen. */
const STEPS = [500, 5000, 50_000].flatMap((decade) =>
  [1, 1.2, 1.4, 1.7, 2, 2.4, 2.8, 3.4, 4, 4.8, 5.6, 6.8, 8].map((times) => times * decade),
);

/** The least full-sheet step that holds a power. */
export const stepOver = (power: number): number => STEPS.find((step) => step >= power) ?? power;

/** What of each path turns round, W. */
export type Divided = ReturnType<typeof divide>;
