import type { Vehicle } from "../parameters/schema.ts";
import { consumption } from "../run/fuel.ts";

/** A consumption in the figures that people compare, named as in the summary file. */
export interface Consumed {
  readonly l_per_100km: number;
  readonly mpg_us: number;
  readonly co2_g_per_km: number;
}

/** Consumption of a fuel energy, J, over a distance, m. */
export function consumed(vehicle: Vehicle, energy: number, distance: number): Consumed {
  const used = consumption(vehicle.fuel, energy, distance);
  return { l_per_100km: used.litresPer100Km, mpg_us: used.mpg, co2_g_per_km: used.co2PerKm };
}

/** All figures from one of them, L/100 km. */
export function perHundred(vehicle: Vehicle, litres: number): Consumed {
  const { lowerHeat, density } = vehicle.fuel;
  return consumed(vehicle, (litres / 1000) * density * lowerHeat, 100_000);
}
