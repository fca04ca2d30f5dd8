import { InputError } from "../../../shared/errors.ts";
import { checkAxes, evenValues, MOST_VALUES, type SweepAxis } from "../../study/sweep/axis.ts";
import { expectWords, readArguments } from "../arguments.ts";
import type { Around } from "../around.ts";
import { driveMany, readMany } from "../many.ts";
import { SWEEP_OPTIONS } from "../many-options.ts";

const ACCEPTED =
  "PATH=FROM:TO:COUNT or PATH=VALUE,VALUE,…, such as battery.capacityAh=4:10:7 (lists parted by |)";

const RANGE = /^([^:]+):([^:]+):(\d+)$/;

/**
 * Reads "path=from:to:count", or "path=a,b,c"; values that hold commas themselves are parted by "|".
 * @throws InputError for what is neither
 */
export function readAxis(text: string): SweepAxis {
  const cut = text.indexOf("=");
  const path = text.slice(0, Math.max(0, cut)).trim();
  const rest = text.slice(cut + 1).trim();
  const refuse = (what: string): never => {
    throw new InputError({ what, where: "--vary", value: text, accepted: ACCEPTED });
  };
  if (path === "" || rest === "") return refuse("not a variation");
  const range = RANGE.exec(rest);
  if (!range)
    return { path, values: rest.split(rest.includes("|") ? "|" : ",").map((value) => value.trim()) };
  const [from, to, count] = range.slice(1).map(Number);
  if (from === undefined || to === undefined || count === undefined) return refuse("not a variation");
  if (!Number.isFinite(from) || !Number.isFinite(to)) return refuse("the ends are no numbers");
  if (count < 2 || count > MOST_VALUES) return refuse(`a count out of 2 … ${MOST_VALUES}`);
  return { path, values: evenValues(from, to, count) };
}

/** `sweep`: varies one or two parameters or run options and drives each point at equal charge. */
export async function sweep(words: readonly string[], around: Around): Promise<void> {
  const args = readArguments("sweep", words, SWEEP_OPTIONS);
  expectWords("sweep", args.words, [], 0);
  const axes = args.texts("vary").map(readAxis);
  if (axes.length === 0) {
    throw new InputError({
      what: "nothing is varied",
      where: "sweep",
      value: "",
      accepted: `--vary ${ACCEPTED}`,
    });
  }
  checkAxes(axes);
  await driveMany(await readMany(args, axes), args, around);
}
