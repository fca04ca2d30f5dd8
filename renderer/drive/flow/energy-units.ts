import { num } from "../../state/format.ts";

/** How energies are shown: by what they are divided, with how many digits after the point, and the unit's name. */
export interface EnergyScale {
  readonly per: number;
  readonly decimals: number;
  readonly unit: string;
}

/** Scale that the largest energy of a sheet reads well in. @param largest J */
export function energyUnits(unit: "joule" | "kwh", largest: number): EnergyScale {
  if (unit === "kwh") return { per: 3.6e6, decimals: largest < 36e6 ? 3 : 2, unit: "kWh" };
  if (largest < 1e6) return { per: 1e3, decimals: 1, unit: "kJ" };
  if (largest < 1e8) return { per: 1e3, decimals: 0, unit: "kJ" };
  return { per: 1e6, decimals: 1, unit: "MJ" };
}

/** An energy, J, as text without its unit. */
export const energyText = ({ per, decimals }: EnergyScale, joules: number): string =>
  num(joules / per, decimals);
