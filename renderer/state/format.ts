import { readable } from "../../shared/readable.ts";
import { mpsToKmh, mpsToMph, radPerSToRpm, rpmToRadPerS } from "../../shared/units.ts";

/** Units a person reads shaft and road speeds in. */
export interface Units {
  readonly shaft: "rpm" | "radps";
  readonly road: "kmh" | "mph";
}

/** A number for reading. */
export const num = readable;

/** rad/s in the person's shaft unit, and back. */
export const toShaftUnit = (units: Units, speed: number): number =>
  units.shaft === "rpm" ? radPerSToRpm(speed) : speed;
export const fromShaftUnit = (units: Units, value: number): number =>
  units.shaft === "rpm" ? rpmToRadPerS(value) : value;

/** A shaft speed, rad/s, as text in the person's unit. */
export const shaftSpeed = (units: Units, speed: number): string =>
  num(toShaftUnit(units, speed), units.shaft === "rpm" ? 0 : 1);

export const shaftUnitName = (units: Units): string => (units.shaft === "rpm" ? "rev/min" : "rad/s");
export const roadUnitName = (units: Units): string => (units.road === "kmh" ? "km/h" : "mph");

/** A road speed, m/s, with its unit. */
export const roadSpeed = (units: Units, speed: number): string =>
  `${num(units.road === "kmh" ? mpsToKmh(speed) : mpsToMph(speed), 1)} ${roadUnitName(units)}`;

/** Watts in kW, one decimal. */
export const kilowatts = (watts: number): string => num(watts / 1000, 1);

/** A ratio without needless zeros: 2.5, 2.571. */
export const ratio = (value: number): string => num(value, 3).replace(/\.?0+$/, "");

/** An idle speed, rad/s, in the person's unit; a round number of rev/min, for idle is no exact thing. */
export const idleShown = (units: Units, speed: number): number =>
  units.shaft === "rpm" ? Math.round(radPerSToRpm(speed) / 10) * 10 : speed;
