import type { FlowId } from "../../../sim/run/flows.ts";
import type { HideableId } from "../../state/predict.ts";

/** Kind of power: one pattern each; none for what is of several kinds. */
export type Kind = "mech" | "elec" | "chem" | "heat" | "mixed";

/** Whose power it is: one colour each; steel is everything that turns inside and belongs to no one shaft. */
export type Owner = "carrier" | "sun" | "ring" | "battery" | "fuel" | "loss" | "steel";

/** How a flow is drawn. */
export interface Drawn {
  readonly kind: Kind;
  readonly owner: Owner;
}

const drawn = (kind: Kind, owner: Owner): Drawn => ({ kind, owner });
const LOSS = drawn("heat", "loss");

/** Pattern and colour of every flow. */
export const DRAWN: Readonly<Record<FlowId, Drawn>> = {
  fuel: drawn("chem", "fuel"),
  engineLoss: LOSS,
  engine: drawn("mech", "carrier"),
  gearSetSpin: drawn("mech", "steel"),
  meshLoss: LOSS,
  sun: drawn("mech", "sun"),
  sunLoss: LOSS,
  sunElectric: drawn("elec", "sun"),
  source: drawn("chem", "battery"),
  batteryLoss: LOSS,
  battery: drawn("elec", "battery"),
  auxiliary: LOSS,
  outputElectric: drawn("elec", "ring"),
  outputLoss: LOSS,
  outputShaft: drawn("mech", "ring"),
  ring: drawn("mech", "ring"),
  gearsLoss: LOSS,
  ringSpin: drawn("mech", "steel"),
  wheels: drawn("mech", "ring"),
  air: LOSS,
  rolling: LOSS,
  climbing: drawn("mech", "ring"),
  brake: LOSS,
  speedingUp: drawn("mech", "ring"),
};

/** Flows that would give a hidden quantity away: itself, and what follows from it at a bar with one other unknown. */
const TELLS: Readonly<Partial<Record<HideableId, readonly FlowId[]>>> = {
  "engine-power": ["fuel", "engineLoss", "engine"],
  "sun-machine-power": ["sun", "sunLoss", "sunElectric"],
  "output-machine-power": ["outputElectric", "outputLoss", "outputShaft"],
  "battery-power": ["source", "batteryLoss", "battery"],
  fuel: ["fuel", "engineLoss"],
};

/** The flows that may not be told while some quantities are hidden. */
export function askedFlows(hidden: ReadonlySet<HideableId>): ReadonlySet<FlowId> {
  const asked = new Set<FlowId>();
  for (const id of hidden) for (const flow of TELLS[id] ?? []) asked.add(flow);
  return asked;
}
