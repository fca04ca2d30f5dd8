import { at } from "../../../shared/at.ts";
import { REGIMES, type RegimeFamily } from "../../../sim/run/regimes.ts";
import type { Run } from "../../state/run.ts";
import { pointReader } from "./kinds.ts";
import type { WheelExtent } from "./layout.ts";

/** Most marks of a cloud: more would only cover each other. */
export const MOST_MARKS = 5000;

/** Rows of a cloud's marks, by the family of their regime. */
export interface Cloud {
  readonly extent: WheelExtent;
  /** m/s and N, alternating, of each family */
  readonly marks: Readonly<Record<RegimeFamily, Float64Array>>;
}

/** Force that an extent is rounded out to, N, so that a growing drive does not move the picture all the time. */
const ROUND = 500;

const empty = (): Record<RegimeFamily, number[]> => ({ engine: [], electric: [], braking: [], rest: [] });

/** Speed and force at the wheels of a run's rows, thinned evenly to a number that can be told apart. */
export function cloudOf(run: Pick<Run, "log" | "regime" | "request">): Cloud {
  const { rows } = run.log;
  const every = Math.max(1, Math.ceil(rows / MOST_MARKS));
  const read = pointReader("wheels", run);
  const marks = empty();
  let [back, least, most] = [0, 0, 0];
  for (let row = 0; row < rows; row += every) {
    const [speed, force] = read(row);
    back = Math.min(back, speed);
    least = Math.min(least, force);
    most = Math.max(most, force);
    const family = REGIMES[at(run.regime, row)]?.family;
    if (family) marks[family].push(speed, force);
  }
  const out = (force: number): number => Math.sign(force) * Math.ceil(Math.abs(force) / ROUND) * ROUND;
  return {
    extent: { back: back > -0.1 ? 0 : Math.floor(back), least: out(least), most: out(most) },
    marks: {
      engine: Float64Array.from(marks.engine),
      electric: Float64Array.from(marks.electric),
      braking: Float64Array.from(marks.braking),
      rest: Float64Array.from(marks.rest),
    },
  };
}
