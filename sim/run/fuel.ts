import { joulesToKwh, litresPer100KmToMpg } from "../../shared/units.ts";
import type { Vehicle } from "../parameters/schema.ts";

/** Molar masses of carbon dioxide and carbon, g/mol. */
const CO2_PER_CARBON = 44.01 / 12.011;

/** Litres of fuel that hold an energy, J. */
export const litres = (fuel: Vehicle["fuel"], energy: number): number =>
  (energy / (fuel.lowerHeat * fuel.density)) * 1000;

/** Carbon dioxide of an energy of fuel, g: mass × carbon share × 44.01/12.011. */
export const carbonDioxide = (fuel: Vehicle["fuel"], energy: number): number =>
  (energy / fuel.lowerHeat) * fuel.carbonShare * CO2_PER_CARBON * 1000;

/** Consumption over a distance. */
export interface Consumption {
  readonly litres: number;
  readonly litresPer100Km: number;
  /** miles a US gallon; infinite without fuel */
  readonly mpg: number;
  readonly co2PerKm: number;
}

/**
 * Fuel consumption of an energy over a distance, from one fuel's heat, density and carbon together.
 * @param energy J
 * @param distance m; below 1 m the figures over distance are not a number
 */
export function consumption(fuel: Vehicle["fuel"], energy: number, distance: number): Consumption {
  const volume = litres(fuel, energy);
  const kilometres = distance >= 1 ? distance / 1000 : Number.NaN;
  const per100 = (volume / kilometres) * 100;
  return {
    litres: volume,
    litresPer100Km: per100,
    mpg: litresPer100KmToMpg(per100),
    co2PerKm: carbonDioxide(fuel, energy) / kilometres,
  };
}

/** Electricity over a distance, kWh/100 km, from an energy in J and a distance in m. */
export const kwhPer100Km = (energy: number, distance: number): number =>
  distance >= 1 ? (joulesToKwh(energy) / distance) * 100_000 : Number.NaN;
