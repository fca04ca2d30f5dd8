/** Two gears in mesh, as whole teeth. */
export interface TeethPair {
  readonly pinion: number;
  readonly wheel: number;
}

/** Fewest and most teeth tried for the smaller gear. */
const LEAST = 17;
const MOST = 60;

/** A ratio met this closely counts as exact. */
const EXACT = 1e-9;

/**
 * Teeth for a given ratio ≥ 1: the fewest that meet it exactly, else those that come nearest. The pair is drawn and
 * turned with these teeth, so that it always meshes; any ratio with at most one decimal is exact, any other within
 * 1/120.
 */
export function teethForRatio(ratio: number): TeethPair {
  let best: TeethPair = { pinion: LEAST, wheel: Math.max(LEAST, Math.round(LEAST * ratio)) };
  let least = Number.POSITIVE_INFINITY;
  for (let pinion = LEAST; pinion <= MOST; pinion += 1) {
    const wheel = Math.round(pinion * ratio);
    const error = Math.abs(wheel / pinion - ratio);
    if (error < least - EXACT) {
      best = { pinion, wheel };
      least = error;
    }
    if (least <= EXACT) break;
  }
  return best;
}

/** The pair's lengths and phases. */
export interface PairPlace {
  readonly module: number;
  readonly pinionPitch: number;
  readonly wheelPitch: number;
  readonly centreDistance: number;
}

/** Sizes a pair: the wheel gets a given pitch radius as long as the pinion keeps a least one. */
export function placePair(pair: TeethPair, wheelPitch: number, leastPinion: number): PairPlace {
  const pinion = Math.max(leastPinion, (wheelPitch * pair.pinion) / pair.wheel);
  const module = (2 * pinion) / pair.pinion;
  const wheel = (module * pair.wheel) / 2;
  return { module, pinionPitch: pinion, wheelPitch: wheel, centreDistance: pinion + wheel };
}

/**
 * Turn of the second gear's outline that puts a space of it opposite a tooth of the first one, in direction
 * `direction` from first to second axis, when the first one's outline is turned by `firstTurn`. Count teeth along
 * each pitch circle toward the mesh: the two counts must add to a half.
 */
export function meshPhase(first: number, second: number, direction: number, firstTurn: number): number {
  const firstCount = (first * (direction - firstTurn)) / (2 * Math.PI);
  const secondCount = 0.5 - firstCount;
  return direction + Math.PI - (2 * Math.PI * secondCount) / second;
}
