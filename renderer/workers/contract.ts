import type { CycleTrace } from "../../shared/cycle.ts";
import type { OwnFault } from "../../sim/control/own/fault.ts";
import type { RunOptions } from "../../sim/options.ts";
import type { Vehicle } from "../../sim/parameters/schema.ts";
import type { LimitsResult } from "../../sim/run/limits-run.ts";
import type { LogParts } from "../../sim/run/log.ts";
import type { RunSummary } from "../../sim/run/summary.ts";
import type { ComparedStrategy, ComparisonJob } from "../../sim/study/compare/job.ts";
import type { ComparisonResult } from "../../sim/study/compare/run-job.ts";
import type { RegenerationCell, RegenerationPlan } from "../../sim/study/regeneration/study.ts";
import type { SweepJob } from "../../sim/study/sweep/plan.ts";
import type { SweepRow } from "../../sim/study/sweep/run-sweep-job.ts";
import type { LessonWorker } from "./lesson-contract.ts";

/** An own strategy as its text. */
export interface OwnText {
  readonly title: string;
  readonly text: string;
}

/** What is to be driven: plain data, so that it can go to a worker. */
export interface RunRequest {
  readonly vehicle: Vehicle;
  readonly cycle: CycleTrace;
  readonly strategy: string;
  /** text of the strategy where it is a person's own and its id is none of ours */
  readonly own?: OwnText;
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
  /** J since the start: fuel, and what the battery's source gave */
  readonly fuel: Float64Array;
  readonly battery: Float64Array;
}

/** An own text to be read, and driven where there is a cycle. */
export interface OwnTrial {
  readonly own: OwnText;
  readonly vehicle: Vehicle;
  readonly cycle: CycleTrace | null;
  readonly options: RunOptions;
}

/** What came of a trial: figures of the drive (null: only read), or the fault with its place. */
export type OwnTrialReply =
  | { readonly ok: true; readonly summary: RunSummary | null }
  | { readonly ok: false; readonly fault: OwnFault | null; readonly message: string };

/** One brake stop of the study of regeneration. */
export interface BrakeRequest {
  readonly plan: RegenerationPlan;
  readonly strategy: ComparedStrategy;
  readonly speed: number;
  readonly rate: number;
  readonly charge: number;
}

/** Long work that a worker does, one piece at a time. */
export interface RunWorker extends LessonWorker {
  run(request: RunRequest, report: (share: number) => void): Promise<RunReply>;
  balance(request: RunRequest, report: (share: number) => void): Promise<BalanceReply>;
  /** one job of a comparison */
  compare(job: ComparisonJob, report: (share: number) => void): Promise<ComparisonResult>;
  /** one run of a sweep */
  sweep(job: SweepJob, report: (share: number) => void): Promise<SweepRow>;
  /** one cell of the map of regeneration */
  brake(request: BrakeRequest): Promise<RegenerationCell>;
  /** reads an own strategy, and drives with it if asked */
  tryOwn(trial: OwnTrial, report: (share: number) => void): Promise<OwnTrialReply>;
  /** the least fuel possible on a cycle; null when it cannot be driven to equal charge */
  bound(request: Omit<RunRequest, "strategy" | "own">, report: (share: number) => void): BoundReply;
  limits(request: Omit<RunRequest, "cycle">): Promise<LimitsResult>;
}
