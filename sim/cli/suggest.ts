import { InputError, type InputFault } from "../../shared/errors.ts";
import { nearest } from "../vehicle/nearest.ts";

/**
 * Makes the error for an unknown name: what the registry says, the nearest known name, and what else would do.
 * @param where the option that held the name
 * @param other what else the option takes; empty for nothing
 * @param look asks the registry, which throws
 */
export function withNearest(
  where: string,
  name: string,
  known: readonly string[],
  other: string,
  look: () => unknown,
): InputError {
  const fault = faultOf(look, name, known);
  const near = nearest(name, known);
  const what = fault.what.replace(/\.$/, "");
  return new InputError({
    what: near === undefined ? what : `${what}; the nearest known is ${near}`,
    where,
    value: name,
    accepted: other === "" ? fault.accepted : `${fault.accepted}, or ${other}`,
  });
}

function faultOf(look: () => unknown, value: string, known: readonly string[]): InputFault {
  try {
    look();
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    const [first] = error.faults;
    if (first) return first;
  }
  return { what: "unknown name", where: "", value, accepted: known.join(", ") };
}
