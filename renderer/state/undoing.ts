import { type PlaceId, place } from "./place.ts";
import { redo, undo } from "./store.ts";

/** What a place with edits of its own does for undo and redo. */
export interface Undoing {
  readonly undo: () => void;
  readonly redo: () => void;
}

const ofPlace = new Map<PlaceId, Undoing>();

/** Gives a place its own undo and redo. */
export const undoesItself = (id: PlaceId, undoing: Undoing): void => {
  ofPlace.set(id, undoing);
};

/** One step back, or forward again, in the place where one is; bench and vehicles where it has no edits of its own. */
export const undoHere = (): void => (ofPlace.get(place.value)?.undo ?? undo)();
export const redoHere = (): void => (ofPlace.get(place.value)?.redo ?? redo)();
