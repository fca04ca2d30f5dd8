import { at } from "../../shared/at.ts";
import { CHANNELS, EXPORT_COLUMNS } from "./channels.ts";
import { LEDGER_LINES } from "./ledger.ts";
import type { LogReader } from "./log.ts";
import { REGIMES } from "./regimes.ts";

/** Rows joined into one piece of text at a time. */
const PIECE = 2000;

/**
 * A run as CSV (RFC 4180, one header row, full precision), in pieces, so that a long run is never one string.
 * Numbers are the shortest text that reads back as the same number.
 * @param regime the regimes of the log's rows
 */
export function* runCsv(log: LogReader, regime: Uint8Array): Generator<string> {
  yield `${EXPORT_COLUMNS.join(",")}\n`;
  const columns = CHANNELS.map((channel) => log.view(channel.id));
  const ledger = LEDGER_LINES.map((_, index) => log.ledgerLine(index));
  const limits = log.limits;
  let lines: string[] = [];
  for (let i = 0; i < log.rows; i += 1) {
    const cells: (number | string)[] = columns.map((column) => at(column, i));
    cells.push(REGIMES[at(regime, i)]?.id ?? "", at(limits, i));
    for (const column of ledger) cells.push(at(column, i));
    lines.push(cells.join(","));
    if (lines.length === PIECE || i === log.rows - 1) {
      yield `${lines.join("\n")}\n`;
      lines = [];
    }
  }
}
