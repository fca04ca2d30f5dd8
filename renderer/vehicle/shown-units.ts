import {
  celsiusToKelvin,
  kelvinToCelsius,
  kmhToMps,
  mpsToKmh,
  radPerSToRpm,
  rpmToRadPerS,
} from "../../shared/units.ts";
import type { QuantityMeta } from "../../sim/parameters/quantity.ts";

/** The unit a parameter is shown and typed in, with the way there and back. */
export interface ShownUnit {
  readonly name: string;
  readonly toShown: (value: number) => number;
  readonly fromShown: (value: number) => number;
}

const times = (name: string, factor: number): ShownUnit => ({
  name,
  toShown: (value) => value * factor,
  fromShown: (value) => value / factor,
});

const as = (name: string): ShownUnit => times(name, 1);

const BY_UNIT: Readonly<Record<string, ShownUnit>> = {
  "rad/s": { name: "rev/min", toShown: radPerSToRpm, fromShown: rpmToRadPerS },
  "m/s": { name: "km/h", toShown: mpsToKmh, fromShown: kmhToMps },
  K: { name: "°C", toShown: kelvinToCelsius, fromShown: celsiusToKelvin },
  m3: times("L", 1000),
  "N m": as("N·m"),
  "N m s": as("N·m·s"),
  "N m s2": as("N·m·s²"),
  "kg m2": as("kg·m²"),
  m2: as("m²"),
  "kg/m3": as("kg/m³"),
  "J/kg": times("MJ/kg", 1e-6),
  Ohm: as("Ω"),
  Ah: as("A·h"),
  "rad/s2": as("rad/s²"),
  "N s/m": as("N·s/m"),
  "N s2/m2": as("N·s²/m²"),
  "W/(N m)2": as("W/(N·m)²"),
  "W s/rad": as("W·s/rad"),
  "W s3/rad3": as("W·s³/rad³"),
  "1": as(""),
};

/** Paths whose unit depends on what they are, not only on their SI unit. */
const BY_PATH: readonly (readonly [RegExp, ShownUnit])[] = [
  [/toothModule$|wheelRadius$/, times("mm", 1000)],
  [/[sS]oc|Share$|[eE]fficiency$|socLow|socHigh|thermostatBand/, times("%", 100)],
  [/peakPower$|startPower$|stopPower$|leastEnginePower$|thermostatPower$|crankReserve$/, times("kW", 0.001)],
  [/startFuel$/, times("kJ", 0.001)],
  [/planetMass$/, times("g", 1000)],
];

/** How a parameter is shown. */
export function shownUnit(path: string, meta: QuantityMeta): ShownUnit {
  if (path === "body.drivenAxleLoadShare" || meta.unit === "1") {
    const special = BY_PATH.find(([pattern]) => pattern.test(path));
    return special ? special[1] : as("");
  }
  const special = BY_PATH.find(([pattern]) => pattern.test(path));
  return special ? special[1] : (BY_UNIT[meta.unit] ?? as(meta.unit));
}

/** A shown number: six digits, without zeros that say nothing. */
export const digits = (value: number): string => String(Number(value.toPrecision(6)));
