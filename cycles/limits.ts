import { kmhToMps } from "../shared/units.ts";

/** The most samples a trace may have: a day at 10 Hz is 864,000. More would only slow the app down. */
export const MAX_SAMPLES = 1_000_000;

/** m/s. No road vehicle is this fast; a larger number means the wrong unit was read (tests: a value above it). */
export const MAX_SPEED = kmhToMps(400);

/** Rise over run. The steepest public streets reach about 0.35; more means the wrong unit or noise. */
export const MAX_GRADE = 0.5;

/**
 * Rise over run. A grade column that does not say its unit is only believed up to here; beyond it, it may just as
 * well be per cent.
 */
export const MAX_UNSTATED_GRADE = 0.35;

/** s, 100 hours. A longer drive means the wrong time unit (seconds read as minutes, say). */
export const MAX_DURATION = 360_000;

/** So many faults of one file are told at once; reading stops there. */
export const MAX_FAULTS = 10;
