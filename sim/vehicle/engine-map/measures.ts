import {
  kwhToJoules,
  newtonMetresToPoundFeet,
  percentToShare,
  poundFeetToNewtonMetres,
  radPerSToRpm,
  rpmToRadPerS,
  shareToPercent,
} from "../../../shared/units.ts";

/** What a table of an engine map gives: the two axes, and the figure at each of their points. */
export type MapRole = "speed" | "torque" | "figure";

/** All of them. */
export const MAP_ROLES: readonly MapRole[] = ["speed", "torque", "figure"];

/** Each as messages call it. */
export const ROLE_NAMES: Readonly<Record<MapRole, string>> = {
  speed: "speed",
  torque: "torque",
  figure: "fuel flow or efficiency",
};

/** What kind of figure a map holds. */
export type FigureKind = "flow" | "specific" | "efficiency" | "power";

interface Written {
  /** How it is shown and written back: `g/kWh`. */
  readonly id: string;
  /** Further accepted spellings, lower case, blanks for underscores. */
  readonly spellings: readonly string[];
}

/** A unit of speed (SI: rad/s) or torque (SI: N·m). */
export interface AxisUnit extends Written {
  readonly toSi: (value: number) => number;
  readonly fromSi: (value: number) => number;
}

/**
 * A unit of the figure. Both ways need the shaft power at the point, W, and the fuel's lower heating value, J/kg.
 */
export interface FigureUnit extends Written {
  readonly kind: FigureKind;
  /** fuel power, W */
  readonly toFuelPower: (value: number, shaftPower: number, lowerHeat: number) => number;
  readonly fromFuelPower: (fuelPower: number, shaftPower: number, lowerHeat: number) => number;
}

const same = (value: number): number => value;

/** Units of speed, the usual first. */
export const SPEED_UNITS: readonly AxisUnit[] = [
  {
    id: "rev/min",
    spellings: ["rpm", "1/min", "r/min", "min-1", "min^-1", "min⁻¹", "revs per minute"],
    toSi: rpmToRadPerS,
    fromSi: radPerSToRpm,
  },
  { id: "rad/s", spellings: ["radps", "rad per s", "rad s-1", "rad s"], toSi: same, fromSi: same },
];

/** Units of torque, the usual first. */
export const TORQUE_UNITS: readonly AxisUnit[] = [
  { id: "N·m", spellings: ["nm", "n m", "n*m", "n.m", "n-m", "newton metres"], toSi: same, fromSi: same },
  {
    id: "lbf·ft",
    spellings: ["lbf ft", "lb-ft", "lb ft", "lbft", "ft-lb", "ft lb", "ft-lbf", "ft lbf"],
    toSi: poundFeetToNewtonMetres,
    fromSi: newtonMetresToPoundFeet,
  },
];

const kilograms = (grams: number): number => grams / 1000;
const grams = (kg: number): number => kg * 1000;

/** g/kWh as kg of fuel for each joule at the shaft. */
const specific = (gramsPerKwh: number): number => kilograms(gramsPerKwh) / kwhToJoules(1);

/**
 * Fuel power of each: flow × heating value; specific consumption × shaft power × heating value; shaft power over
 * efficiency. So an efficiency is 1 / (specific consumption × heating value) = 3.6e9 / (g/kWh × J/kg).
 */
export const FIGURE_UNITS: readonly FigureUnit[] = [
  {
    id: "g/s",
    kind: "flow",
    spellings: ["g s", "g per s", "gps", "g/sec", "g s-1"],
    toFuelPower: (flow, _, heat) => kilograms(flow) * heat,
    fromFuelPower: (fuel, _, heat) => grams(fuel / heat),
  },
  {
    id: "kg/h",
    kind: "flow",
    spellings: ["kg h", "kg per h", "kg/hr", "kg h-1"],
    toFuelPower: (flow, _, heat) => (flow / 3600) * heat,
    fromFuelPower: (fuel, _, heat) => (fuel / heat) * 3600,
  },
  {
    id: "g/kWh",
    kind: "specific",
    spellings: ["g/kwh", "g/kw h", "g/kw-h", "g/kw·h", "g/(kw·h)", "g kwh", "g per kwh", "gpkwh", "g kwh-1"],
    toFuelPower: (consumption, power, heat) => specific(consumption) * power * heat,
    fromFuelPower: (fuel, power, heat) => fuel / heat / power / specific(1),
  },
  {
    id: "%",
    kind: "efficiency",
    spellings: ["percent", "per cent", "pct"],
    toFuelPower: (percent, power) => power / percentToShare(percent),
    fromFuelPower: (fuel, power) => shareToPercent(power / fuel),
  },
  {
    id: "share",
    kind: "efficiency",
    spellings: ["1", "-", "fraction"],
    toFuelPower: (efficiency, power) => power / efficiency,
    fromFuelPower: (fuel, power) => power / fuel,
  },
  {
    id: "kW",
    kind: "power",
    spellings: ["kw", "kilowatts"],
    toFuelPower: (power) => power * 1000,
    fromFuelPower: (fuel) => fuel / 1000,
  },
  { id: "W", kind: "power", spellings: ["w", "watts"], toFuelPower: same, fromFuelPower: same },
];

/** Whether a figure tells nothing where the shaft gives no power: there is no fuel in 0 % or in any g/kWh of nothing. */
export const needsPower = ({ kind }: FigureUnit): boolean => kind === "specific" || kind === "efficiency";

/** All units of a role, as they are chosen from. */
export const unitsOfRole = (role: MapRole): readonly Written[] =>
  role === "figure" ? FIGURE_UNITS : role === "speed" ? SPEED_UNITS : TORQUE_UNITS;

/** The units of a role as a text for messages: `rev/min or rad/s`. */
export function unitWords(role: MapRole): string {
  const ids = unitsOfRole(role).map(({ id }) => id);
  return `${ids.slice(0, -1).join(", ")} or ${ids.slice(-1).join("")}`;
}
