import { shareToPercent } from "../../../shared/units.ts";
import { type LimitId, limitMeaning } from "../../limits.ts";
import type { RegenerationCell, RegenerationMap } from "../../study/regeneration/study.ts";
import { columns, digits, fixed, section, wrap } from "./text.ts";
import { percent, type ReportUnits } from "./units.ts";

/** Letter that stands for a limit in the map. */
const LETTERS: Partial<Record<LimitId, string>> = {
  "axle-share": "a",
  "low-speed-fade": "f",
  "output-torque": "m",
  "output-speed": "s",
  "battery-charge": "b",
  "tyre-grip": "t",
  "regeneration-off": "n",
};

/** Charge that the brake was asked for at: further from the one wanted than this is told. */
const FAR = 0.005;

const letter = (cell: RegenerationCell): string => (cell.limit ? (LETTERS[cell.limit] ?? "?") : " ");

function grid(map: RegenerationMap, cells: readonly RegenerationCell[], units: ReportUnits): string[] {
  const { speeds, rates } = map.plan;
  const head = ["from", ...rates.map((rate) => `${digits(rate, 3)} m/s²`)];
  const rows = speeds.map((speed) => [
    units.speed(speed),
    ...rates.map((rate) => {
      const cell = cells.find((one) => one.speed === speed && one.rate === rate);
      return cell ? `${fixed(shareToPercent(cell.recovered_share), 0)} ${letter(cell)}` : "–";
    }),
  ]);
  return columns([head, ...rows], `l${"r".repeat(rates.length)}`);
}

function chargeTitle(charge: number, cells: readonly RegenerationCell[]): string {
  const reached = cells.map(({ soc }) => soc);
  const least = Math.min(...reached);
  const most = Math.max(...reached);
  const far = cells.length > 0 && Math.max(charge - least, most - charge) > FAR;
  return `charge ${percent(charge, 0)}${far ? `, reached ${percent(least, 0)} to ${percent(most, 0)}` : ""}`;
}

/** The map as tables, one for each charge: recovered share in per cent, and the limit that left most to the brakes. */
export function regenerationReport(map: RegenerationMap, units: ReportUnits): string {
  const { plan, cells, strategy, complete } = map;
  const used = new Set<string | null>(cells.map(({ limit }) => limit));
  const legend = Object.entries(LETTERS)
    .filter(([id]) => used.has(id))
    .map(([id, sign]) => [sign, limitMeaning(id as LimitId)]);
  return [
    `${plan.vehicle.name} (${plan.vehicle.id}), strategy ${strategy}`,
    ...wrap("Braking energy that came into the battery, per cent of what was asked at the wheels."),
    ...plan.charges.flatMap((charge) => {
      const part = cells.filter((cell) => cell.charge === charge);
      return section(chargeTitle(charge, part), part.length > 0 ? grid(map, part, units) : []);
    }),
    ...section("what left most to the friction brakes", columns(legend, "ll")),
    ...section("notes", complete ? [] : ["stopped before the end: the cells done so far"]),
    "",
  ].join("\n");
}
