import { InputError, type InputFault } from "../../shared/errors.ts";

/** Runs something that must be refused and gives the faults of its InputError. */
export function faultsOf(action: () => unknown): readonly InputFault[] {
  try {
    action();
  } catch (error) {
    if (error instanceof InputError) return error.faults;
    throw error;
  }
  throw new Error("was not refused");
}
