import { computed } from "@preact/signals";
import { FLOW_NODES, FLOWS, type FlowId, type Flows, flowsAt } from "../../../sim/run/flows.ts";
import { LEDGER_LINES } from "../../../sim/run/ledger.ts";
import { flowShows } from "../../state/flow-look.ts";
import { num } from "../../state/format.ts";
import { type HideableId, hidden } from "../../state/predict.ts";
import { playing, row, run } from "../../state/road.ts";
import { ROW } from "../../state/run.ts";
import { t } from "../../texts/catalogue.ts";
import { clockTime } from "../../ui/time.ts";
import { closureText, unitsNow } from "./energy-now.ts";
import { energyText } from "./energy-units.ts";
import { askedFlows } from "./kinds.ts";
import { askedEnergies, LINES, ledgerAt } from "./ledger-flows.ts";
import { shownPower } from "./shown.ts";

/** Rows between two tellings while a run plays: a second. */
const TOLD_EVERY = Math.round(1 / ROW);

/** The row that is told in words: the one at the cursor; while a run plays, once a second. */
const toldRow = computed(() => (playing.value ? row.value - (row.value % TOLD_EVERY) : row.value));

/** A power with its sign, as the sheet shows its size. */
function signed(flows: Flows, id: FlowId, asked: ReadonlySet<FlowId>): string {
  const shown = shownPower(flows[id], asked.has(id));
  return flows[id] <= -50 && !asked.has(id) ? `\u2212${shown}` : shown;
}

function powerRows(flows: Flows, hides: ReadonlySet<HideableId>) {
  const asked = askedFlows(hides);
  const rows = FLOWS.map((id) => [`flow:${id}`, t.roadFlow.flows[id], signed(flows, id, asked)] as const);
  const nodes = FLOW_NODES.map(({ id, in: into, out }) => {
    const all = [...into, ...out];
    const told = !all.some((one) => asked.has(one));
    const through = all.reduce((sum, one) => sum + Math.abs(flows[one]), 0) / 2;
    const name = `${t.roadFlow.nodes[id]}, ${t.roadFlow.table.through}`;
    return [`node:${id}`, name, told ? num(through / 1000, 1) : t.roadFlow.asked] as const;
  });
  return [...rows, ...nodes];
}

function energyRows(ledger: readonly number[], hides: ReadonlySet<HideableId>) {
  const asked = new Set([...askedEnergies(hides)].flatMap((id) => LINES[id] ?? []));
  const units = unitsNow.value;
  return LEDGER_LINES.map(({ id }, index) => {
    const value = asked.has(id) ? t.roadFlow.asked : energyText(units, ledger[index] ?? 0);
    return [`ledger:${id}`, t.roadFlow.ledger[id], value] as const;
  });
}

/** What the sheet shows, in words and as a table, for those who do not see it. */
export function FlowTable() {
  const one = run.value;
  if (!one) return <p id="road-flow-words" class="unseen" />;
  const at = toldRow.value;
  const time = clockTime(at * ROW);
  const power = flowShows.value === "power";
  const hides = hidden.value;
  const rows = power ? powerRows(flowsAt(one.log, at), hides) : energyRows(ledgerAt(one.log, at), hides);
  const said = rows
    .filter(([id, , value]) => !id.startsWith("node:") && /[1-9?]/.test(value) && value !== t.roadFlow.little)
    .map(([, name, value]) => t.roadFlow.between(name, value))
    .join("; ");
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
