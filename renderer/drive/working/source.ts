import { at } from "../../../shared/at.ts";
import type { Prepared } from "../../../sim/drivetrain/prepared.ts";
import type { RunSettings } from "../../../sim/options.ts";
import type { Vehicle } from "../../../sim/parameters/schema.ts";
import type { ChannelId } from "../../../sim/run/channels.ts";
import { LEDGER_LINES, type LedgerId } from "../../../sim/run/ledger.ts";
import { type RowDetail, rowDetail } from "../../../sim/run/row-detail.ts";
import type { Units } from "../../state/format.ts";
import { preparedRun } from "../../state/prepared.ts";
import type { BalanceState, Run } from "../../state/run.ts";

/** Everything that a working of Road may read. */
export interface RoadSource {
  readonly run: Run;
  readonly row: number;
  readonly vehicle: Vehicle;
  readonly settings: RunSettings;
  readonly p: Prepared;
  readonly detail: RowDetail;
  readonly units: Units;
  readonly balance: BalanceState;
}

/** What a working reads of one row of a run. */
export function roadSource(run: Run, row: number, units: Units, balance: BalanceState): RoadSource {
  const { vehicle } = run.request;
  const { p, settings } = preparedRun(run.request);
  return { run, row, vehicle, settings, p, detail: rowDetail(vehicle, p, run.log, row), units, balance };
}

/** A channel in the row before; the same row at the start. */
export const before = ({ run, row }: RoadSource, id: ChannelId): number =>
  at(run.log.view(id), Math.max(0, row - 1));

/** Time since the row before, s; a control period at the start. */
export const sinceBefore = (from: RoadSource): number =>
  from.row > 0 ? from.detail.at.time - before(from, "time") : from.p.h * from.p.stepsPerTick;

/** A line of the ledger so far, J, and in the row before. */
export function ledgerAt(
  { run, row }: RoadSource,
  id: LedgerId,
): { readonly now: number; readonly before: number } {
  const line = run.log.ledgerLine(LEDGER_LINES.findIndex((one) => one.id === id));
  return { now: at(line, row), before: row > 0 ? at(line, row - 1) : 0 };
}
