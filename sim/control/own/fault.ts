import { InputError, type InputFault } from "../../../shared/errors.ts";
import type { Place } from "./place.ts";

/** What brought an own strategy to an end. */
export type OwnFaultKind = "text" | "error" | "steps" | "memory" | "depth" | "answer" | "later";

/** Where an own strategy failed. */
export interface OwnFault extends Place {
  readonly kind: OwnFaultKind;
  /** simulated second of the decision; null while the text was read */
  readonly second: number | null;
}

/** An own strategy that cannot go on: its run ends, nothing else does. */
export class OwnStrategyError extends InputError {
  /** @param name of the strategy, put before the place */
  constructor(
    name: string,
    readonly fault: OwnFault,
    detail: Omit<InputFault, "where">,
  ) {
    super({ ...detail, where: `${name}, ${placeText(fault)}` });
  }
}

/** The place as a phrase: line and column where they are known, and the simulated second. */
function placeText({ line, column, second }: OwnFault): string {
  const spot = line === null ? "" : column === null ? `line ${line}` : `line ${line}, column ${column}`;
  const when = second === null ? "" : `at ${Number(second.toFixed(2))} s`;
  return [spot, when].filter((part) => part !== "").join(", ") || "as a whole";
}
