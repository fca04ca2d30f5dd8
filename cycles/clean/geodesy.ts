/** A place on the Earth, WGS 84, degrees: latitude north, longitude east. */
export interface Place {
  readonly latitude: number;
  readonly longitude: number;
}

/** A step on the ground, m. */
export interface GroundStep {
  readonly east: number;
  readonly north: number;
}

const DEGREE = Math.PI / 180;

/** m. Mean radius (2a + b)/3 of the ellipsoid, as the International Union of Geodesy and Geophysics defines it. */
export const MEAN_EARTH_RADIUS = 6_371_008.8;

/** m, semi-major axis of WGS 84. */
const SEMI_MAJOR = 6_378_137;
/** Flattening of WGS 84. */
const FLATTENING = 1 / 298.257223563;
/** First eccentricity squared. */
const E2 = FLATTENING * (2 - FLATTENING);

/**
 * Great-circle distance on a sphere by the haversine formula (Sinnott, "Virtues of the Haversine", 1984), which keeps
 * its figures for near places where the law of cosines loses them. The Earth is no sphere: against the ellipsoid the
 * result is off by up to 0.56 %, so ways are added up from `groundStep`, and this is for long jumps.
 * @param radius m
 * @returns m
 */
export function greatCircleDistance(from: Place, to: Place, radius = MEAN_EARTH_RADIUS): number {
  const lat0 = from.latitude * DEGREE;
  const lat1 = to.latitude * DEGREE;
  const sinLat = Math.sin((lat1 - lat0) / 2);
  const sinLon = Math.sin(((to.longitude - from.longitude) * DEGREE) / 2);
  const haversine = sinLat * sinLat + Math.cos(lat0) * Math.cos(lat1) * sinLon * sinLon;
  return 2 * radius * Math.asin(Math.min(1, Math.sqrt(haversine)));
}

/**
 * The step between two places on the ellipsoid by Gauss's middle-latitude method: the radii of curvature (Bomford,
 * Geodesy: along the meridian a(1 − e²)/w³, across it a/w, w = √(1 − e² sin² φ)) taken half way. Against the geodesic
 * it is right to 1 in 10⁶ up to some 50 km outside the polar regions; the way across the date line is the short one.
 */
export function groundStep(from: Place, to: Place): GroundStep {
  const middle = ((from.latitude + to.latitude) / 2) * DEGREE;
  const sin = Math.sin(middle);
  const w2 = 1 - E2 * sin * sin;
  const across = SEMI_MAJOR / Math.sqrt(w2);
  const along = (across * (1 - E2)) / w2;
  return {
    north: along * (to.latitude - from.latitude) * DEGREE,
    east: across * Math.cos(middle) * shortTurn(to.longitude - from.longitude) * DEGREE,
  };
}

/**
 * The place a step away: the inverse of `groundStep`, found by repeating it with the new middle latitude.
 */
export function placeAfter(from: Place, step: GroundStep): Place {
  let latitude = from.latitude;
  let longitude = from.longitude;
  // Each round mends the middle latitude; steps of kilometres need two.
  for (let round = 0; round < 4; round += 1) {
    const sin = Math.sin(((from.latitude + latitude) / 2) * DEGREE);
    const w2 = 1 - E2 * sin * sin;
    const across = SEMI_MAJOR / Math.sqrt(w2);
    const along = (across * (1 - E2)) / w2;
    const cos = Math.cos(((from.latitude + latitude) / 2) * DEGREE);
    latitude = from.latitude + step.north / along / DEGREE;
    longitude = from.longitude + step.east / (across * cos) / DEGREE;
  }
  return { latitude, longitude: shortTurn(longitude) };
}

/** Length of a step, m. */
export const stepLength = ({ east, north }: GroundStep): number => Math.sqrt(east * east + north * north);

/** A turn brought to −180 … 180 degrees. */
const shortTurn = (degrees: number): number => degrees - 360 * Math.round(degrees / 360);
