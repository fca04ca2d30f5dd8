/** Share of the cold start in the city test; the hot start has the rest, 0.57. 40 CFR 86.144. */
export const COLD_START_WEIGHT = 0.43;

/** Share of city driving in the combined figure; the highway has the rest, 0.45. 40 CFR 600.206. */
export const CITY_WEIGHT = 0.55;

/** What a phase used or gave off, and how far it went. */
export interface PhaseAmount {
  /** Fuel, energy or emission of the phase, any unit. */
  readonly amount: number;
  /** Way driven in the phase, any unit, above 0. */
  readonly distance: number;
}

/** The three bags of the city test. */
export interface CityBags {
  readonly coldTransient: PhaseAmount;
  readonly stabilised: PhaseAmount;
  readonly hotTransient: PhaseAmount;
}

/**
 * The city test's weighted amount per distance, 40 CFR 86.144:
 * 0.43 (Yct + Ys)/(Dct + Ds) + 0.57 (Yht + Ys)/(Dht + Ds). The middle bag stands for both starts.
 * @returns amount per distance in the units of the bags
 */
export function weightCityBags(bags: CityBags): number {
  const { coldTransient, stabilised, hotTransient } = bags;
  const withMiddle = (bag: PhaseAmount): number =>
    (bag.amount + stabilised.amount) / (bag.distance + stabilised.distance);
  return COLD_START_WEIGHT * withMiddle(coldTransient) + (1 - COLD_START_WEIGHT) * withMiddle(hotTransient);
}

/**
 * City and highway fuel per distance joined to the combined figure, 0.55 and 0.45. Weighting fuel per distance
 * straight is weighting fuel economy (distance per fuel) harmonically, as 40 CFR 600.206 asks.
 * @param city fuel per distance, any unit, at least 0
 * @param highway the same unit
 * @returns the same unit
 */
export function combineFuelPerDistance(city: number, highway: number): number {
  return CITY_WEIGHT * city + (1 - CITY_WEIGHT) * highway;
}
