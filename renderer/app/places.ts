import { signal } from "@preact/signals";
import type { ComponentType } from "preact";
import { PLACES, type PlaceId } from "../state/place.ts";
import type { IconName } from "../ui/icons.tsx";

/** What the frame needs of a place: each has a module `place.ts` that exports these. */
export interface PlaceParts {
  readonly Top: ComponentType;
  readonly Sheet: ComponentType;
  readonly Strip: ComponentType;
  /** A single key without Ctrl, nothing in focus that takes it; true when it did something. */
  readonly key: (event: KeyboardEvent) => boolean;
}

interface PlaceEntry {
  readonly icon: IconName;
  /** Each place is a bundle of its own, so that the first picture waits for none but the first place. */
  readonly load: () => Promise<PlaceParts>;
}

/** A new place is one entry here, one in state/place.ts, and a name in the texts. */
export const PLACE: Readonly<Record<PlaceId, PlaceEntry>> = {
  bench: { icon: "bench", load: () => import("../bench/place.ts") },
  road: { icon: "road", load: () => import("../drive/place.ts") },
  compare: { icon: "compare", load: () => import("../compare/place.ts") },
  lessons: { icon: "lessons", load: () => import("../lesson/place.ts") },
  vehicle: { icon: "vehicle", load: () => import("../vehicle/place.ts") },
  cycles: { icon: "cycles", load: () => import("../cycles/place.ts") },
};

const loaded = signal<Partial<Readonly<Record<PlaceId, PlaceParts>>>>({});

/** The parts of a place; null while they are not loaded. */
export const partsOf = (id: PlaceId): PlaceParts | null => loaded.value[id] ?? null;

/** Places that could not be loaded when they were last asked for: a piece of the program is missing or broken. */
export const failedPlaces = signal<ReadonlySet<PlaceId>>(new Set());

/** Loads a place; one that is there already is not loaded again. One that cannot be loaded may be asked for again. */
export async function loadPlace(id: PlaceId): Promise<void> {
  if (partsOf(id)) return;
  const others = new Set([...failedPlaces.value].filter((other) => other !== id));
  try {
    const parts = await PLACE[id].load();
    loaded.value = { ...loaded.value, [id]: parts };
    failedPlaces.value = others;
  } catch {
    failedPlaces.value = others.add(id);
  }
}

/** Loads the other places one by one, so that going there is immediate later. */
export async function loadRest(): Promise<void> {
  for (const id of PLACES) await loadPlace(id);
}
