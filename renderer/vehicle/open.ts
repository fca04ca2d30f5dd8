import { InputError } from "../../shared/errors.ts";
import { MOST_MAP_BYTES } from "../../sim/vehicle/engine-map/sheet.ts";
import { faultWords } from "../app/fault-words.ts";
import { tell } from "../app/window.ts";
import { num } from "../state/format.ts";
import { t } from "../texts/catalogue.ts";
import { takeVehicleText } from "./edit.ts";
import { openMap } from "./map-draft.ts";
import { selectedPart } from "./SectionDrawing.tsx";

/** Takes a vehicle's file and says so; a broken one is refused aloud. */
export function takeVehicleFile(text: string, name: string): void {
  try {
    takeVehicleText(text, name);
    tell(t.vehicle.opened(name));
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    tell(t.vehicle.refused(faultWords(error)), true);
  }
}

/** Opens a table of an engine map, beside the engine's parameters. @param bytes of the file */
export function takeMapFile(text: string, name: string, bytes: number): void {
  if (bytes > MOST_MAP_BYTES) {
    refuseLarge(name, bytes, MOST_MAP_BYTES);
    return;
  }
  selectedPart.value = "engine";
  openMap(text, name);
}

/** Tells that a vehicle's file is too large. */
export const refuseLarge = (name: string, bytes: number, most: number): void =>
  tell(t.vehicle.refused(t.vehicle.tooLarge(name, num(bytes / 1e6), num(most / 1e6))), true);
