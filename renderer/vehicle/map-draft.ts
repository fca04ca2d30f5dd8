import { batch, computed, signal } from "@preact/signals";
import { withEngineMap } from "../../sim/vehicle/engine-map/fit.ts";
import { readEngineMap } from "../../sim/vehicle/engine-map/read.ts";
import type { MapChoices } from "../../sim/vehicle/engine-map/reading.ts";
import { vehicle } from "../state/store.ts";
import { setParameter } from "./edit.ts";

/** An opened table of an engine map that is not taken yet. */
export interface MapDraft {
  readonly name: string;
  /** the file, so that it can be read again in other units */
  readonly text: string;
  readonly choices: MapChoices;
}

export const mapDraft = signal<MapDraft | null>(null);

/** How the opened table is understood; with the fuel of the vehicle in use. */
export const mapReading = computed(() => {
  const draft = mapDraft.value;
  return draft && readEngineMap(draft.text, draft.name, vehicle.value.fuel.lowerHeat, draft.choices);
});

/** The vehicle in use with the opened map, or why it cannot have it. */
export const fittedMap = computed(() => {
  const [draft, reading] = [mapDraft.value, mapReading.value];
  return draft && reading && withEngineMap(vehicle.value, reading, draft.name);
});

/** Opens a table; nothing of the vehicle changes before it is taken. */
export const openMap = (text: string, name: string): void => {
  mapDraft.value = { name, text, choices: {} };
};

/** Reads the opened table in another way. */
export function readMapAgain(choices: MapChoices): void {
  if (mapDraft.value) mapDraft.value = { ...mapDraft.value, choices };
}

/** Whether the panel was just left, so that the keyboard goes on where it was opened. */
export const mapLeft = signal(false);

/** Leaves the opened table; the vehicle stays as it is. */
export const closeMap = (): void =>
  batch(() => {
    mapDraft.value = null;
    mapLeft.value = true;
  });

/** Puts the opened map in force: one step of undo. */
export function takeMap(): void {
  const [draft, fitted] = [mapDraft.value, fittedMap.value];
  if (!draft || !fitted?.vehicle) return;
  setParameter("engine.map", fitted.vehicle.engine.map, draft.name);
  closeMap();
}

/** The engine goes by its formula again. */
export const dropMap = (): boolean => setParameter("engine.map", undefined, "");
