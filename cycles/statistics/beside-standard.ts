import type { CycleTrace } from "../../shared/cycle.ts";
import { type CycleInfo, cycleById, listCycles } from "../catalogue.ts";
import { type CycleStatistics, statistics } from "./basics.ts";
import { type DrivingDynamics, drivingDynamics } from "./on-road.ts";

/** m/s; recorded drives creep at rest, so they count as standing up to here. */
export const RECORDED_REST_SPEED = 0.3;

/** One line of the comparison. */
export interface StatisticsRow {
  readonly id: string;
  readonly title: string;
  /** "own" for the cycle that is compared. */
  readonly kind: CycleInfo["kind"] | "own";
  readonly statistics: CycleStatistics;
  readonly dynamics: DrivingDynamics;
}

const known = new Map<string, StatisticsRow>();

/** A line for each standard cycle, its phases and composites left out; computed once and kept. */
export function standardRows(): readonly StatisticsRow[] {
  return listCycles()
    .filter((info) => info.kind === "standard")
    .map((info) => {
      const row = known.get(info.id) ?? rowOf(cycleById(info.id), info.kind, 0);
      known.set(info.id, row);
      return row;
    });
}

/**
 * A cycle beside all standard ones: its own line first, the standard ones in the order of the catalogue.
 * @param restSpeed m/s for the cycle's own line; the standard tables stand at exactly 0
 */
export function besideStandard(trace: CycleTrace, restSpeed = RECORDED_REST_SPEED): readonly StatisticsRow[] {
  return [rowOf(trace, "own", restSpeed), ...standardRows()];
}

function rowOf(trace: CycleTrace, kind: StatisticsRow["kind"], restSpeed: number): StatisticsRow {
  return {
    id: trace.id,
    title: trace.title,
    kind,
    statistics: statistics(trace, undefined, restSpeed),
    dynamics: drivingDynamics(trace),
  };
}
