import { signal } from "@preact/signals";

/** The places that there are, in the order of the rail and of the keys 1, 2, … */
export const PLACES = ["bench", "road", "compare", "lessons", "vehicle", "cycles"] as const;

export type PlaceId = (typeof PLACES)[number];

/** Where one is. The page's address says it too, so that links, back and reload work. */
export const place = signal<PlaceId>("bench");

const named = (): PlaceId | undefined => PLACES.find((id) => location.hash === `#${id}`);

/** Goes to a place. */
export function goTo(id: PlaceId): void {
  location.hash = id;
  place.value = id;
}

/** Follows the page's address from now on. */
export function followPlace(): void {
  const take = (): void => {
    place.value = named() ?? "bench";
  };
  take();
  window.addEventListener("hashchange", take);
}
