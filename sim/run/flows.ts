import { at } from "../../shared/at.ts";
import type { Prepared } from "../drivetrain/prepared.ts";
import type { PlantState } from "../drivetrain/state.ts";

/**
 * Powers of one instant, W, along the paths from fuel to road. Each is positive the way it runs when the engine drives
 * the road, the sun machine generates, the battery gives and the output machine drives; losses are positive as losses,
 * stores as they fill. Each from its own formula, at the mean speeds of the row's last step, so that every node adds up:
 *
 * | node | in | out |
 * |---|---|---|
 * | engine | fuel | engineLoss, engine |
 * | gear set | engine | sun, ring, meshLoss, gearSetSpin |
 * | sun machine | sun | sunLoss, sunElectric |
 * | battery | source | batteryLoss, battery |
 * | DC link | sunElectric, battery | auxiliary, outputElectric |
 * | output machine | outputElectric | outputLoss, outputShaft |
 * | ring | ring, outputShaft | gearsLoss, ringSpin, wheels |
 * | wheels | wheels | air, rolling, climbing, brake, speedingUp |
 */
export const FLOWS = [
  "fuel",
  "engineLoss",
  "engine",
  "gearSetSpin",
  "meshLoss",
  "sun",
  "sunLoss",
  "sunElectric",
  "source",
  "batteryLoss",
  "battery",
  "auxiliary",
  "outputElectric",
  "outputLoss",
  "outputShaft",
  "ring",
  "gearsLoss",
  "ringSpin",
  "wheels",
  "air",
  "rolling",
  "climbing",
  "brake",
  "speedingUp",
] as const;

/** Name of a flow. */
export type FlowId = (typeof FLOWS)[number];

/** All flows of one instant, W. */
export type Flows = Readonly<Record<FlowId, number>>;

/** A node of the flow sheet: what goes in and what comes out (each may run backward). */
export interface FlowNode {
  readonly id:
    | "engine"
    | "gearSet"
    | "sunMachine"
    | "battery"
    | "dcLink"
    | "outputMachine"
    | "ring"
    | "wheels";
  readonly in: readonly FlowId[];
  readonly out: readonly FlowId[];
}

/** The nodes, from fuel to road. */
export const FLOW_NODES: readonly FlowNode[] = [
  { id: "engine", in: ["fuel"], out: ["engineLoss", "engine"] },
  { id: "gearSet", in: ["engine"], out: ["sun", "ring", "meshLoss", "gearSetSpin"] },
  { id: "sunMachine", in: ["sun"], out: ["sunLoss", "sunElectric"] },
  { id: "battery", in: ["source"], out: ["batteryLoss", "battery"] },
  { id: "dcLink", in: ["sunElectric", "battery"], out: ["auxiliary", "outputElectric"] },
  { id: "outputMachine", in: ["outputElectric"], out: ["outputLoss", "outputShaft"] },
  { id: "ring", in: ["ring", "outputShaft"], out: ["gearsLoss", "ringSpin", "wheels"] },
  { id: "wheels", in: ["wheels"], out: ["air", "rolling", "climbing", "brake", "speedingUp"] },
];

/** Writes the flows of the step just settled into a row from a place on, in the order of FLOWS. */
export function fillFlows(row: Float32Array | Float64Array, from: number, p: Prepared, s: PlantState): void {
  const wc = s.carrierMean;
  const wr = s.ringMean;
  const v = wr * p.metresPerRing;
  const sunChange = p.k1 * s.carrierChange - p.k * s.ringChange;
  const planetChange = p.planetRowC * s.carrierChange + p.planetRowR * s.ringChange;
  const planetMean = p.planetRowC * wc + p.planetRowR * wr;
  const planet = p.planetInertia * planetChange;
  const i = s.current;
  const slowed = s.brakeForce > 0 ? s.brakeForce / (s.brakeForce + s.rollingForce) : 0;
  const stopped = -s.ringReaction * wr;
  const brake = s.ringHeld === 1 ? stopped : stopped * slowed;
  row[from] = s.fuelPower + s.startFuelPower;
  row[from + 1] = s.fuelPower + s.startFuelPower - s.indicatedTorque * wc - s.carrierReaction * wc;
  row[from + 2] = s.engineTorque * wc;
  row[from + 3] =
    p.carrierInertia * s.carrierChange * wc + p.sunInertia * sunChange * s.sunMean + planet * planetMean;
  row[from + 4] = s.meshLossTorque * p.k * (wc - wr);
  row[from + 5] = -s.sunTorque * s.sunMean;
  row[from + 6] = s.sunLoss;
  row[from + 7] = -s.sunElectric;
  row[from + 8] = (s.voltage + s.ohmic * i + s.rcMid) * i;
  row[from + 9] = s.ohmic * i * i + s.rcMid * i;
  row[from + 10] = s.batteryPower;
  row[from + 11] = s.auxiliaryPower;
  row[from + 12] = s.outputElectric;
  row[from + 13] = s.outputLoss;
  row[from + 14] = s.outputTorque * s.outputMean;
  row[from + 15] = -(p.k * s.meshTorque + p.planetRowR * planet) * wr;
  row[from + 16] = (s.reductionLossTorque + s.driveLossTorque) * wr;
  row[from + 17] = p.ringSideInertia * s.ringChange * wr;
  row[from + 18] = s.driveTorque * wr;
  row[from + 19] = s.airForce * v;
  row[from + 20] = stopped - brake;
  row[from + 21] = s.gradeForce * v;
  row[from + 22] = brake;
  row[from + 23] = p.wheelSideInertia * s.ringChange * wr;
}

/** What a node takes in less what it gives out, W: zero but for rounding. */
export const nodeRest = (flows: Flows, node: FlowNode): number =>
  node.in.reduce((sum, id) => sum + flows[id], 0) - node.out.reduce((sum, id) => sum + flows[id], 0);

/** The flows of one row of a log. */
export function flowsAt(log: { readonly flows: Float32Array }, row: number): Flows {
  const found: Partial<Record<FlowId, number>> = {};
  FLOWS.forEach((id, index) => {
    found[id] = at(log.flows, row * FLOWS.length + index);
  });
  return found as Flows;
}
