import { signal } from "@preact/signals";
import type { SweepPlan } from "../../../sim/study/sweep/plan.ts";
import type { SweepRow } from "../../../sim/study/sweep/run-sweep-job.ts";
import type { UnderWay } from "../under-way.ts";
import type { AxisForm } from "./axis-choice.ts";
import type { Quantity } from "./quantities.ts";

/** What the next sweep varies and drives. */
export const sweepVehicle = signal("compact");
export const sweepCycle = signal("nycc");
export const sweepStrategies = signal<readonly string[]>(["rules", "equivalent-adapted"]);
export const sweepOptimum = signal(false);
/** null: not varied; the first is there always. */
export const firstAxis = signal<AxisForm | null>({ path: "run.payload", from: "0", to: "400", steps: "5" });
export const secondAxis = signal<AxisForm | null>(null);

/** The last sweep: its plan, and the rows that are done, by their index. */
export const sweepPlan = signal<SweepPlan | null>(null);
export const sweepRows = signal<ReadonlyMap<number, SweepRow>>(new Map());

/** Runs done and all of them, while a sweep is under way. */
export const sweepUnder = signal<UnderWay | null>(null);

/** What is looked at: a figure, a strategy (of a map), a place on each axis; drawing or table. */
export const shownQuantity = signal<Quantity["id"]>("fuel");
export const shownStrategy = signal(0);
export const shownPlace = signal<readonly number[]>([0, 0]);
export const asTable = signal(false);
