/** Characters; a day at one place a second is some 14 million. */
export const MAX_GPX_LENGTH = 64_000_000;

/** Places in one file: more than two days at one a second. */
export const MAX_GPX_POINTS = 200_000;

/** s between 1970 and the last year that is believed, 2100; receivers that lost their calendar give odd years. */
export const LATEST = 4_102_444_800;

/** m. The lowest roads lie by the Dead Sea, the highest in the Himalaya; what is beyond is no elevation. */
export const LOWEST = -500;
export const HIGHEST = 9_000;

/** Of the timed places; when more than this stand out of order, the order itself is not to be believed. */
export const MOST_DISORDER = 0.2;
