import { signal } from "@preact/signals";
import type { MapId } from "./kinds.ts";

/** The map that is looked at: one at a time. */
export const chosenMap = signal<MapId>("engine");
