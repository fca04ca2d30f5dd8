import { at } from "../../../shared/at.ts";
import type { ChannelId } from "../../../sim/run/channels.ts";
import { FLOWS, type FlowId } from "../../../sim/run/flows.ts";
import type { LogReader } from "../../../sim/run/log.ts";
import type { Now } from "../../state/run.ts";
import type { Column, KnownCurve } from "./dense.ts";
import { Peaks } from "./peaks.ts";

/** Where a quantity comes from: a channel of the log, one of its flows, or something that follows from a row. */
export type Source =
  | { readonly channel: ChannelId }
  | { readonly flow: FlowId }
  | {
      readonly name: string;
      readonly column: (log: LogReader) => Column;
      readonly value: (now: Now) => number;
    };

/** What is known of the curves of a log. Kept as long as the log is. */
interface Kept {
  readonly peaks: Map<string, Peaks>;
  readonly flows: Map<FlowId, Float32Array>;
}

const kept = new WeakMap<LogReader, Kept>();

function keptOf(log: LogReader): Kept {
  const found = kept.get(log) ?? { peaks: new Map(), flows: new Map() };
  kept.set(log, found);
  return found;
}

/** One flow of all rows. The log has them row by row, so they are taken out once, and again when it has grown. */
function flowColumn(log: LogReader, id: FlowId): Float32Array {
  const { flows } = keptOf(log);
  const known = flows.get(id);
  if (known?.length === log.rows) return known;
  const column = new Float32Array(log.rows);
  const all = log.flows;
  const width = FLOWS.length;
  for (let row = 0, place = FLOWS.indexOf(id); row < column.length; row += 1, place += width) {
    column[row] = at(all, place);
  }
  flows.set(id, column);
  return column;
}

/** The quantity in every row, SI. */
export function columnOf(source: Source, log: LogReader): Column {
  if ("channel" in source) return log.view(source.channel);
  return "flow" in source ? flowColumn(log, source.flow) : source.column(log);
}

/** The quantity at an instant, SI. */
export function instantValue(source: Source, now: Now): number {
  if ("channel" in source) return now.at[source.channel];
  return "flow" in source ? now.flows[source.flow] : source.value(now);
}

const nameOf = (source: Source): string =>
  "channel" in source ? `channel:${source.channel}` : "flow" in source ? `flow:${source.flow}` : source.name;

/** The quantity in every row, with what is known of its least and most. */
export function knownCurve(source: Source, log: LogReader): KnownCurve {
  const { peaks } = keptOf(log);
  const values = columnOf(source, log);
  const name = nameOf(source);
  const known = peaks.get(name) ?? new Peaks();
  peaks.set(name, known);
  known.extend(values);
  return { values, peaks: known };
}
