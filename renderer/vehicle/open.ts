import { InputError } from "../../shared/errors.ts";
import { faultWords } from "../app/fault-words.ts";
import { tell } from "../app/window.ts";
import { num } from "../state/format.ts";
import { t } from "../texts/catalogue.ts";
import { takeVehicleText } from "./edit.ts";

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

/** Tells that a vehicle's file is too large. */
export const refuseLarge = (name: string, bytes: number, most: number): void =>
  tell(t.vehicle.refused(t.vehicle.tooLarge(name, num(bytes / 1e6), num(most / 1e6))), true);
