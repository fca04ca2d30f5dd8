import { joulesToKwh } from "../../shared/units.ts";
import { limitMeaning } from "../../sim/limits.ts";
import { type SpanFigures, spanFigures } from "../../sim/run/span.ts";
import { ViewHead } from "../bench/ViewHead.tsx";
import { num, roadSpeed } from "../state/format.ts";
import { chosen, looping, run } from "../state/road.ts";
import { rowAt } from "../state/run.ts";
import { units } from "../state/settings.ts";
import { t } from "../texts/catalogue.ts";
import { clockTime } from "../ui/time.ts";

const s = t.plots.stretch;

const kilojoules = (joules: number): string => `${num(joules / 1000, 1)} kJ`;

function rowsOf(found: SpanFigures): readonly (readonly [string, string])[] {
  return [
    [s.duration, `${num(found.duration, 1)} s`],
    [s.distance, `${num(found.distance, 0)} m`],
    [s.mean, roadSpeed(units.value, found.meanSpeed)],
    [s.fuel, `${kilojoules(found.fuel)}, ${num(found.used.litresPer100Km, 2)} L/100 km`],
    [s.battery, `${kilojoules(found.battery)}, ${num(joulesToKwh(found.battery), 3)} kWh`],
    [s.asked, kilojoules(found.asked)],
    [s.recovered, kilojoules(found.recovered)],
    [s.friction, kilojoules(found.friction)],
    [s.share, `${num(found.share * 100, 1)} %`],
    [s.engineOn, `${num(found.engineOn, 1)} s`],
  ];
}

const List = ({ name, rows }: { name: string; rows: readonly (readonly [string, number])[] }) => (
  <>
    <h3>{name}</h3>
    {rows.length === 0 && <p>{s.none}</p>}
    <table class="figures">
      <tbody>
        {rows.map(([what, seconds]) => (
          <tr key={what}>
            <th scope="row">{what}</th>
            <td>{num(seconds, 1)} s</td>
          </tr>
        ))}
      </tbody>
    </table>
  </>
);

/** Figures of the chosen stretch: what it took, what came back, and what bound. */
export function SpanStatistics() {
  const one = run.value;
  const stretch = chosen.value;
  if (!one || !stretch) return null;
  const from = rowAt(one.log, stretch.from);
  const to = Math.max(from + 1, rowAt(one.log, stretch.to));
  if (to >= one.log.rows) return null;
  const found = spanFigures(one.log, one.regime, one.request.vehicle, from, to);
  return (
    <section class="view stretch" aria-labelledby="view-f">
      <ViewHead
        id="view-f"
        tag="F"
        title={s.title}
        sub={s.from(clockTime(stretch.from), clockTime(stretch.to))}
      />
      <table class="figures">
        <tbody>
          {rowsOf(found).map(([name, value]) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>{value}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <List name={s.limits} rows={found.limits.map(({ id, seconds }) => [limitMeaning(id), seconds])} />
      <List
        name={s.regimes}
        rows={found.regimes.map(({ id, seconds }) => [t.roadRegimes[id]?.title ?? id, seconds])}
      />
      <button
        type="button"
        class="btn"
        onClick={() => {
          chosen.value = null;
          looping.value = false;
        }}
      >
        {s.close}
      </button>
    </section>
  );
}
