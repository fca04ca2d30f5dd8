import { OWN_INPUTS, OWN_VEHICLE } from "../../../sim/control/own/contract.ts";
import { nearest } from "../../../sim/vehicle/nearest.ts";

/** A name asked of `now` that it has not. Line and column count from 1. */
export interface Slip {
  readonly line: number;
  readonly column: number;
  /** place of the name in the text */
  readonly from: number;
  readonly name: string;
  readonly nearest: string;
}

/** Names of `now`, and of `now.vehicle`. */
export const INPUT_NAMES: readonly string[] = [...OWN_INPUTS.map(({ name }) => name), "vehicle"];
export const VEHICLE_NAMES: readonly string[] = OWN_VEHICLE.map(({ name }) => name);

/** Blanks in place of comments and texts, so that places stay. */
const bare = (text: string): string =>
  text.replace(/\/\/[^\n]*|\/\*[\s\S]*?\*\/|"(?:[^"\\\n]|\\.)*"|'(?:[^'\\\n]|\\.)*'/g, (found) =>
    found.replace(/[^\n]/g, " "),
  );

/**
 * Misspelt inputs of an own strategy, in their order. The interpreter does not tell them: what is not there is
 * undefined, and shows only as an answer that is no number.
 */
export function slipsIn(text: string): readonly Slip[] {
  const plain = bare(text);
  return [...plain.matchAll(/\bnow\.(vehicle\.)?([A-Za-z_$][\w$]*)/g)].flatMap((match) => {
    const name = match[2] ?? "";
    const names = match[1] ? VEHICLE_NAMES : INPUT_NAMES;
    if (names.includes(name)) return [];
    const from = match.index + match[0].length - name.length;
    const before = text.slice(0, from).split("\n");
    const column = (before.at(-1)?.length ?? 0) + 1;
    return [{ line: before.length, column, from, name, nearest: nearest(name, names) ?? "" }];
  });
}

/** A text with a slip mended. */
export const mended = (text: string, { from, name, nearest: right }: Slip): string =>
  text.slice(0, from) + right + text.slice(from + name.length);
