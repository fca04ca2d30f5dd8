import { joulesToKwh, mpsToKmh } from "../../shared/units.ts";
import type { ComparisonJob } from "../../sim/study/compare/job.ts";
import type { ComparisonResult } from "../../sim/study/compare/run-job.ts";
import { num } from "../state/format.ts";
import { ownStrategies } from "../state/own-strategies.ts";
import { t } from "../texts/catalogue.ts";
import { LineKey } from "./marks.tsx";
import { planned, titleOf } from "./planned.ts";
import { RegimeStrip } from "./RegimeStrip.tsx";
import {
  boundOf,
  drivenWith,
  type FailedLine,
  failures,
  laid,
  picked,
  pickedResult,
  results,
} from "./state.ts";

const c = t.compare.columns;

/** Per cent over the bound; null without a bound or a balanced figure. */
export function overBound(result: ComparisonResult): number | null {
  const bound = boundOf(result);
  const { fuel } = result.row;
  if (!bound?.feasible || !fuel.balanced) return null;
  return (fuel.energy_j / bound.fuelEnergy - 1) * 100;
}

/** The most that any line is over its bound, a round number: the end of the bars' scale. */
function scaleEnd(): number {
  const most = Math.max(2, ...results.value.map((result) => overBound(result) ?? 0));
  return [2, 5, 10, 15, 20, 30, 50, 100, 200].find((end) => end >= most) ?? 500;
}

function Bar({ result, end }: { result: ComparisonResult; end: number }) {
  const over = overBound(result);
  if (over === null) return <span class="unit">–</span>;
  return (
    <span class="over">
      <span class="over-bar" style={{ width: `${(Math.max(0, over) / end) * 62}%` }} />
      <b>
        {over >= 0 ? "+" : ""}
        {num(over, 1)} %
      </b>
    </span>
  );
}

function name({ row }: ComparisonResult): string {
  const several = results.value.some(
    (other) => other.row.vehicle.id !== row.vehicle.id || other.row.cycle.id !== row.cycle.id,
  );
  return several ? `${row.strategy.title}, ${row.vehicle.name}, ${row.cycle.id}` : row.strategy.title;
}

/** That a line is a person's own, and whether its text is still the one that was driven. */
function OwnWord({ index }: { index: number }) {
  const driven = drivenWith.value.get(index);
  if (driven?.kind !== "own") return null;
  const now = ownStrategies.value.find(({ title }) => title === driven.title);
  return <span class="unit">{now?.text === driven.text ? t.compare.ownWord : t.compare.ownChanged}</span>;
}

/** A line that could not be driven: its name, and why. */
const Failed = ({ line }: { line: FailedLine }) => (
  <tr class="failed">
    <th scope="row">
      <span class="no-key" /> {line.strategy}
    </th>
    <td colSpan={8}>
      <b>{t.compare.lineFailed(line.vehicle, line.cycle)}</b> {line.why}
    </td>
  </tr>
);

/** A line that is still to be driven. */
const Planned = ({ job }: { job: ComparisonJob }) => (
  <tr class="planned">
    <th scope="row">
      <span class="no-key" /> {titleOf(job)}
    </th>
    <td colSpan={8}>
      {job.vehicle.name}, {job.cycle.title}
    </td>
  </tr>
);

function Line({ result, end }: { result: ComparisonResult; end: number }) {
  const { row } = result;
  const on = result === pickedResult.value;
  const place = laid.value.indexOf(result);
  return (
    <tr class={on ? "picked" : ""} aria-selected={on}>
      <th scope="row">
        <button
          type="button"
          onClick={() => {
            picked.value = row.index;
          }}
        >
          {place >= 0 ? <LineKey place={place} picked={on} /> : <span class="no-key" />}
          {name(result)} <OwnWord index={row.index} />
        </button>
      </th>
      <td class="fuel">
        {row.fuel.balanced ? (
          <b>{num(row.fuel.litres_per_100km, 2)}</b>
        ) : (
          <span title={row.fuel.reason}>{t.compare.notBalanced}</span>
        )}
      </td>
      <td class="over-cell">
        <Bar result={result} end={end} />
      </td>
      <td>{num(row.recovery_share * 100, 0)} %</td>
      <td>{num(row.starts)}</td>
      <td>{num(row.engine_seconds / 60, 1)}</td>
      <td>{num(joulesToKwh(row.battery_throughput_j), 2)}</td>
      <td>{num(mpsToKmh(row.trace_rms_mps), 2)}</td>
      <td class="strip-cell">
        <RegimeStrip row={row} />
      </td>
    </tr>
  );
}

/** The bound of the picked line's cycle: the first row of the table. */
function BoundLine() {
  const one = pickedResult.value;
  const bound = one && boundOf(one);
  if (!bound) return null;
  return (
    <tr class="bound">
      <th scope="row">
        {t.compare.bound} <span class="unit">{t.compare.boundWord}</span>
      </th>
      <td class="fuel">{bound.feasible ? <b>{num(bound.litresPer100Km, 2)}</b> : bound.reason}</td>
      <td class="over-cell">
        {t.compare.nothingBelow}, {t.compare.gridError(num((bound.gridError / bound.fuelEnergy) * 100, 2))}
      </td>
      <td />
      <td>{num(bound.starts)}</td>
      <td />
      <td />
      <td />
      <td class="strip-cell" />
    </tr>
  );
}

const Head = ({ name: title, unit }: { name: string; unit?: string }) => (
  <th scope="col">
    {title}
    {unit && <span class="unit">{unit}</span>}
  </th>
);

/** View A: everything in one ruled table; the bound is a bold line that no bar can pass to the left. */
export function CompareTable() {
  const end = scaleEnd();
  return (
    <table class="compare" aria-label={t.compare.describe(num(results.value.length))}>
      <thead>
        <tr>
          <Head name={c.what} />
          <Head name={c.fuel} unit={c.fuelUnit} />
          <Head name={c.over} unit={`0 … ${num(end)} %`} />
          <Head name={c.recovered} unit={c.recoveredUnit} />
          <Head name={c.starts} />
          <Head name={c.engine} unit={c.engineUnit} />
          <Head name={c.throughput} unit={c.throughputUnit} />
          <Head name={c.trace} unit={c.traceUnit} />
          <Head name={c.regimes} />
        </tr>
      </thead>
      <tbody>
        <BoundLine />
        {results.value.map((result) => (
          <Line key={result.row.index} result={result} end={end} />
        ))}
        {failures.value.map((line) => (
          <Failed key={line.index} line={line} />
        ))}
        {planned.value.map((job) => (
          <Planned key={job.index} job={job} />
        ))}
      </tbody>
    </table>
  );
}
