import { kilowatts, num, roadSpeed, shaftSpeed, shaftUnitName, type Units } from "../../state/format.ts";
import type { HideableId } from "../../state/predict.ts";
import type { Now, Run } from "../../state/run.ts";
import { t } from "../../texts/catalogue.ts";
import { efficiencyAt, hidesPoint, type MapId, pointReader, powerAt } from "./kinds.ts";

/** What stands at the point of a map now, ready to be read. */
export interface PointWords {
  readonly speed: string;
  /** torque or force, with its unit */
  readonly effort: string;
  readonly power: string;
  /** empty where there is none */
  readonly efficiency: string;
}

/** The numbers of a map's point; null while they are asked for. */
export function pointWords(
  map: MapId,
  run: Run,
  now: Now,
  units: Units,
  hidden: ReadonlySet<HideableId>,
): PointWords | null {
  if (hidesPoint(map, hidden)) return null;
  const [x, y] = pointReader(map, run)(now.row);
  const efficiency = hidden.has("fuel") ? null : efficiencyAt(map, now.flows);
  return {
    speed: map === "wheels" ? roadSpeed(units, x) : `${shaftSpeed(units, x)} ${shaftUnitName(units)}`,
    effort: map === "wheels" ? `${num(y)} N` : `${num(y, 1)} N·m`,
    power: `${kilowatts(powerAt(map, now.flows))} kW`,
    efficiency: efficiency === null ? "" : `${num(efficiency * 100, 1)} %`,
  };
}

/** The map in words, with its present values. */
export function mapWords(
  map: MapId,
  run: Run | null,
  now: Now | null,
  units: Units,
  hidden: ReadonlySet<HideableId>,
): string {
  const name = t.map.names[map];
  if (!run || !now || now.row >= run.log.rows) return t.map.noPoint(name);
  const words = pointWords(map, run, now, units, hidden);
  if (!words) return t.map.asked(name);
  const parts = [words.speed, words.effort, words.power];
  if (words.efficiency) parts.push(t.map.efficiency(words.efficiency));
  return t.map.at(name, parts.join(", "));
}
