import { InputError } from "../../../shared/errors.ts";

/** How finely the optimum is computed. */
export interface Grid {
  /** length of a stage, s */
  readonly stage: number;
  /** grid points of charge less one */
  readonly socSteps: number;
  /** most engine points a stage, of the Pareto set of fuel against battery power */
  readonly points: number;
  /** multiplies the engine speeds that the Pareto set is found from */
  readonly speeds: number;
}

/** The grid unless something else is asked: a second, 201 charges, 60 points. */
export const STANDARD_GRID: Grid = { stage: 1, socSteps: 200, points: 60, speeds: 1 };

/** A number within its range. @throws InputError naming it */
export function checkRange(name: string, value: number, least: number, most: number): number {
  if (value >= least && value <= most) return value;
  throw new InputError({
    what: "out of range",
    where: `optimum ${name}`,
    value: String(value),
    accepted: `${least} … ${most}`,
  });
}

/** A grid with what is left out filled in. @throws InputError for a number out of range */
export function fillGrid(grid: Partial<Grid>): Grid {
  const full = { ...STANDARD_GRID, ...grid };
  return {
    stage: checkRange("stage", full.stage, 0.1, 10),
    socSteps: Math.round(checkRange("socSteps", full.socSteps, 8, 4000)),
    points: Math.round(checkRange("points", full.points, 4, 1000)),
    speeds: Math.round(checkRange("speeds", full.speeds, 1, 8)),
  };
}
