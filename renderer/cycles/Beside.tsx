import type { StatisticsRow } from "../../cycles/statistics/beside-standard.ts";
import { num, type Units } from "../state/format.ts";
import { units } from "../state/settings.ts";
import { t } from "../texts/catalogue.ts";
import { clockTime } from "../ui/time.ts";
import { rowShown, standards } from "./figures-state.ts";
import { cycleShown, kindShown, look } from "./state.ts";
import { distanceNumber, distanceUnit, speedNumber, speedUnit } from "./units.ts";

const words = t.cycles.figures;

interface Column {
  readonly name: Exclude<keyof typeof words, "cycle">;
  readonly unit: (units: Units) => string;
  readonly say: (row: StatisticsRow, units: Units) => string;
  /** left out where the window is narrow */
  readonly wide?: boolean;
}

const COLUMNS: readonly Column[] = [
  { name: "duration", unit: () => "", say: ({ statistics }) => clockTime(statistics.duration, 0) },
  {
    name: "distance",
    unit: distanceUnit,
    say: ({ statistics }, shown) => distanceNumber(shown, statistics.distance),
  },
  {
    name: "meanSpeed",
    unit: speedUnit,
    say: ({ statistics }, shown) => speedNumber(shown, statistics.meanSpeed),
  },
  {
    name: "meanMovingSpeed",
    unit: speedUnit,
    say: ({ statistics }, shown) => speedNumber(shown, statistics.meanMovingSpeed),
    wide: true,
  },
  {
    name: "maxSpeed",
    unit: speedUnit,
    say: ({ statistics }, shown) => speedNumber(shown, statistics.maxSpeed),
  },
  {
    name: "maxAcceleration",
    unit: () => "m/s²",
    say: ({ statistics }) => num(statistics.maxAcceleration, 2),
  },
  {
    name: "maxDeceleration",
    unit: () => "m/s²",
    say: ({ statistics }) => num(statistics.maxDeceleration, 2),
    wide: true,
  },
  { name: "restShare", unit: () => "%", say: ({ statistics }) => num(statistics.restShare * 100, 1) },
  { name: "stops", unit: () => "", say: ({ statistics }) => num(statistics.stops) },
  {
    name: "relativePositiveAcceleration",
    unit: () => "m/s²",
    // The same figure as the map's.
    say: ({ dynamics }) => num(dynamics.relativePositiveAcceleration, 3),
  },
];

const Cells = ({ row }: { row: StatisticsRow | null }) => (
  <>
    {COLUMNS.map(({ name, say, wide }) => (
      <td key={name} class={wide ? "cy-wide" : ""}>
        {row ? say(row, units.value) : "–"}
      </td>
    ))}
  </>
);

/** Figures of the cycle looked at, and of every standard cycle under it. */
export function Beside() {
  const trace = cycleShown.value;
  const own = rowShown.value;
  const others = standards.value.filter(({ id }) => id !== trace?.id);
  return (
    <div class="cy-table" tabIndex={0} role="region" aria-label={t.cycles.beside}>
      <table>
        <thead>
          <tr>
            <th scope="col">{words.cycle}</th>
            {COLUMNS.map(({ name, unit, wide }) => (
              <th key={name} scope="col" class={wide ? "cy-wide" : ""}>
                {words[name]} <span class="unit">{unit(units.value)}</span>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {trace && (
            <tr class="picked">
              <th scope="row">
                <span class="cy-name" title={trace.title}>
                  {kindShown.value === "catalogue" ? trace.id.toUpperCase() : trace.title}
                </span>
              </th>
              <Cells row={own} />
            </tr>
          )}
          {others.map((row) => (
            <tr key={row.id}>
              <th scope="row">
                <button type="button" class="cy-name" title={row.title} onClick={() => look(row.id)}>
                  {row.id.toUpperCase()}
                </button>
              </th>
              <Cells row={row} />
            </tr>
          ))}
        </tbody>
      </table>
      <p class="hint">{t.cycles.briskness}</p>
    </div>
  );
}
