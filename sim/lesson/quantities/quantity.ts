import type { BenchPoint } from "../../bench/bench.ts";
import type { Vehicle } from "../../parameters/schema.ts";
import type { RunFigures } from "../runs.ts";
import type { LessonUnit } from "../units.ts";
import type { Working } from "../working.ts";

/** A bench as a lesson has set it. */
export interface BenchStage {
  readonly kind: "bench";
  readonly vehicle: Vehicle;
  readonly point: BenchPoint;
}

/** A run as a lesson has made it, perhaps at one of its instants. */
export interface RunStage {
  readonly kind: "run";
  readonly name: string;
  readonly figures: RunFigures;
  /** row of the log; null when the step names no instant */
  readonly row: number | null;
}

/** What the quantities of a step are read from. */
export type Stage = BenchStage | RunStage;

/** Value and working of a quantity on one kind of stage. */
export interface Reading<S> {
  /** SI; a shaft torque as it acts on the gear set; a number that is none where there is nothing to tell */
  readonly of: (stage: S) => number;
  /** the lines of the working without its result, which follows from `of` */
  readonly working: (stage: S) => Omit<Working, "result">;
}

/** Something with a value that a lesson can show or ask for. */
export interface Quantity {
  /** as lessons write it: `sun torque` */
  readonly name: string;
  /** one phrase, with its sign */
  readonly meaning: string;
  readonly unit: LessonUnit;
  /** on the bench */
  readonly bench: Reading<BenchStage> | null;
  /** of a whole run */
  readonly run: Reading<RunStage> | null;
  /** at an instant of a run */
  readonly moment: Reading<RunStage & { readonly row: number }> | null;
  /** the number in the Bench's views that it stands at, such as `torque:sun`; empty for none */
  readonly at: string;
}

/** A quantity that exists on some stages; what is left out it has not. */
export const quantity = (
  name: string,
  meaning: string,
  unit: LessonUnit,
  parts: Partial<Pick<Quantity, "bench" | "run" | "moment" | "at">>,
): Quantity => ({ name, meaning, unit, bench: null, run: null, moment: null, at: "", ...parts });
