import { at } from "../../shared/at.ts";
import { openCircuit } from "../drivetrain/battery.ts";
import { frictionTorque, fullLoadTorque, indicatedEfficiency } from "../drivetrain/engine.ts";
import type { Prepared } from "../drivetrain/prepared.ts";
import { lookUp } from "../drivetrain/table.ts";
import type { Vehicle } from "../parameters/schema.ts";
import { CHANNELS, type ChannelId } from "./channels.ts";
import { FLOWS, type Flows, flowsAt } from "./flows.ts";
import { LEDGER_LINES } from "./ledger.ts";
import type { LogReader } from "./log.ts";

/** One number a body of the drivetrain. */
export interface BodyValues {
  readonly carrier: number;
  readonly ring: number;
  readonly sun: number;
  readonly output: number;
  readonly planet: number;
}

/** What lies behind a row's numbers and follows from them: the last step's accelerations, mean speeds, mesh, cells. */
export interface RowDetail {
  /** every channel of the row */
  readonly at: Readonly<Record<ChannelId, number>>;
  readonly flows: Flows;
  /** rad/s² */
  readonly rate: BodyValues;
  /** mean speeds of the step, rad/s: all work is torque times these */
  readonly mean: BodyValues;
  /** m/s */
  readonly roadMean: number;
  /** N·m: mesh torque of the gear set and its loss torque */
  readonly mesh: number;
  readonly meshLoss: number;
  /** V over the RC pair and open circuit, both at the middle of the step; Ω ohmic, as the current runs */
  readonly polarisation: number;
  readonly openCircuit: number;
  readonly resistance: number;
  /** the warm engine's friction, N·m, load and indicated efficiency at the step's mean speed */
  readonly friction: number;
  readonly load: number;
  readonly indicatedEfficiency: number;
}

const POLARISATION = LEDGER_LINES.findIndex(({ id }) => id === "polarisation_change");

const WHEELS = FLOWS.indexOf("wheels");
const BRAKE = FLOWS.indexOf("brake");

/** Slower than this, m/s, no force can be told from a power. */
const SLOWEST = 1e-4;

/** All channels of one row. */
export const channelsAt = (log: LogReader, row: number): Record<ChannelId, number> =>
  Object.fromEntries(CHANNELS.map(({ id }) => [id, at(log.view(id), row)])) as Record<ChannelId, number>;

/**
 * Accelerations of the row's last step, rad/s²: a body's torque less what it hands on, over its inertia.
 * The ring's follows by ωs = (1 + k) ωc − k ωr.
 */
function ratesOf(p: Prepared, v: Readonly<Record<ChannelId, number>>): BodyValues {
  const carrier = (v.engineTorque - v.carrierTorque) / p.carrierInertia;
  const sun = (v.sunMachineTorque - v.sunTorque) / p.sunInertia;
  const ring = (p.k1 * carrier - sun) / p.k;
  return {
    carrier,
    sun,
    ring,
    output: p.reduction * ring,
    planet: p.planetRowC * carrier + p.planetRowR * ring,
  };
}

/** Reads the force at the tyres, brakes included, N, row by row: power over the step's mean speed; 0 at rest. */
export function wheelForceReader(p: Prepared, log: LogReader): (row: number) => number {
  const engine = log.view("engineTorque");
  const carrier = log.view("carrierTorque");
  const machine = log.view("sunMachineTorque");
  const sun = log.view("sunTorque");
  const ring = log.view("ringSpeed");
  const { flows } = log;
  return (row) => {
    const place = row * FLOWS.length;
    const carrierRate = (at(engine, row) - at(carrier, row)) / p.carrierInertia;
    const sunRate = (at(machine, row) - at(sun, row)) / p.sunInertia;
    const rate = (p.k1 * carrierRate - sunRate) / p.k;
    const speed = (at(ring, row) - 0.5 * p.h * rate) * p.metresPerRing;
    if (Math.abs(speed) < SLOWEST) return 0;
    return (at(flows, place + WHEELS) - at(flows, place + BRAKE)) / speed;
  };
}

/** Mean voltage of the RC pair over the step; its sign is the one that the row's battery loss tells. */
function polarisationOf(p: Prepared, log: LogReader, row: number, current: number, loss: number): number {
  if (p.rcPerCapacitance === 0) return 0;
  // ½ C1 U²: a run starts with the pair at rest.
  const size = Math.sqrt(2 * p.rcPerCapacitance * Math.max(0, at(log.ledgerLine(POLARISATION), row)));
  const middle = (end: number): number =>
    (end / p.rcInverse - p.h * current * p.rcPerCapacitance) / (1 - p.rcFactor);
  const mean = (end: number): number => 0.5 * (middle(end) + end);
  const r = current >= 0 ? p.resistanceDischarge : p.resistanceCharge;
  const off = (u: number): number => Math.abs((r * current + u) * current - loss);
  const [plus, minus] = [mean(size), mean(-size)];
  return off(plus) <= off(minus) ? plus : minus;
}

/**
 * What lies behind one row of a log.
 * @param p prepared numbers of the run's vehicle and options
 * @param row whole number below the log's rows
 */
export function rowDetail(vehicle: Vehicle, p: Prepared, log: LogReader, row: number): RowDetail {
  const v = channelsAt(log, row);
  const flows = flowsAt(log, row);
  const rate = ratesOf(p, v);
  const half = (speed: number, change: number): number => speed - 0.5 * p.h * change;
  const carrier = half(v.engineSpeed, rate.carrier);
  const ring = half(v.ringSpeed, rate.ring);
  const mean = {
    carrier,
    ring,
    sun: p.k1 * carrier - p.k * ring,
    output: p.reduction * ring,
    planet: p.planetRowC * carrier + p.planetRowR * ring,
  };
  const roadMean = ring * p.metresPerRing;
  const mesh = (v.ringTorque - p.planetRowR * p.planetInertia * rate.planet) / p.k;
  const i = v.batteryCurrent;
  const load = v.engineTorque / fullLoadTorque(vehicle.engine, carrier);
  return {
    at: v,
    flows,
    rate,
    mean,
    roadMean,
    mesh,
    meshLoss: v.sunTorque - mesh,
    polarisation: polarisationOf(p, log, row, i, flows.batteryLoss),
    openCircuit: lookUp(openCircuit(vehicle.battery), v.soc + (0.5 * p.h * i) / p.charge),
    resistance: i >= 0 ? p.resistanceDischarge : p.resistanceCharge,
    friction: frictionTorque(vehicle.engine, carrier),
    load,
    indicatedEfficiency: indicatedEfficiency(vehicle.engine, carrier, load),
  };
}
