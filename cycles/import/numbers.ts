/** The sign in front of the decimals. */
export type DecimalMark = "point" | "comma";

/** A number read, or why it is none. */
export type NumberReading = { readonly value: number } | { readonly fault: string };

const SHAPE = /^[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:[eE][+-]?\d+)?$/;

/**
 * Reads the numbers of one file. The first decimal sign met settles which one the file uses; the other one after
 * that is refused, since it would then be a thousands separator and the number a thousand times too small.
 */
export class NumberReader {
  private found: DecimalMark | null = null;

  /** The decimal sign met; point when no number had decimals. */
  get mark(): DecimalMark {
    return this.found ?? "point";
  }

  /** @param cell text as it stands in the file, without quotation marks */
  read(cell: string): NumberReading {
    const text = cell.trim();
    if (text === "") return { fault: "The cell is empty." };
    if (/^[+-]?inf(inity)?$/i.test(text)) return { fault: "The number is infinite." };
    if (!SHAPE.test(text)) return { fault: "This is not a number." };
    const mark = text.includes(",") ? "comma" : text.includes(".") ? "point" : null;
    if (mark !== null && this.found !== null && mark !== this.found) {
      return { fault: `The file writes decimals with a ${this.found}, this number with a ${mark}.` };
    }
    this.found ??= mark;
    // Adding 0 turns the "-0.0" that some loggers write at rest into 0.
    const value = Number(text.replace(",", ".")) + 0;
    return Number.isFinite(value) ? { value } : { fault: "The number is infinite." };
  }
}
