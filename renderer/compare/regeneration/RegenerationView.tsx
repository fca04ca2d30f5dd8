import type { RegenerationCell } from "../../../sim/study/regeneration/study.ts";
import { ViewHead } from "../../bench/ViewHead.tsx";
import { num, roadSpeed, roadUnitName } from "../../state/format.ts";
import { units } from "../../state/settings.ts";
import { t } from "../../texts/catalogue.ts";
import { HeatMap, type HeatPlace } from "../HeatMap.tsx";
import { PatternSwatch } from "../HeatPatterns.tsx";
import { toRoad } from "./actions.ts";
import { BRAKE_LIMITS, limitWords, patternOf } from "./limit-look.ts";
import { cellKey } from "./plan.ts";
import { RegenerationForm } from "./RegenerationForm.tsx";
import { readPlace, type Study, study, studyCells, studyTable } from "./state.ts";

const c = t.compare.regeneration;
const s = t.compare.sweep;

const kilojoules = (energy: number): string => `${num(energy / 1000, 1)} kJ`;

const speedTitle = (): string => `${c.speeds}, ${roadUnitName(units.value)}`;
const rateTitle = `${c.rates}, ${c.rateUnit}`;

const cellAt = ({ plan }: Study, { column, row }: HeatPlace): RegenerationCell | undefined =>
  studyCells.value.get(cellKey({ speed: plan.speeds[column] ?? 0, rate: plan.rates[row] ?? 0 }));

/** What is printed in a cell: the share in per cent, and the letter of the limit. */
const cellText = ({ recovered_share, limit }: RegenerationCell): string =>
  `${num(recovered_share * 100)} ${limitWords(limit)[0]}`;

/** A cell in one sentence. */
function words(one: Study, place: HeatPlace): string {
  const where = `${roadSpeed(units.value, one.plan.speeds[place.column] ?? 0)}, ${num(one.plan.rates[place.row] ?? 0, 2)} ${c.rateUnit}`;
  const cell = cellAt(one, place);
  if (!cell) return `${where}: ${c.notRun}`;
  return `${where}: ${cellText(cell)}. ${c.figures.share} ${num(cell.recovered_share * 100)} %; ${c.figures.limit}: ${limitWords(cell.limit)[1]}`;
}

function Cells({ one }: { one: Study }) {
  const { plan } = one;
  return (
    <HeatMap
      name={c.describe(speedTitle(), rateTitle)}
      columns={plan.speeds.map((speed) => num(toRoad(speed), 0))}
      rows={plan.rates.map((rate) => num(rate, 2))}
      xTitle={speedTitle()}
      yTitle={rateTitle}
      hue="battery"
      at={readPlace.value}
      onMove={(to) => {
        readPlace.value = to;
      }}
      cell={(place) => {
        const cell = cellAt(one, place);
        return {
          text: cell ? cellText(cell) : "",
          share: cell ? Math.min(1, Math.max(0, cell.recovered_share)) : null,
          pattern: cell ? patternOf(cell.limit) : null,
          words: words(one, place),
        };
      }}
    />
  );
}

/** What the letters and patterns mean, of the limits that are on the map. */
function Key() {
  const seen = new Set([...studyCells.value.values()].map(({ limit }) => limit));
  const shown = BRAKE_LIMITS.filter((limit) => seen.has(limit));
  return (
    <ul class="limit-key" aria-label={c.key}>
      {shown.map((limit) => (
        <li key={limit}>
          <PatternSwatch pattern={BRAKE_LIMITS.indexOf(limit)} /> <b>{limitWords(limit)[0]}</b>{" "}
          {limitWords(limit)[1]}
        </li>
      ))}
      {seen.has(null) && (
        <li>
          <b>{c.none[0]}</b> {c.none[1]}
        </li>
      )}
    </ul>
  );
}

/** Everything that is known of the cell that is read. */
function Reading({ one }: { one: Study }) {
  const cell = cellAt(one, readPlace.value);
  const slower = cell && cell.speed_reached < cell.speed - 0.5;
  const rows: readonly (readonly [string, string])[] = cell
    ? [
        [c.figures.share, `${num(cell.recovered_share * 100, 1)} %`],
        [c.figures.asked, kilojoules(cell.asked_at_wheels_j)],
        [c.figures.shaft, kilojoules(cell.at_machine_shaft_j)],
        [c.figures.battery, kilojoules(cell.into_battery_j)],
        [c.figures.friction, kilojoules(cell.friction_brakes_j)],
        [c.figures.kept, kilojoules(cell.kept_j)],
        [c.figures.charge, `${num(cell.soc * 100, 1)} → ${num(cell.soc_after * 100, 1)} %`],
        [
          c.figures.cost,
          cell.limits.map(({ id, friction }) => `${limitWords(id)[0]} ${kilojoules(friction)}`).join(", ") ||
            c.none[1],
        ],
      ]
    : [];
  return (
    <div class="sweep-reading" aria-live="polite">
      <p>
        <b>{words(one, readPlace.value)}</b>
        {slower && <> {c.reached(roadSpeed(units.value, cell.speed_reached))}</>}
      </p>
      <dl class="many">
        {rows.map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
    </div>
  );
}

/** The map as a table, a row a stop. */
const Table = ({ one: { plan } }: { one: Study }) => (
  <div class="scrolls" role="region" aria-label={c.map} tabIndex={0}>
    <table class="plain-table">
      <caption>{c.map}</caption>
      <thead>
        <tr>
          <th scope="col">{speedTitle()}</th>
          <th scope="col">{rateTitle}</th>
          <th scope="col">{c.columns.share}</th>
          <th scope="col">{c.columns.kept}</th>
          <th scope="col">{c.columns.limit}</th>
        </tr>
      </thead>
      <tbody>
        {plan.speeds.flatMap((speed) =>
          plan.rates.map((rate) => {
            const cell = studyCells.value.get(cellKey({ speed, rate }));
            return (
              <tr key={`${speed} ${rate}`}>
                <th scope="row">{num(toRoad(speed), 0)}</th>
                <th scope="row">{num(rate, 2)}</th>
                <td>{cell ? num(cell.recovered_share * 100, 1) : c.notRun}</td>
                <td>{cell ? num(cell.kept_j / 1000, 1) : ""}</td>
                <td>{cell ? limitWords(cell.limit)[1] : ""}</td>
              </tr>
            );
          }),
        )}
      </tbody>
    </table>
  </div>
);

const Tools = () => (
  <div class="sweep-tools">
    <fieldset class="segments" aria-label={s.look}>
      {[false, true].map((table) => (
        <button
          key={String(table)}
          type="button"
          aria-pressed={studyTable.value === table}
          onClick={() => {
            studyTable.value = table;
          }}
        >
          {table ? s.asTable : s.asPlot}
        </button>
      ))}
    </fieldset>
  </div>
);

/** What braking gives back: stops over speed and rate from one charge, and what limited each. */
export function RegenerationView() {
  const one = study.value;
  return (
    <div class="sweep-view">
      <section class="view s-plot" aria-labelledby="view-a">
        <ViewHead
          id="view-a"
          tag="A"
          title={c.map}
          sub={one ? c.sub(num((one.plan.charges[0] ?? 0) * 100, 1)) : ""}
        />
        {one ? (
          <>
            <Tools />
            {studyTable.value ? (
              <Table one={one} />
            ) : (
              <>
                <Cells one={one} />
                <Key />
                <Reading one={one} />
              </>
            )}
          </>
        ) : (
          <p class="empty">{c.empty}</p>
        )}
      </section>
      <RegenerationForm />
    </div>
  );
}
