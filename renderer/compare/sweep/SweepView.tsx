import type { SweepPlan } from "../../../sim/study/sweep/plan.ts";
import { ViewHead } from "../../bench/ViewHead.tsx";
import { t } from "../../texts/catalogue.ts";
import { HeatMap } from "../HeatMap.tsx";
import { LineKey } from "../marks.tsx";
import { type Cell, cellOf, extentOf, indexOf, shareOf } from "./cells.ts";
import { LinePlot } from "./LinePlot.tsx";
import { FUEL, QUANTITIES, type Quantity } from "./quantities.ts";
import { SweepForm } from "./SweepForm.tsx";
import { SweepTable } from "./SweepTable.tsx";
import { asTable, shownPlace, shownQuantity, shownStrategy, sweepPlan, sweepRows } from "./state.ts";
import { axisName, axisTexts, cellText, cellWords, placeWords, strategyTitle } from "./words.ts";

const c = t.compare.sweep;

const HUES = {
  fuel: "fuel",
  over: "fuel",
  recovered: "battery",
  starts: "carrier",
  engine: "carrier",
  throughput: "battery",
  trace: "ring",
  electric: "battery",
} as const;

const quantityNow = (): Quantity => QUANTITIES.find(({ id }) => id === shownQuantity.value) ?? FUEL;

const cellAt = (plan: SweepPlan, place: readonly number[], strategy: number): Cell =>
  cellOf(sweepRows.value.get(indexOf(plan, place, strategy)), quantityNow());

/** Two parameters: one strategy's cells over both. */
function Cells({ plan }: { plan: SweepPlan }) {
  const quantity = quantityNow();
  const strategy = shownStrategy.value;
  const [first = 0, second = 0] = shownPlace.value;
  const [rows, columns] = [axisTexts(plan, 0), axisTexts(plan, 1)];
  const extent = extentOf(rows.flatMap((_, r) => columns.map((_, i) => cellAt(plan, [r, i], strategy))));
  const title = plan.strategies[strategy];
  return (
    <HeatMap
      name={c.describeMap(
        c.quantities[quantity.id],
        axisName(plan, 1),
        axisName(plan, 0),
        title ? strategyTitle(title) : "",
      )}
      columns={columns}
      rows={rows}
      xTitle={axisName(plan, 1)}
      yTitle={axisName(plan, 0)}
      hue={HUES[quantity.id]}
      at={{ column: second, row: first }}
      onMove={({ column, row }) => {
        shownPlace.value = [row, column];
      }}
      cell={({ column, row }) => {
        const cell = cellAt(plan, [row, column], strategy);
        return {
          text: cellText(cell, quantity),
          share: cell.kind === "value" && extent ? shareOf(cell.value, extent) : null,
          pattern: cell.kind === "none" || cell.kind === "refused" ? 1 : null,
          words: `${placeWords(plan, [row, column])}. ${cellWords(cell, quantity)}`,
        };
      }}
    />
  );
}

/** Everything that stands at the place that is looked at, for every strategy. */
function Reading({ plan }: { plan: SweepPlan }) {
  const quantity = quantityNow();
  const place = shownPlace.value.slice(0, plan.axes.length);
  return (
    <div class="sweep-reading" aria-live="polite">
      <p>
        <b>{placeWords(plan, place)}</b>
      </p>
      <dl>
        {plan.strategies.map((strategy, s) => (
          <div key={strategyTitle(strategy)}>
            <dt>
              {plan.axes.length === 1 && <LineKey place={s} picked={false} />} {strategyTitle(strategy)}
            </dt>
            <dd>{cellWords(cellAt(plan, place, s), quantity)}</dd>
          </div>
        ))}
      </dl>
    </div>
  );
}

/** Which figure, of which strategy, as what, and how it is taken along. */
function Tools({ plan }: { plan: SweepPlan }) {
  const known = QUANTITIES.filter(({ id }) => id !== "over" || plan.optimum);
  return (
    <div class="sweep-tools">
      <label>
        {c.quantity}{" "}
        <select
          value={quantityNow().id}
          onChange={(event) => {
            const found = known.find(({ id }) => id === event.currentTarget.value);
            if (found) shownQuantity.value = found.id;
          }}
        >
          {known.map(({ id }) => (
            <option key={id} value={id}>
              {c.quantities[id]}
            </option>
          ))}
        </select>
      </label>
      {plan.axes.length === 2 && plan.strategies.length > 1 && (
        <label>
          {c.strategy}{" "}
          <select
            value={shownStrategy.value}
            onChange={(event) => {
              shownStrategy.value = Number(event.currentTarget.value);
            }}
          >
            {plan.strategies.map((strategy, i) => (
              <option key={strategyTitle(strategy)} value={i}>
                {strategyTitle(strategy)}
              </option>
            ))}
          </select>
        </label>
      )}
      <fieldset class="segments" aria-label={c.look}>
        {[false, true].map((table) => (
          <button
            key={String(table)}
            type="button"
            aria-pressed={asTable.value === table}
            onClick={() => {
              asTable.value = table;
            }}
          >
            {table ? c.asTable : c.asPlot}
          </button>
        ))}
      </fieldset>
    </div>
  );
}

function Results({ plan }: { plan: SweepPlan }) {
  const quantity = quantityNow();
  if (asTable.value) return <SweepTable plan={plan} quantity={quantity} />;
  return (
    <>
      {plan.axes.length === 1 ? (
        <LinePlot plan={plan} quantity={quantity} hue={HUES[quantity.id]} />
      ) : (
        <Cells plan={plan} />
      )}
      <Reading plan={plan} />
    </>
  );
}

/** One or two parameters varied: lines or a map of a chosen figure. */
export function SweepView() {
  const plan = sweepPlan.value;
  const title = plan?.axes.length === 2 ? c.map : c.plot;
  const sub = plan ? `${plan.vehicles[0]?.name ?? ""}, ${plan.cycles[0]?.title ?? ""}` : "";
  return (
    <div class="sweep-view">
      <section class="view s-plot" aria-labelledby="view-a">
        <ViewHead id="view-a" tag="A" title={title} sub={sub} />
        {plan ? (
          <>
            <Tools plan={plan} />
            <Results plan={plan} />
          </>
        ) : (
          <p class="empty">{c.empty}</p>
        )}
      </section>
      <SweepForm />
    </div>
  );
}
