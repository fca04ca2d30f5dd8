import { faultText, InputError } from "../../shared/errors.ts";

/** What went wrong, for a person: the first two faults of bad input, else the error's own words. */
export function faultWords(error: unknown): string {
  if (error instanceof InputError) return error.faults.map(faultText).slice(0, 2).join(" ");
  return error instanceof Error ? error.message : String(error);
}
