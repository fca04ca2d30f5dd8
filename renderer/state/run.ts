import { at } from "../../shared/at.ts";
import type { ShaftValues } from "../../sim/bench/shafts.ts";
import type { Vehicle } from "../../sim/parameters/schema.ts";
import { CHANNELS, type ChannelId } from "../../sim/run/channels.ts";
import { type Flows, flowsAt } from "../../sim/run/flows.ts";
import type { LogReader } from "../../sim/run/log.ts";
import { REGIMES } from "../../sim/run/regimes.ts";
import type { RunSummary } from "../../sim/run/summary.ts";
import { CONTROL_PERIOD } from "../../sim/settings.ts";
import type { BalanceReply, RunRequest } from "../workers/contract.ts";

/** A drive that was run and is kept: all of it can be read, nobody writes into it. */
export interface Run {
  /** counts up from 1 */
  readonly id: number;
  readonly name: string;
  readonly request: RunRequest;
  readonly log: LogReader;
  /** index into REGIMES a row; may have room for more rows than there are */
  readonly regime: Uint8Array;
  /** null while a live drive is under way */
  readonly summary: RunSummary | null;
  /** bytes of its log */
  readonly bytes: number;
}

/** Charge-balanced fuel of a run: not asked for, being found, found. */
export type BalanceState = BalanceReply | "under way" | null;

/** Everything a view reads of one instant. All SI; the row is the one at or before the cursor. */
export interface Now {
  readonly row: number;
  /** s, of the row */
  readonly time: number;
  /** every channel of the log by its id */
  readonly at: Readonly<Record<ChannelId, number>>;
  readonly speeds: ShaftValues;
  /** what each shaft exerts on the gear set, N·m */
  readonly torques: ShaftValues;
  readonly flows: Flows;
  /** id of a regime of sim/run/regimes.ts, and since when, s */
  readonly regime: string;
  readonly since: number;
  /** bits of sim/limits.ts */
  readonly limits: number;
}

/** Time between two rows, s. */
export const ROW = CONTROL_PERIOD;

export const durationOf = (log: LogReader): number => at(log.view("time"), log.rows - 1);

/** The row at or before a time. */
export const rowAt = (log: LogReader, time: number): number =>
  Math.min(log.rows - 1, Math.max(0, Math.floor(time / ROW + 1e-6)));

/** Reads one row. */
export function readNow(run: Pick<Run, "log" | "regime">, row: number): Now {
  const { log, regime } = run;
  const values = Object.fromEntries(CHANNELS.map(({ id }) => [id, at(log.view(id), row)])) as Record<
    ChannelId,
    number
  >;
  const index = at(regime, row);
  let first = row;
  while (first > 0 && at(regime, first - 1) === index) first -= 1;
  return {
    row,
    time: values.time,
    at: values,
    speeds: readSpeeds(run, row),
    torques: { sun: values.sunTorque, carrier: values.carrierTorque, ring: values.ringTorque },
    flows: flowsAt(log, row),
    regime: REGIMES[index]?.id ?? "",
    since: at(log.view("time"), first),
    limits: at(log.limits, row),
  };
}

/** The three speeds of one row, rad/s. */
export const readSpeeds = ({ log }: Pick<Run, "log">, row: number): ShaftValues => ({
  sun: at(log.view("sunMachineSpeed"), row),
  carrier: at(log.view("engineSpeed"), row),
  ring: at(log.view("ringSpeed"), row),
});

/** Metres that the vehicle goes for one radian of the ring. */
export const metresPerRing = (vehicle: Vehicle): number =>
  vehicle.body.wheelRadius / vehicle.finalDrive.ratio;

/** Integrated shaft angles at a time, rad: between two rows the mean of them. */
export function anglesAt(log: LogReader, vehicle: Vehicle, time: number) {
  const row = rowAt(log, time);
  const next = Math.min(log.rows - 1, row + 1);
  const share = Math.min(1, Math.max(0, time / ROW - row));
  const mix = (values: Float64Array): number => {
    const from = at(values, row);
    return from + (at(values, next) - from) * share;
  };
  return { carrier: mix(log.carrierAngle), ring: mix(log.view("distance")) / metresPerRing(vehicle) };
}
