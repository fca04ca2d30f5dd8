import type { FaultPiece } from "../../shared/errors.ts";

/** Words about one parameter, with numbers in its unit among them. */
export type Words = readonly FaultPiece[];

/** The name of the unit, within words. */
export const UNIT: FaultPiece = { unit: true };

/** Another parameter with its value; both have the same unit. @param path dotted */
export const named = (path: string, value: number): FaultPiece => ({ named: path, value });

/** Words from a template. Numbers that have not the parameter's unit (counts, places) are put in as text. */
export const words = (texts: TemplateStringsArray, ...pieces: readonly FaultPiece[]): Words =>
  texts.flatMap((text, i): FaultPiece[] => {
    const piece = pieces[i];
    return piece === undefined ? [text] : [text, piece];
  });

/** How numbers, their unit and other parameters are told. */
export interface Telling {
  readonly number: (value: number) => string;
  /** empty for pure numbers */
  readonly unit: string;
  readonly named: (path: string, value: string) => string;
}

/** Words as one text. */
export const told = (said: Words, how: Telling): string =>
  said
    .map((piece) => {
      if (typeof piece === "string") return piece;
      if (typeof piece === "number") return how.number(piece);
      return "unit" in piece ? how.unit : how.named(piece.named, how.number(piece.value));
    })
    .join("");
