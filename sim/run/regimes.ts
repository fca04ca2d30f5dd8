import { at } from "../../shared/at.ts";
import type { Prepared } from "../drivetrain/prepared.ts";
import type { LogReader } from "./log.ts";

/** What a regime is decided from: one row's speeds (rad/s, m/s), torques (N·m), powers (W) and forces (N). */
export interface RegimeRow {
  speed: number;
  grade: number;
  /** 0 off, 1 cranking, 2 running, 3 stopping */
  engineMode: number;
  engineSpeed: number;
  engineTorque: number;
  fuelPower: number;
  sunSpeed: number;
  sunElectric: number;
  ringSpeed: number;
  outputShaft: number;
  outputElectric: number;
  batteryPower: number;
  auxiliary: number;
  wheelForceAsk: number;
  brakeForce: number;
  /** share of a braking force that the driven axle may carry */
  axleShare: number;
}

/** Bands within which a regime's condition counts as met. */
export const BANDS = {
  /** m/s: slower than this is at rest */
  rest: 0.03,
  /** rise over run: steeper than this is a hill */
  hill: 0.005,
  /** W: less than this is no power */
  power: 150,
  /** N at the wheels: less than this is no braking */
  force: 20,
  /** rad/s: the sun this slow is at rest */
  sunRest: 15,
  /** share: ring and carrier this close turn as one */
  direct: 0.01,
  /** W and share of engine power: more from or into the battery than both is assist or charging */
  battery: 2000,
  batteryShare: 0.25,
  /** share of the braking: more than the driven axle's rest by this much is blended */
  blend: 0.05,
} as const;

/** A regime's family decides its lane on the time axis. */
export type RegimeFamily = "engine" | "electric" | "braking" | "rest";

interface Rule {
  readonly id: string;
  readonly title: string;
  readonly family: RegimeFamily;
  /** R-number in DEVELOPERS.md and in the tests' titles. */
  readonly rule: string;
  readonly when: (row: RegimeRow) => boolean;
}

const atRest = (r: RegimeRow): boolean => Math.abs(r.speed) < BANDS.rest;
const running = (r: RegimeRow): boolean => r.engineMode === 2;
const backward = (r: RegimeRow): boolean => r.speed <= -BANDS.rest;
const braking = (r: RegimeRow): boolean =>
  r.wheelForceAsk * r.speed < 0 &&
  Math.abs(r.wheelForceAsk) > BANDS.force &&
  (r.brakeForce > 0 || r.outputShaft < 0 || (running(r) && r.engineTorque < 0));
const overrun = (r: RegimeRow): boolean => running(r) && r.fuelPower <= 0;
const frictionShare = (r: RegimeRow): number => r.brakeForce / Math.max(1, Math.abs(r.wheelForceAsk));
const generating = (r: RegimeRow): boolean => r.outputElectric < -BANDS.power;
/** The output machine drives: by its power, or by the force asked where speed and power are still small. */
const driving = (r: RegimeRow): boolean =>
  r.outputShaft > BANDS.power ||
  (r.outputShaft > 0 && r.wheelForceAsk * r.speed > 0 && Math.abs(r.wheelForceAsk) > BANDS.force);
const enginePower = (r: RegimeRow): number => Math.max(0, r.engineTorque * r.engineSpeed);
const batteryBand = (r: RegimeRow): number => Math.max(BANDS.battery, BANDS.batteryShare * enginePower(r));

/**
 * The ordered decision list: the first rule that holds names the regime, the last always holds, so every row has
 * exactly one.
 */
export const REGIMES: readonly Rule[] = [
  { rule: "R1", id: "cranking", title: "Cranking", family: "engine", when: (r) => r.engineMode === 1 },
  { rule: "R2", id: "stopping", title: "Stopping", family: "engine", when: (r) => r.engineMode === 3 },
  {
    rule: "R3",
    id: "charging-at-rest",
    title: "Charging at rest",
    family: "rest",
    when: (r) => atRest(r) && running(r) && r.sunElectric < -BANDS.power,
  },
  { rule: "R4", id: "idling", title: "Idling", family: "rest", when: (r) => atRest(r) && running(r) },
  {
    rule: "R5",
    id: "hill-hold",
    title: "Hill hold",
    family: "rest",
    when: (r) => atRest(r) && Math.abs(r.grade) > BANDS.hill && r.brakeForce > BANDS.force,
  },
  { rule: "R6", id: "at-rest", title: "At rest", family: "rest", when: atRest },
  {
    rule: "R7",
    id: "engine-braking",
    title: "Engine braking",
    family: "braking",
    when: (r) => overrun(r) && (braking(r) || r.engineTorque < 0),
  },
  {
    rule: "R8",
    id: "braking-engine-on",
    title: "Braking, engine on",
    family: "braking",
    when: (r) => braking(r) && running(r),
  },
  {
    rule: "R9",
    id: "regenerative-braking",
    title: "Regenerative braking",
    family: "braking",
    when: (r) => braking(r) && r.outputShaft < 0 && frictionShare(r) <= 1 - r.axleShare + BANDS.blend,
  },
  {
    rule: "R10",
    id: "blended-braking",
    title: "Blended braking",
    family: "braking",
    when: (r) => braking(r) && generating(r),
  },
  { rule: "R11", id: "friction-braking", title: "Friction braking", family: "braking", when: braking },
  {
    rule: "R12",
    id: "reverse-engine",
    title: "Reverse with engine",
    family: "engine",
    when: (r) => backward(r) && running(r),
  },
  {
    rule: "R13",
    id: "electric-reverse",
    title: "Electric reverse",
    family: "electric",
    when: (r) => backward(r) && driving(r),
  },
  {
    rule: "R14",
    id: "electric-drive",
    title: "Electric drive",
    family: "electric",
    when: (r) => !running(r) && !backward(r) && (driving(r) || r.sunElectric > 10 * BANDS.power),
  },
  {
    rule: "R15",
    id: "assist",
    title: "Assist",
    family: "engine",
    when: (r) => running(r) && r.batteryPower - r.auxiliary > batteryBand(r),
  },
  {
    rule: "R16",
    id: "charging-driving",
    title: "Charging while driving",
    family: "engine",
    when: (r) => running(r) && r.batteryPower < -batteryBand(r),
  },
  {
    rule: "R17",
    id: "mechanical-point",
    title: "Mechanical point",
    family: "engine",
    when: (r) => running(r) && Math.abs(r.sunSpeed) < BANDS.sunRest,
  },
  {
    rule: "R18",
    id: "circulating-power",
    title: "Circulating power",
    family: "engine",
    when: (r) => running(r) && r.sunSpeed < 0 && r.sunElectric > 0 && r.outputElectric < 0,
  },
  {
    rule: "R19",
    id: "direct",
    title: "Direct",
    family: "engine",
    when: (r) => running(r) && Math.abs(r.ringSpeed - r.engineSpeed) < BANDS.direct * r.engineSpeed,
  },
  {
    rule: "R20",
    id: "split-below-direct",
    title: "Split below direct",
    family: "engine",
    when: (r) => running(r) && r.ringSpeed < r.engineSpeed,
  },
  { rule: "R21", id: "split-above-direct", title: "Split above direct", family: "engine", when: running },
  { rule: "R22", id: "coasting", title: "Coasting", family: "electric", when: () => true },
];

/** Index in REGIMES of a row's regime. */
export function regimeOf(row: RegimeRow): number {
  const found = REGIMES.findIndex((rule) => rule.when(row));
  return found < 0 ? REGIMES.length - 1 : found;
}

const emptyRow = (axleShare: number): RegimeRow => ({
  speed: 0,
  grade: 0,
  engineMode: 0,
  engineSpeed: 0,
  engineTorque: 0,
  fuelPower: 0,
  sunSpeed: 0,
  sunElectric: 0,
  ringSpeed: 0,
  outputShaft: 0,
  outputElectric: 0,
  batteryPower: 0,
  auxiliary: 0,
  wheelForceAsk: 0,
  brakeForce: 0,
  axleShare,
});

/** Fills a row from the log. The same object may be used again. */
export function readRow(log: LogReader, index: number, row: RegimeRow): void {
  row.speed = at(log.view("speed"), index);
  row.grade = at(log.view("grade"), index);
  row.engineMode = at(log.engineMode, index);
  row.engineSpeed = at(log.view("engineSpeed"), index);
  row.engineTorque = at(log.view("engineTorque"), index);
  row.fuelPower = at(log.view("fuelPower"), index);
  row.sunSpeed = at(log.view("sunMachineSpeed"), index);
  row.sunElectric = at(log.view("sunMachineElectric"), index);
  row.ringSpeed = at(log.view("ringSpeed"), index);
  row.outputShaft = at(log.view("outputMachineTorque"), index) * at(log.view("outputMachineSpeed"), index);
  row.outputElectric = at(log.view("outputMachineElectric"), index);
  row.batteryPower = at(log.view("batteryPower"), index);
  row.auxiliary = at(log.view("auxiliary"), index);
  row.wheelForceAsk = at(log.view("wheelForceAsk"), index);
  row.brakeForce = at(log.view("frictionBrake"), index);
}

/** The regime of one row of a log: an index into REGIMES. @param axleShare `axleBrakingShare` of the prepared numbers */
export function regimeAt(log: LogReader, index: number, axleShare: number): number {
  const row = emptyRow(axleShare);
  readRow(log, index, row);
  return regimeOf(row);
}

/** The regime of every row of a log: indices into REGIMES. */
export function regimes(log: LogReader, p: Prepared): Uint8Array {
  const found = new Uint8Array(log.rows);
  const row = emptyRow(p.axleBrakingShare);
  for (let i = 0; i < log.rows; i += 1) {
    readRow(log, i, row);
    found[i] = regimeOf(row);
  }
  return found;
}
