import type { Vehicle } from "../parameters/schema.ts";
import type { LogReader } from "../run/log.ts";
import type { RunSummary } from "../run/summary.ts";

/** The charge-balanced figure, as far as a report tells it. */
export interface ReportBalance {
  /** fuel over distance; not a number when the drive could not be balanced */
  readonly l_per_100km: number;
  readonly mpg_us: number;
  readonly co2_g_per_km: number;
  /** fuel energy for one unit of battery energy */
  readonly slope: number;
  readonly runs: number;
  /** why it is not balanced; empty when it is */
  readonly reason: string;
  /** whether the run told is the one nearest to balance, or another, started as it was asked for */
  readonly ofThisRun: boolean;
}

/** Everything that a report is made from; nothing is computed anew. */
export interface ReportSource {
  readonly vehicle: Vehicle;
  readonly summary: RunSummary;
  readonly log: LogReader;
  /** index into REGIMES a row */
  readonly regime: Uint8Array;
  readonly balance: ReportBalance | null;
  /** what the command line's --cycle takes: an id, a manoeuvre's line, or the name of a file */
  readonly cycleLine: string;
  /** what a person may want to know of the data, one sentence each */
  readonly notes: readonly string[];
  /** who made it and when, as the caller knows it; each may be empty */
  readonly version: string;
  readonly made: string;
}
