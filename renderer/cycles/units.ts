import { metresToMiles, mpsToKmh, mpsToMph } from "../../shared/units.ts";
import { num, roadUnitName, type Units } from "../state/format.ts";

/** m in the person's unit of way, with its unit. */
export const distanceText = (units: Units, metres: number): string =>
  units.road === "kmh" ? `${num(metres / 1000, 2)} km` : `${num(metresToMiles(metres), 2)} mi`;

/** m/s in the person's unit, without it. */
export const speedNumber = (units: Units, speed: number): string =>
  num(units.road === "kmh" ? mpsToKmh(speed) : mpsToMph(speed), 1);

/** m, without it. */
export const distanceNumber = (units: Units, metres: number): string =>
  num(units.road === "kmh" ? metres / 1000 : metresToMiles(metres), 2);

/** Units of ways and speeds. */
export const distanceUnit = (units: Units): string => (units.road === "kmh" ? "km" : "mi");
export const speedUnit = roadUnitName;
