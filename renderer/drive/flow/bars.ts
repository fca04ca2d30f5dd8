import type { FlowId } from "../../../sim/run/flows.ts";
import type { BarSpec } from "./balance.ts";

/** The bars with their sides as drawn, from the engine to the road. */
export const BARS = [
  { id: "engine", left: ["fuel"], right: ["engine"], free: ["engineLoss"], turns: null },
  {
    id: "gearSet",
    left: ["engine"],
    right: ["sun", "ring"],
    free: ["gearSetSpin", "meshLoss"],
    turns: "sun",
  },
  { id: "sunMachine", left: ["sun"], right: ["sunElectric"], free: ["sunLoss"], turns: null },
  { id: "battery", left: ["source"], right: ["battery"], free: ["batteryLoss"], turns: null },
  {
    id: "dcLink",
    left: ["battery", "sunElectric"],
    right: ["outputElectric"],
    free: ["auxiliary"],
    turns: "battery",
  },
  {
    id: "outputMachine",
    left: ["outputElectric"],
    right: ["outputShaft"],
    free: ["outputLoss"],
    turns: null,
  },
  {
    id: "ring",
    left: ["outputShaft", "ring"],
    right: ["wheels"],
    free: ["ringSpin", "gearsLoss"],
    turns: "outputShaft",
  },
  {
    id: "wheels",
    left: ["wheels"],
    right: [],
    free: ["speedingUp", "climbing", "air", "rolling", "brake"],
    turns: null,
    road: true,
  },
] as const satisfies readonly BarSpec<FlowId>[];

/** Name of a bar. */
export type BarId = (typeof BARS)[number]["id"];
