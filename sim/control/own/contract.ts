import { mpsToKmh, radPerSToRpm } from "../../../shared/units.ts";
import type { Prepared } from "../../drivetrain/prepared.ts";
import type { StrategyInput } from "../strategy.ts";

/** One thing that an own strategy is told, with its unit in the name. */
export interface OwnInput<Source> {
  readonly name: string;
  /** One phrase for the list of inputs. */
  readonly meaning: string;
  readonly kind: "number" | "flag";
  readonly read: (source: Source) => number;
}

const kilo = (value: number): number => value / 1000;

/** What stands in `now`, in the order of the list shown to a person. A flag is true or false. */
export const OWN_INPUTS: readonly OwnInput<StrategyInput>[] = [
  { name: "time_s", meaning: "time since the start", kind: "number", read: (n) => n.time },
  {
    name: "speed_kmh",
    meaning: "road speed, negative backward",
    kind: "number",
    read: (n) => mpsToKmh(n.speed),
  },
  {
    name: "wheelPower_kW",
    meaning: "power asked at the wheels, negative when braking",
    kind: "number",
    read: (n) => kilo(n.wheelPower),
  },
  {
    name: "demand_kW",
    meaning: "power asked of engine and battery together, never negative",
    kind: "number",
    read: (n) => kilo(n.demand),
  },
  { name: "soc", meaning: "state of charge, 0 to 1", kind: "number", read: (n) => n.soc },
  { name: "engineOn", meaning: "true while the engine runs", kind: "flag", read: (n) => n.engineOn },
  {
    name: "engineTime_s",
    meaning: "time since the engine was last started or stopped",
    kind: "number",
    read: (n) => n.engineTime,
  },
  {
    name: "engineSpeed_rpm",
    meaning: "engine speed",
    kind: "number",
    read: (n) => radPerSToRpm(n.engineSpeed),
  },
  {
    name: "coolant_K",
    meaning: "coolant temperature, kelvin",
    kind: "number",
    read: (n) => n.coolant,
  },
  {
    name: "batteryOut_kW",
    meaning: "power that the battery can give now",
    kind: "number",
    read: (n) => kilo(n.batteryOut),
  },
  {
    name: "batteryIn_kW",
    meaning: "power that the battery can take now",
    kind: "number",
    read: (n) => kilo(n.batteryIn),
  },
];

/** What stands in `now.vehicle`: it stays the same through a run. */
export const OWN_VEHICLE: readonly OwnInput<Prepared>[] = [
  {
    name: "socTarget",
    meaning: "charge to be kept, 0 to 1",
    kind: "number",
    read: (p) => p.socTarget,
  },
  {
    name: "socLow",
    meaning: "charge below which the engine is started in any case",
    kind: "number",
    read: (p) => p.socFloor,
  },
  {
    name: "socHigh",
    meaning: "charge above which nothing is stored",
    kind: "number",
    read: (p) => p.socCeiling,
  },
  {
    name: "enginePower_kW",
    meaning: "greatest engine power",
    kind: "number",
    read: (p) => kilo(p.enginePower),
  },
  {
    name: "engineIdle_rpm",
    meaning: "idle speed",
    kind: "number",
    read: (p) => radPerSToRpm(p.idleSpeed),
  },
  {
    name: "engineTop_rpm",
    meaning: "greatest engine speed",
    kind: "number",
    read: (p) => radPerSToRpm(p.engineTop),
  },
  {
    name: "fullCharge_As",
    meaning: "charge of the full battery, ampere seconds",
    kind: "number",
    read: (p) => p.charge,
  },
  { name: "mass_kg", meaning: "mass on the road", kind: "number", read: (p) => p.mass },
];

/** What `decide` answers. */
export const OWN_ANSWER = [
  { name: "engineOn", meaning: "true to run the engine, false to stop it", needed: "always" },
  {
    name: "enginePower_kW",
    meaning: "power asked of the engine; below zero for engine braking",
    needed: "with the engine on",
  },
  {
    name: "engineSpeed_rpm",
    meaning: "engine speed; left out, the best-efficiency line gives it",
    needed: "never",
  },
] as const;

/** How far an own strategy may go. */
export const OWN_LIMITS = {
  /**
   * loops and calls in one decision: over a hundred times what the worked examples need (some 700), and few enough that
   * an endless loop ends within half a second
   */
  steps: 100_000,
  /** elements and characters that the built-in functions go through in one decision, all together */
  work: 1_000_000,
  /** bytes of memory, of all strategies of one sandbox together */
  memory: 32 * 2 ** 20,
  /** bytes of stack: some hundred calls deep */
  stack: 64 * 2 ** 10,
  /** elements of a list and characters of a text that the built-in functions work on */
  length: 100_000,
  text: 10_000,
  /** characters of the strategy itself */
  source: 200_000,
} as const;
