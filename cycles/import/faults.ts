import { InputError, type InputFault } from "../../shared/errors.ts";
import { MAX_FAULTS } from "../limits.ts";

/** Where in a file something is. */
export interface Place {
  /** Line of the file, from 1; absent when the whole file or its header is meant. */
  readonly row?: number;
  /** Name of the column as the file has it. */
  readonly column?: string;
  /** A part named otherwise: `track 1, segment 2, point 35`. */
  readonly part?: string;
}

/** Longest piece of a file repeated in a message. */
const LONGEST_VALUE = 60;

/** Gathers what is wrong with one file, so that a person can mend it in one go. */
export class FaultList {
  private readonly fileName: string;
  private readonly faults: InputFault[] = [];

  constructor(fileName: string) {
    this.fileName = fileName;
  }

  /** Books a fault; beyond MAX_FAULTS nothing is kept. @param value as found in the file; shortened when long */
  add(what: string, place: Place, value: string, accepted: string): void {
    if (this.full) return;
    const parts = [this.fileName];
    if (place.part !== undefined) parts.push(place.part);
    if (place.row !== undefined) parts.push(`row ${place.row}`);
    if (place.column !== undefined) parts.push(`column "${shorten(place.column)}"`);
    const last = this.faults.length === MAX_FAULTS - 1;
    const text = last ? `${what} Reading stopped here; there may be more.` : what;
    this.faults.push({ what: text, where: parts.join(", "), value: shorten(value), accepted });
  }

  /** True when reading on would tell nothing more. */
  get full(): boolean {
    return this.faults.length >= MAX_FAULTS;
  }

  /** What was booked so far. */
  get list(): readonly InputFault[] {
    return this.faults;
  }

  get any(): boolean {
    return this.faults.length > 0;
  }

  /** @throws InputError with all faults, when there is one */
  throwIfAny(): void {
    if (this.any) throw new InputError(this.faults);
  }

  /** Books a fault that ends the reading and throws all of them. */
  stop(what: string, place: Place, value: string, accepted: string): never {
    this.add(what, place, value, accepted);
    throw new InputError(this.faults);
  }
}

function shorten(text: string): string {
  return text.length <= LONGEST_VALUE ? text : `${text.slice(0, LONGEST_VALUE)}…`;
}
