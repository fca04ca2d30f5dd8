import type { Gear } from "../../sim/control/pedals.ts";
import type { RunOptions } from "../../sim/options.ts";
import type { Vehicle } from "../../sim/parameters/schema.ts";
import type { LogRow } from "../../sim/run/log.ts";
import type { OwnText, RunReply } from "./contract.ts";

/** What is driven by hand. */
export interface LiveRequest {
  readonly vehicle: Vehicle;
  readonly strategy: string;
  /** text of the strategy where it is a person's own */
  readonly own?: OwnText;
  readonly options: RunOptions;
}

/** Where the pedals and the selector are. */
export interface Pedals {
  /** 0–1 each */
  readonly accelerator: number;
  readonly brake: number;
  readonly gear: Gear;
  /** rise over run */
  readonly grade: number;
  readonly electricOnly: boolean;
}

/** What is said to the live worker. */
export type LiveOrder =
  | { readonly order: "start"; readonly request: LiveRequest }
  | { readonly order: "pedals"; readonly pedals: Pedals }
  /** the last frame is drawn: the next may come */
  | { readonly order: "seen" }
  | { readonly order: "end"; readonly id: string; readonly title: string; readonly source: string };

/** One row of the log with its regime. */
export interface LiveRow {
  readonly row: LogRow;
  readonly regime: number;
}

/** What the live worker says: each frame the rows made since the last one and the instant; at the end the drive. */
export type LiveNews =
  | {
      readonly news: "frame";
      readonly rows: readonly LiveRow[];
      readonly head: LiveRow;
      /** share of real time that the engine takes, and whether it falls behind */
      readonly load: number;
      readonly behind: boolean;
    }
  | { readonly news: "ended"; readonly reply: RunReply; readonly trace: LiveTrace }
  | { readonly news: "failed"; readonly why: string };

/** The speed and grade driven, ten a second: what a cycle is made of. */
export interface LiveTrace {
  readonly time: Float64Array;
  readonly speed: Float64Array;
  readonly grade: Float64Array;
}
