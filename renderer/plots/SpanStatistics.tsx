import { joulesToKwh } from "../../shared/units.ts";
import { limitMeaning } from "../../sim/limits.ts";
import { type SpanFigures, spanFigures } from "../../sim/run/span.ts";
import { ViewHead } from "../bench/ViewHead.tsx";
import { num, roadSpeed } from "../state/format.ts";
import { type HideableId, hidden } from "../state/predict.ts";
import { chosen, looping, run, type Stretch } from "../state/road.ts";
import { type Run, rowAt } from "../state/run.ts";
import { units } from "../state/settings.ts";
import { t } from "../texts/catalogue.ts";
import { Icon } from "../ui/icons.tsx";
import { clockTime } from "../ui/time.ts";
import { Swatch } from "./time/Swatch.tsx";

const words = t.plots.stretch;

interface Line {
  readonly name: string;
  readonly value: string;
  /** the same in another way, or its share */
  readonly beside?: string;
  readonly tells?: HideableId;
  /** part of the line before */
  readonly part?: boolean;
}

const kilojoules = (joules: number): string => `${num(joules / 1000, 1)} kJ`;
const percent = (share: number): string => (Number.isFinite(share) ? `${num(share * 100, 1)} %` : "–");

function distance(metres: number): string {
  return metres < 1000 ? `${num(metres)} m` : `${num(metres / 1000, 2)} km`;
}

function spanLines(found: SpanFigures): readonly Line[] {
  const { used, battery } = found;
  const per100 = Number.isFinite(used.litresPer100Km) ? `${num(used.litresPer100Km, 2)} L/100 km` : "";
  return [
    { name: words.duration, value: `${num(found.duration, 1)} s` },
    { name: words.distance, value: distance(found.distance) },
    {
      name: words.mean,
      value: roadSpeed(units.value, found.meanSpeed),
      beside: words.upTo(roadSpeed(units.value, found.greatestSpeed)),
      tells: "road-speed",
    },
    {
      name: words.fuel,
      value: `${num(used.litres * 1000, 1)} mL`,
      beside: per100,
      tells: "fuel",
    },
    {
      name: battery < 0 ? words.took : words.gave,
      value: `${num(joulesToKwh(Math.abs(battery)), 3)} kWh`,
      beside: kilojoules(Math.abs(battery)),
      tells: "charge",
    },
    {
      name: words.engineOn,
      value: `${num(found.engineOn, 1)} s`,
      beside: percent(found.engineOn / found.duration),
    },
  ];
}

/** Where the energy asked of braking went. What neither battery nor brakes got is the rest of what was asked. */
function brakingLines(found: SpanFigures): readonly Line[] {
  const { asked, recovered, friction, rest } = found;
  if (asked <= 0) return [{ name: words.askedOfBrakes, value: words.noBraking }];
  const of = (name: string, joules: number, tells?: HideableId): Line => ({
    name,
    value: percent(joules / asked),
    beside: kilojoules(joules),
    part: true,
    ...(tells ? { tells } : {}),
  });
  return [
    { name: words.askedOfBrakes, value: kilojoules(asked) },
    of(words.intoBattery, recovered, "recovered"),
    of(words.inBrakes, friction),
    of(words.onTheWay, rest),
  ];
}

const Row = ({ line }: { line: Line }) => {
  const asked = line.tells !== undefined && hidden.value.has(line.tells);
  return (
    <tr class={line.part ? "part" : ""}>
      <th scope="row">{line.name}</th>
      <td class="beside">{asked ? "" : line.beside}</td>
      <td class="value">{asked ? "?" : line.value}</td>
    </tr>
  );
};

interface GroupProps {
  readonly title: string;
  readonly lines: readonly Line[];
  readonly none?: string;
}

const Group = ({ title, lines, none = "" }: GroupProps) => (
  <tbody>
    <tr class="group">
      <th scope="rowgroup" colSpan={3}>
        {title}
      </th>
    </tr>
    {lines.map((line) => (
      <Row key={line.name} line={line} />
    ))}
    {lines.length === 0 && (
      <tr>
        <td colSpan={3}>{none}</td>
      </tr>
    )}
  </tbody>
);

const seconds = (length: number, all: number): Pick<Line, "value" | "beside"> => ({
  value: `${num(length, 1)} s`,
  beside: percent(length / all),
});

/** Time in each regime, with its swatch; nothing is told while the regime is asked for. */
const InRegimes = ({ found }: { found: SpanFigures }) => (
  <tbody>
    <tr class="group">
      <th scope="rowgroup" colSpan={3}>
        {words.inRegimes}
      </th>
    </tr>
    {hidden.value.has("regime") ? (
      <tr>
        <td colSpan={3}>?</td>
      </tr>
    ) : (
      found.regimes.map(({ id, seconds: length }) => {
        const { value, beside } = seconds(length, found.duration);
        return (
          <tr key={id}>
            <th scope="row">
              <Swatch regime={id} height={11} /> {t.roadRegimes[id]?.title ?? id}
            </th>
            <td class="beside">{beside}</td>
            <td class="value">{value}</td>
          </tr>
        );
      })
    )}
  </tbody>
);

function figuresOf(one: Run, stretch: Stretch): SpanFigures | null {
  const from = Math.min(rowAt(one.log, stretch.from), one.log.rows - 2);
  const to = Math.max(from + 1, rowAt(one.log, stretch.to));
  return from < 0 ? null : spanFigures(one.log, one.regime, one.request.vehicle, from, to);
}

function Figures({ found }: { found: SpanFigures }) {
  const bound = found.limits.map(({ id, seconds: length }) => ({
    name: limitMeaning(id),
    ...seconds(length, found.duration),
  }));
  return (
    <div class="span-scroll" tabIndex={0} role="group" aria-label={words.figures}>
      <table class="span-figures" aria-label={words.figures}>
        <tbody>
          {spanLines(found).map((line) => (
            <Row key={line.name} line={line} />
          ))}
        </tbody>
        <Group title={words.braking} lines={brakingLines(found)} />
        <Group title={words.limits} lines={bound} none={words.noLimits} />
        <InRegimes found={found} />
      </table>
    </div>
  );
}

/** Figures of the chosen stretch: what it took, where the braking went, what bound, and in which regimes. */
export function SpanStatistics() {
  const one = run.value;
  const stretch = chosen.value;
  const found = one && stretch ? figuresOf(one, stretch) : null;
  if (!found || !stretch) return null;
  return (
    <section class="view span-view" aria-labelledby="view-f">
      <ViewHead
        id="view-f"
        tag="F"
        title={words.title}
        sub={words.from(clockTime(stretch.from), clockTime(stretch.to))}
      />
      <button
        type="button"
        class="iconbtn span-close"
        aria-label={words.close}
        title={words.close}
        onClick={() => {
          chosen.value = null;
          looping.value = false;
        }}
      >
        <Icon name="close" />
      </button>
      <Figures found={found} />
    </section>
  );
}
