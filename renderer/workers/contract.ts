import type { CycleTrace } from "../../shared/cycle.ts";
import type { RunOptions } from "../../sim/options.ts";
import type { Vehicle } from "../../sim/parameters/schema.ts";
import type { LimitsResult } from "../../sim/run/limits-run.ts";
import type { LogParts } from "../../sim/run/log.ts";
import type { RunSummary } from "../../sim/run/summary.ts";
import type { ComparisonJob } from "../../sim/study/compare/job.ts";
import type { ComparisonResult } from "../../sim/study/compare/run-job.ts";

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
  /** g/km */
  readonly co2PerKm: number;
  /** net battery energy over fuel energy before the correction */
  readonly netShare: number;
  readonly slope: number;
  readonly runs: number;
}

/** The least fuel possible, and how it is reached. */
export interface BoundReply {
  readonly feasible: boolean;
  readonly reason: string;
  readonly fuelEnergy: number;
  /** J either way */
  readonly gridError: number;
  readonly litresPer100Km: number;
  readonly starts: number;
  readonly socSteps: number;
  /** s in which the vehicle cannot do what is asked */
  readonly unmet: number;
  /** once a stage */
  readonly time: Float64Array;
  readonly soc: Float64Array;
}

/** Long work that a worker does, one piece at a time. */
export interface RunWorker {
  run(request: RunRequest, report: (share: number) => void): RunReply;
  balance(request: RunRequest, report: (share: number) => void): BalanceReply;
  /** one job of a comparison */
  compare(job: ComparisonJob, report: (share: number) => void): ComparisonResult;
  /** the least fuel possible on a cycle; null when it cannot be driven to equal charge */
  bound(request: Omit<RunRequest, "strategy">, report: (share: number) => void): BoundReply;
  limits(request: Omit<RunRequest, "cycle">): LimitsResult;
}
