import { signal } from "@preact/signals";
import type { ComparedStrategy } from "../../../sim/study/compare/job.ts";
import type { RegenerationCell, RegenerationPlan } from "../../../sim/study/regeneration/study.ts";
import type { UnderWay } from "../under-way.ts";
import type { StudyForm } from "./plan.ts";

/** What the next study brakes. */
export const studyVehicle = signal("compact");
export const studyStrategy = signal("rules");
export const studyForm = signal<StudyForm>({
  speeds: { from: "20", to: "120", steps: "6" },
  rates: { from: "0.5", to: "4", steps: "8" },
  charge: "60",
});

/** The last study: what was asked, and the cells that are done, by their key. */
export interface Study {
  readonly plan: RegenerationPlan;
  readonly strategy: ComparedStrategy;
}
export const study = signal<Study | null>(null);
export const studyCells = signal<ReadonlyMap<string, RegenerationCell>>(new Map());

/** Stops done and all of them, while a study is under way. */
export const studyUnder = signal<UnderWay | null>(null);

/** The cell that is read, and whether the table is shown instead of the map. */
export const readPlace = signal({ column: 0, row: 0 });
export const studyTable = signal(false);
