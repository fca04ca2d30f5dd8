import { batch, computed, effect, signal } from "@preact/signals";
import type { Vehicle } from "../../sim/parameters/schema.ts";
import type { MapChoices } from "../../sim/vehicle/engine-map/reading.ts";
import { faultWords } from "../app/fault-words.ts";
import { tell } from "../app/window.ts";
import { vehicle } from "../state/store.ts";
import { t } from "../texts/catalogue.ts";
import type { MapReply } from "../workers/map-contract.ts";
import { Cancelled } from "../workers/runner.ts";
import { setChecked, setParameter } from "./edit.ts";
import { cancelReading, readMap } from "./map-reader.ts";

/** An opened table of an engine map that is not taken yet. */
export interface MapDraft {
  readonly name: string;
  /** the file, so that it can be read again in other units */
  readonly text: string;
  readonly choices: MapChoices;
}

export const mapDraft = signal<MapDraft | null>(null);

/** What the worker last made of a draft, and for which vehicle. */
const reply = signal<(MapReply & { readonly draft: MapDraft; readonly of: Vehicle }) | null>(null);

/** How the opened table was last understood; while it is read in another way, how it was before. */
export const mapReading = computed(() =>
  mapDraft.value && reply.value?.draft.text === mapDraft.value.text ? reply.value.reading : null,
);

/** The vehicle in use with the opened map, or why it cannot have it; null while it is being read. */
export const fittedMap = computed(() => {
  const found = reply.value;
  return found && found.draft === mapDraft.value && found.of === vehicle.value ? found : null;
});

/** Reads what is opened for the vehicle in use; only the newest counts. */
async function read(draft: MapDraft, of: Vehicle): Promise<void> {
  try {
    const found = await readMap({ ...draft, vehicle: of });
    if (draft === mapDraft.value && of === vehicle.value) reply.value = { ...found, draft, of };
  } catch (error) {
    if (error instanceof Cancelled || draft !== mapDraft.value) return;
    tell(t.vehicle.refused(faultWords(error)), true);
    closeMap();
  }
}

// With the fuel and the full load of the vehicle in use: another vehicle reads it anew.
effect(() => {
  const [draft, of] = [mapDraft.value, vehicle.value];
  cancelReading();
  if (draft) void read(draft, of);
  else reply.value = null;
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

/** Puts the opened map in force: one step of undo. @returns whether there was one to take */
export function takeMap(): boolean {
  const [draft, fitted] = [mapDraft.value, fittedMap.value?.fitted];
  if (!draft || !fitted?.vehicle) return false;
  const { vehicle: own } = fitted;
  batch(() => {
    setChecked("engine.map", own, draft.name);
    closeMap();
  });
  return true;
}

/** The engine goes by its formula again. */
export const dropMap = (): boolean => setParameter("engine.map", undefined, "");
