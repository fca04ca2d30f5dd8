/** Numbers of the cleaning that are no one's choice, each with the reason for its size. */

/** (m/s²)²·s for each axis. Ordinary driving changes its acceleration by about 0.6 m/s² (rms) within 2 s: 2 · 0.6² · 1. */
export const PATH_LIVELINESS = 0.7;

/** (rise/run)²/m. Roads change their grade by some 2 % (rms) over a few hundred metres, motorways by less. */
export const ELEVATION_LIVELINESS = 1.5e-6;

/** (m/s²)²/s, for a recorded speed: the acceleration wanders by about 0.6 m/s² within 2 s. */
export const SPEED_LIVELINESS = 0.4;

/** (1/m)²/m, for a recorded grade: 2 % within 150 m. */
export const GRADE_LIVELINESS = 5e-10;

/** m; places and elevations are first looked at as if they could be so far off. */
export const WIDE_PLACE = 50;
export const WIDE_HEIGHT = 50;

/** m/s, 300 km/h: two places that ask for more cannot both be right. */
export const FASTEST_STEP = 83;
/** m; so far two neighbours may always be apart, by jitter alone. */
export const JITTER_STEP = 15;
/** Places; half a minute of a usual recording. Longer strays are no strays any more. */
export const STRAY_PLACES = 30;

/** Rise over run between neighbours that is still believed, above `JITTER_RISE`. */
export const STEEPEST_STEP = 0.5;
/** m; so much two neighbouring elevations may always differ. */
export const JITTER_RISE = 15;
/** Elevations; two minutes of a usual recording: the receiver finds its height later than its place. */
export const STRAY_ELEVATIONS = 120;

/** s; nothing recorded for longer than this, or for four usual steps, is a gap. */
export const LEAST_GAP = 10;
export const GAP_STEPS = 4;

/** m/s for a jitter of 1 m. What is left of jitter in the smooth speed grows with its fourth root (spline theory). */
export const STILL_SPEED = 1;
/** m/s; slower than this for a while is standing whatever the jitter: nobody drives so. */
export const LEAST_STILL_SPEED = 0.8;
/** s; shorter slow moments are not taken for standing. */
export const LEAST_STILL = 3;
/** m; a wandering receiver moves so far while the vehicle stands. */
export const STILL_WANDER = 3;
/** m/s; who gets on faster than this over the whole of a slow stretch is creeping, not standing. */
export const CREEP = 0.3;
/** s; two standing stretches at one place with so little between are one. */
export const STILL_BREAK = 5;

/** m/s², the first try for getting through a gap. */
export const GAP_ACCELERATION = 1;
/** s standing where a long gap was taken out. */
export const JOIN_REST = 5;

/** m/s; nothing on wheels stops from, or leaves at, more than this between two places and the next, a second or so. */
export const FASTEST_STOP = 12;

/** m/s and rise over run; recorded speeds and grades are first looked at as if they could be so far off. */
export const WIDE_SPEED = 10;
export const WIDE_GRADE = 0.1;
