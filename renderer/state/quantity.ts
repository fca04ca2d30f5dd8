import { joulesToKwh, kmhToMps, mphToMps } from "../../shared/units.ts";
import {
  fromShaftUnit,
  kilowatts,
  num,
  roadSpeed,
  roadUnitName,
  shaftSpeed,
  shaftUnitName,
  type Units,
} from "./format.ts";
import type { HideableId } from "./predict.ts";
import type { Now } from "./run.ts";

/** How a quantity that can be asked for is read, shown and typed. */
export interface Quantity {
  /** its value at an instant, SI; a regime by its id */
  readonly of: (now: Now) => number | string;
  /** as shown, with its unit */
  readonly say: (value: number, units: Units) => string;
  readonly unit: (units: Units) => string;
  /** from the unit shown to SI */
  readonly read: (typed: number, units: Units) => number;
}

const power = (of: (now: Now) => number): Quantity => ({
  of,
  say: (value) => `${kilowatts(value)} kW`,
  unit: () => "kW",
  read: (typed) => typed * 1000,
});

const shaft = (of: (now: Now) => number): Quantity => ({
  of,
  say: (value, units) => `${shaftSpeed(units, value)} ${shaftUnitName(units)}`,
  unit: shaftUnitName,
  read: (typed, units) => fromShaftUnit(units, typed),
});

const energy = (of: (now: Now) => number): Quantity => ({
  of,
  say: (value) => `${num(value / 1000, 0)} kJ (${num(joulesToKwh(value), 3)} kWh)`,
  unit: () => "kJ",
  read: (typed) => typed * 1000,
});

/** Every quantity that can be asked for. Electrical powers: positive when the machine uses, or the battery gives. */
export const QUANTITY: Readonly<Record<HideableId, Quantity>> = {
  "road-speed": {
    of: (now) => now.at.speed,
    say: (value, units) => roadSpeed(units, value),
    unit: roadUnitName,
    read: (typed, units) => (units.road === "kmh" ? kmhToMps(typed) : mphToMps(typed)),
  },
  "engine-power": power((now) => now.flows.engine),
  "sun-machine-power": power((now) => -now.flows.sunElectric),
  "output-machine-power": power((now) => now.flows.outputElectric),
  "battery-power": power((now) => now.flows.battery),
  charge: {
    of: (now) => now.at.soc,
    say: (value) => `${num(value * 100, 1)} %`,
    unit: () => "%",
    read: (typed) => typed / 100,
  },
  "sun-speed": shaft((now) => now.speeds.sun),
  "carrier-speed": shaft((now) => now.speeds.carrier),
  "ring-speed": shaft((now) => now.speeds.ring),
  regime: { of: (now) => now.regime, say: () => "", unit: () => "", read: (typed) => typed },
  recovered: energy((now) => now.at.recovered),
  fuel: energy((now) => now.at.fuel),
};
