import { signal } from "@preact/signals";

/** The places that there are, in the order of the rail and of the keys 1, 2, … */
export const PLACES = ["bench", "road"] as const;

export type PlaceId = (typeof PLACES)[number];

/** Where one is. */
export const place = signal<PlaceId>("bench");
