import type { SweepPlan } from "../../../sim/study/sweep/plan.ts";
import { t } from "../../texts/catalogue.ts";
import { cellOf, indexOf } from "./cells.ts";
import type { Quantity } from "./quantities.ts";
import { sweepRows } from "./state.ts";
import { axisName, axisTexts, cellText, cellWords, strategyTitle } from "./words.ts";

const c = t.compare.sweep;

/** Every place on the axes, the last axis changing first. */
const placesOf = (plan: SweepPlan): readonly (readonly number[])[] =>
  plan.axes.reduce<readonly (readonly number[])[]>(
    (made, { values }) => made.flatMap((place) => values.map((_, i) => [...place, i])),
    [[]],
  );

/** The sweep as a table: a row a point, a column a strategy; a figure, or why there is none. */
export const SweepTable = ({ plan, quantity }: { plan: SweepPlan; quantity: Quantity }) => (
  <div class="scrolls" role="region" aria-label={c.quantities[quantity.id]} tabIndex={0}>
    <table class="plain-table">
      <caption>{c.quantities[quantity.id]}</caption>
      <thead>
        <tr>
          {plan.axes.map(({ path }, i) => (
            <th key={path} scope="col">
              {axisName(plan, i)}
            </th>
          ))}
          {plan.strategies.map((strategy) => (
            <th key={strategyTitle(strategy)} scope="col">
              {strategyTitle(strategy)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {placesOf(plan).map((place) => (
          <tr key={place.join()}>
            {place.map((at, i) => (
              <th key={plan.axes[i]?.path} scope="row">
                {axisTexts(plan, i)[at]}
              </th>
            ))}
            {plan.strategies.map((strategy, s) => {
              const cell = cellOf(sweepRows.value.get(indexOf(plan, place, s)), quantity);
              return (
                <td key={strategyTitle(strategy)}>
                  {cell.kind === "value" ? cellText(cell, quantity) : cellWords(cell, quantity)}
                </td>
              );
            })}
          </tr>
        ))}
      </tbody>
    </table>
  </div>
);
