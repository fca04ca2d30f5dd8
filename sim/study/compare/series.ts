import { at } from "../../../shared/at.ts";
import { LEDGER_LINES } from "../../run/ledger.ts";
import type { LogReader } from "../../run/log.ts";

/** What a run looks like over time, once a second: enough to lay runs over each other. */
export interface Series {
  /** s */
  readonly time: Float64Array;
  /** m/s */
  readonly speed: Float64Array;
  readonly soc: Float64Array;
  /** J, since the start */
  readonly fuel: Float64Array;
  /** J taken out of the battery's source since the start */
  readonly battery: Float64Array;
  /** index into REGIMES */
  readonly regime: Uint8Array;
  /** rad/s and N·m of the firing engine; 0 while it does not fire */
  readonly engineSpeed: Float64Array;
  readonly engineTorque: Float64Array;
}

/** Takes a run's log down to one row a second. @param regime the regimes of its rows */
export function seriesOf(log: LogReader, regime: Uint8Array): Series {
  const every = 10;
  const count = Math.floor((log.rows - 1) / every) + 1;
  const pick = (values: ArrayLike<number>, sign = 1): Float64Array =>
    Float64Array.from({ length: count }, (_, i) => sign * at(values, i * every));
  const on = log.view("engineOn");
  const firing = (values: ArrayLike<number>): Float64Array =>
    Float64Array.from({ length: count }, (_, i) => (at(on, i * every) === 1 ? at(values, i * every) : 0));
  const line = LEDGER_LINES.findIndex(({ id }) => id === "battery_change");
  return {
    time: pick(log.view("time")),
    speed: pick(log.view("speed")),
    soc: pick(log.view("soc")),
    fuel: pick(log.view("fuel")),
    battery: pick(log.ledgerLine(line), -1),
    regime: Uint8Array.from({ length: count }, (_, i) => at(regime, i * every)),
    engineSpeed: firing(log.view("engineSpeed")),
    engineTorque: firing(log.view("engineTorque")),
  };
}
