import {
  joulesToKwh,
  litresToGallons,
  metresToMiles,
  milesToMetres,
  mpsToKmh,
  mpsToMph,
  shareToPercent,
} from "../../../shared/units.ts";
import type { Consumed } from "../consumed.ts";
import { fixed, grouped } from "./text.ts";

/** How quantities of one system of units are printed. */
export interface ReportUnits {
  readonly id: "metric" | "us";
  readonly distance: (metres: number) => string;
  readonly speed: (mps: number) => string;
  readonly volume: (litres: number) => string;
  /** Name of the unit that consumption is told in, and its text. */
  readonly consumptionUnit: string;
  readonly consumption: (figures: Consumed) => string;
  readonly carbonUnit: string;
  readonly carbon: (figures: Consumed) => string;
}

const metric: ReportUnits = {
  id: "metric",
  distance: (m) => `${fixed(m / 1000, 3)} km`,
  speed: (v) => `${fixed(mpsToKmh(v), 1)} km/h`,
  volume: (litres) => `${fixed(litres, 3)} L`,
  consumptionUnit: "L/100 km",
  consumption: (f) => fixed(f.l_per_100km, 3),
  carbonUnit: "g CO2/km",
  carbon: (f) => fixed(f.co2_g_per_km, 1),
};

const us: ReportUnits = {
  id: "us",
  distance: (m) => `${fixed(metresToMiles(m), 3)} mi`,
  speed: (v) => `${fixed(mpsToMph(v), 1)} mph`,
  volume: (litres) => `${fixed(litresToGallons(litres), 4)} gal`,
  consumptionUnit: "mpg",
  consumption: (f) => fixed(f.mpg_us, 2),
  carbonUnit: "g CO2/mi",
  carbon: (f) => fixed((f.co2_g_per_km * milesToMetres(1)) / 1000, 1),
};

/** The units by the word of `--units`. */
export const unitsBy = (id: "metric" | "us"): ReportUnits => (id === "us" ? us : metric);

/** Energy, J, in kJ. */
export const kj = (joules: number, decimals = 1): string => grouped(joules / 1000, decimals);

/** Energy, J, in kWh. */
export const kwh = (joules: number): string => `${fixed(joulesToKwh(joules), 3)} kWh`;

/** A share in per cent. */
export const percent = (share: number, decimals = 1): string => {
  const text = fixed(shareToPercent(share), decimals);
  return text === "–" ? text : `${text} %`;
};
