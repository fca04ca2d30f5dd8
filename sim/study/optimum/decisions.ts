import { realAt } from "../../../shared/at.ts";
import type { LogReader } from "../../run/log.ts";
import type { Demand } from "./demand.ts";

/** What is decided in each stage, whoever decides. */
export interface Decisions {
  /** 1 where the engine runs */
  readonly on: Float64Array;
  /** rad/s and N·m of the running engine */
  readonly speed: Float64Array;
  readonly torque: Float64Array;
  /** false when the brakes do all the braking */
  readonly regeneration: boolean;
}

/** Share of a stage from which the engine counts as running in it. */
const HALF = 0.5;

/**
 * What a run decided, from its log: the engine counts as on in a stage in which it fires for at least half of the rows;
 * its point has the mean speed and the mean power of these rows.
 * @param regeneration what the strategy's definition says
 */
export function drivenDecisions(log: LogReader, demand: Demand, regeneration: boolean): Decisions {
  const time = log.view("time");
  const firing = log.view("engineOn");
  const speeds = log.view("engineSpeed");
  const torques = log.view("engineTorque");
  const { stages, stage } = demand;
  const on = new Float64Array(stages);
  const speed = new Float64Array(stages);
  const torque = new Float64Array(stages);
  let row = 1;
  for (let k = 0; k < stages; k += 1) {
    const end = (k + 1) * stage + 1e-6;
    let [rows, fired, turned, power] = [0, 0, 0, 0];
    for (; row < log.rows && realAt(time, row) <= end; row += 1) {
      rows += 1;
      if (realAt(firing, row) !== 1) continue;
      fired += 1;
      turned += realAt(speeds, row);
      power += realAt(speeds, row) * realAt(torques, row);
    }
    if (rows === 0 || fired < HALF * rows || turned === 0) continue;
    on[k] = 1;
    speed[k] = turned / fired;
    torque[k] = power / turned;
  }
  return { on, speed, torque, regeneration };
}
