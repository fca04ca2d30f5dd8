import { FIGURE_UNITS, type FigureUnit } from "./measures.ts";

/**
 * Largest number that is believed to be rad/s: 11,500 rev/min. A map of a car's engine in rev/min goes beyond it,
 * since a greatest speed below 1,910 rev/min is refused.
 */
const MOST_RAD_PER_S = 1200;

/** @param speeds as in the file. @returns id of the unit they are in by their size */
export const guessSpeedUnit = (speeds: readonly number[]): string =>
  speeds.some((speed) => speed > MOST_RAD_PER_S) ? "rev/min" : "rad/s";

/** One point of the map: speed in rad/s, torque in N·m, the figure in the file's unit. */
export interface GuessPoint {
  readonly speed: number;
  readonly torque: number;
  readonly figure: number;
}

/** Brake efficiency of a loaded piston engine lies well within these; common practice, no source. */
const LEAST = 0.12;
const MOST = 0.5;

/** Share of the greatest torque above which an engine counts as loaded. */
const LOADED = 0.4;

/**
 * Finds the unit of the figure by what efficiencies follow from it: that in which most of the loaded points lie between
 * 12 and 50 %.
 * @param lowerHeat of the fuel, J/kg
 * @param allowed units to choose from
 * @returns null where none suits half of the points
 */
export function guessFigureUnit(
  points: readonly GuessPoint[],
  lowerHeat: number,
  allowed: readonly FigureUnit[] = FIGURE_UNITS,
): FigureUnit | null {
  const most = points.reduce((top, { torque }) => Math.max(top, torque), 0);
  const loaded = points.filter(({ speed, torque }) => speed > 0 && torque > 0 && torque >= LOADED * most);
  const fits = (unit: FigureUnit): number =>
    loaded.filter(({ speed, torque, figure }) => {
      const efficiency = (speed * torque) / unit.toFuelPower(figure, speed * torque, lowerHeat);
      return efficiency >= LEAST && efficiency <= MOST;
    }).length;
  const [best] = allowed.map((unit) => ({ unit, count: fits(unit) })).sort((a, b) => b.count - a.count);
  return best && best.count > loaded.length / 2 ? best.unit : null;
}
