import { num } from "../state/format.ts";
import { t } from "../texts/catalogue.ts";
import { refusal } from "./state.ts";

/** bytes; what is larger is not read at all. A day at one place a second has some 15 MB. */
export const MOST_BYTES = 64 * 1024 * 1024;

/** Refuses a file for its size; it is not read. */
export function refuseLarge(name: string, bytes: number, most: number): void {
  const { what, value, accepted } = t.cycles.tooLarge(num(bytes / 1e6, 1), num(most / 1e6, 0));
  refusal.value = { name, faults: [{ what, where: name, value, accepted }] };
}
