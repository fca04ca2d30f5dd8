import { at } from "../../../shared/at.ts";
import { FLOW_NODES, FLOWS, type FlowId, type Flows } from "../../../sim/run/flows.ts";
import { LEDGER_LINES } from "../../../sim/run/ledger.ts";
import { num } from "../../state/format.ts";
import type { HideableId } from "../../state/predict.ts";
import { t } from "../../texts/catalogue.ts";
import { type EnergyScale, energyText } from "./energy-units.ts";
import { askedFlows } from "./kinds.ts";
import { askedEnergies, LINES } from "./ledger-flows.ts";
import { isShown, shownPower } from "./shown.ts";

/** A line of the table: id of what is told, its name, its number as the sheet shows it. */
export type Told = readonly [id: string, name: string, value: string];

/** A power with its sign, as the sheet shows its size. */
function signed(flows: Flows, id: FlowId, asked: ReadonlySet<FlowId>): string {
  const shown = shownPower(flows[id], asked.has(id));
  return flows[id] < 0 && isShown(flows[id]) && !asked.has(id) ? `\u2212${shown}` : shown;
}

/** Every flow of an instant, kW, and what goes through each bar. */
export function toldPowers(flows: Flows, hides: ReadonlySet<HideableId>): Told[] {
  const asked = askedFlows(hides);
  const rows = FLOWS.map((id): Told => [`flow:${id}`, t.roadFlow.flows[id], signed(flows, id, asked)]);
  const nodes = FLOW_NODES.map(({ id, in: into, out }): Told => {
    const all = [...into, ...out];
    const through = all.reduce((sum, one) => sum + Math.abs(flows[one]), 0) / 2;
    const value = all.some((one) => asked.has(one)) ? t.roadFlow.asked : num(through / 1000, 1);
    return [`node:${id}`, `${t.roadFlow.nodes[id]}, ${t.roadFlow.table.through}`, value];
  });
  return [...rows, ...nodes];
}

/** Every line of the ledger. @param ledger J, in the order of LEDGER_LINES */
export function toldEnergies(
  ledger: readonly number[],
  units: EnergyScale,
  hides: ReadonlySet<HideableId>,
): Told[] {
  const asked = new Set([...askedEnergies(hides)].flatMap((id) => LINES[id] ?? []));
  return LEDGER_LINES.map(({ id }, index): Told => {
    const value = asked.has(id) ? t.roadFlow.asked : energyText(units, at(ledger, index));
    return [`ledger:${id}`, t.roadFlow.ledger[id], value];
  });
}

/** What is not nothing, in one sentence. */
export function toldWords(rows: readonly Told[]): string {
  return rows
    .filter(([id, , value]) => !id.startsWith("node:") && value !== t.roadFlow.little && /[1-9?]/.test(value))
    .map(([, name, value]) => t.roadFlow.between(name, value))
    .join("; ");
}
