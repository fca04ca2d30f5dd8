/**
 * A piece of a fault's words: plain words; a number in the unit of the faulty parameter; that unit's name; another
 * parameter, by its path, with its value in that unit.
 */
export type FaultPiece =
  | string
  | number
  | { readonly unit: true }
  | { readonly named: string; readonly value: number };

/** What a user's bad input gets: what is wrong, where, the value found, and what would be accepted. */
export interface InputFault {
  /** What is wrong: a sentence or a phrase. */
  readonly what: string;
  /** File, row, column or parameter path. */
  readonly where: string;
  /** The value found, as text; empty when there is none (a missing column, say). */
  readonly value: string;
  /** What would be right. */
  readonly accepted: string;
  /** `what` and `accepted` again, for a form that shows the parameter in another unit than files do. */
  readonly pieces?: { readonly what: readonly FaultPiece[]; readonly accepted: readonly FaultPiece[] };
}

/** An error a user can cause and mend. Programming errors are plain `Error`s. */
export class InputError extends Error {
  override readonly name = "InputError";
  readonly faults: readonly InputFault[];

  /** @param faults one entry for each thing that is wrong; at least one */
  constructor(faults: InputFault | readonly InputFault[]) {
    const list = Array.isArray(faults) ? (faults as readonly InputFault[]) : [faults as InputFault];
    super(list.map(faultText).join("\n"));
    this.faults = list;
  }
}

/** One fault as one readable line. */
export function faultText(fault: InputFault): string {
  const found = fault.value === "" ? "" : ` Found: ${fault.value}.`;
  const what = /[.!?]$/.test(fault.what) ? fault.what : `${fault.what}.`;
  return `${fault.where}: ${what}${found} Accepted: ${fault.accepted}.`;
}
