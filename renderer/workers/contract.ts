import type { CycleTrace } from "../../shared/cycle.ts";
import type { RunOptions } from "../../sim/options.ts";
import type { Vehicle } from "../../sim/parameters/schema.ts";
import type { LimitsResult } from "../../sim/run/limits-run.ts";
import type { LogParts } from "../../sim/run/log.ts";
import type { RunSummary } from "../../sim/run/summary.ts";

/** What is to be driven: plain data, so that it can go to a worker. */
export interface RunRequest {
  readonly vehicle: Vehicle;
  readonly cycle: CycleTrace;
  readonly strategy: string;
  readonly options: RunOptions;
}

/** What a finished run comes back as; its buffers are transferred. */
export interface RunReply {
  readonly log: LogParts;
  /** index into REGIMES a row */
  readonly regime: Uint8Array;
  readonly summary: RunSummary;
}

/** Charge-balanced fuel of a run, without the runs it took. */
export interface BalanceReply {
  readonly balanced: boolean;
  /** why not; empty when balanced */
  readonly reason: string;
  /** J, and L/100 km; not a number when it cannot be balanced */
  readonly fuelEnergy: number;
  readonly litresPer100Km: number;
  readonly mpg: number;
  /** net battery energy over fuel energy before the correction */
  readonly netShare: number;
  readonly slope: number;
  readonly runs: number;
}

/** Long work that a worker does, one piece at a time. */
export interface RunWorker {
  run(request: RunRequest, report: (share: number) => void): RunReply;
  balance(request: RunRequest, report: (share: number) => void): BalanceReply;
  limits(request: Omit<RunRequest, "cycle">): LimitsResult;
}
