import { kmhToMps, mphToMps, percentToShare } from "../../shared/units.ts";
import type { OptionDeclaration } from "./arguments.ts";
import { JSON_OPTION, SETUP_OPTIONS, UNITS_OPTION } from "./options.ts";
import type { Units } from "./quantity.ts";

const same = (value: number): number => value;

/** Units of the map's sides, by option. */
export const MAP_UNITS = {
  speeds: { "": same, "m/s": same, "km/h": kmhToMps, mph: mphToMps },
  rates: { "": same, "m/s2": same },
  charges: { "": same, "%": percentToShare },
} as const satisfies Record<string, Units>;

/** Options of `regeneration`. */
export const REGENERATION_OPTIONS: readonly OptionDeclaration[] = [
  {
    name: "speeds",
    value: "VALUES",
    about: "to brake from: FROM:TO:COUNT or values parted by commas; default 20km/h:120km/h:6",
  },
  { name: "rates", value: "VALUES", about: "to brake at, m/s2; default 0.5,1,1.5,2,3,5" },
  {
    name: "charges",
    value: "VALUES",
    about: "when the brake is asked for, 0.6 or 60%; default near the floor, the target, near the ceiling",
  },
  // The charge is a side of the map.
  ...SETUP_OPTIONS.filter(({ name }) => name !== "soc"),
  { name: "out", value: "FILE", about: "write the map as JSON, with everything that is needed to repeat it" },
  { name: "csv", value: "FILE", about: "write the map as CSV, a row a stop" },
  JSON_OPTION,
  UNITS_OPTION,
];
