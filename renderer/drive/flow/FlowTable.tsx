import { computed } from "@preact/signals";
import { flowsAt } from "../../../sim/run/flows.ts";
import { flowShows } from "../../state/flow-look.ts";
import { instant } from "../../state/instant.ts";
import { hidden } from "../../state/predict.ts";
import { playing, run } from "../../state/road.ts";
import { ROW } from "../../state/run.ts";
import { t } from "../../texts/catalogue.ts";
import { clockTime } from "../../ui/time.ts";
import { closureText, unitsNow } from "./energy-now.ts";
import { ledgerAt } from "./ledger-flows.ts";
import { toldEnergies, toldPowers, toldWords } from "./told.ts";

/** Rows between two tellings while a run plays: a second. */
const TOLD_EVERY = Math.round(1 / ROW);

/** The row that is told in words: the one at the cursor; while a run plays, once a second. */
const toldRow = computed(() => {
  const row = instant.figures.value?.row ?? 0;
  return playing.value ? row - (row % TOLD_EVERY) : row;
});

/** What the sheet shows, in words and as a table, for those who do not see it. */
export function FlowTable() {
  const one = run.value;
  if (!one) return <p id="road-flow-words" class="unseen" />;
  const at = toldRow.value;
  const time = clockTime(at * ROW);
  const power = flowShows.value === "power";
  const hides = hidden.value;
  const rows = power
    ? toldPowers(flowsAt(one.log, at), hides)
    : toldEnergies(ledgerAt(one.log, at), unitsNow.value, hides);
  const said = toldWords(rows);
  const { table } = t.roadFlow;
  return (
    <div class="unseen">
      <p id="road-flow-words">
        {power
          ? t.roadFlow.describePower(time, said || t.roadFlow.nothing)
          : t.roadFlow.describeEnergy(time, unitsNow.value.unit, said || t.roadFlow.nothing, closureText())}
      </p>
      <table data-row={at}>
        <caption>{power ? table.power : t.roadFlow.between(table.energy, unitsNow.value.unit)}</caption>
        <tbody>
          {rows.map(([id, name, value]) => (
            <tr key={id}>
              <th scope="row">{name}</th>
              <td data-flow={id}>{value}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
