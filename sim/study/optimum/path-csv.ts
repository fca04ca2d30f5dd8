import { realAt } from "../../../shared/at.ts";
import type { Optimum } from "./optimum.ts";

/** Columns of an optimum's path: SI, charge and time at the stage's start, the rest means of the stage. */
export const PATH_COLUMNS = [
  "time_s",
  "soc",
  "ring_speed_radps",
  "wheel_torque_at_ring_nm",
  "engine_on",
  "engine_speed_radps",
  "engine_torque_nm",
  "fuel_power_w",
  "battery_power_w",
  "battery_price",
  "unmet_w",
] as const;

/** An optimum's path as CSV, a line a stage and one for the end. */
export function* pathCsv(optimum: Optimum): Generator<string> {
  const { demand, path, actions, engineSpeed, engineTorque } = optimum;
  yield `${PATH_COLUMNS.join(",")}\n`;
  for (let k = 0; k < demand.stages; k += 1) {
    const row = [
      k * demand.stage,
      realAt(path.soc, k),
      realAt(demand.ringSpeed, k),
      realAt(actions.wheelTorque, k),
      realAt(path.on, k),
      realAt(engineSpeed, k),
      realAt(engineTorque, k),
      realAt(path.fuel, k),
      realAt(path.battery, k),
      realAt(path.factor, k),
      realAt(actions.unmet, k),
    ];
    yield `${row.join(",")}\n`;
  }
  const end = [demand.stages * demand.stage, realAt(path.soc, demand.stages)];
  yield `${[...end, ...Array(PATH_COLUMNS.length - end.length).fill("")].join(",")}\n`;
}
