import { expectWords, readArguments } from "../arguments.ts";
import type { Around } from "../around.ts";
import { driveMany, readMany } from "../many.ts";
import { COMPARE_OPTIONS } from "../many-options.ts";

/** `compare`: every vehicle on every cycle with every strategy, at equal charge. */
export async function compare(words: readonly string[], around: Around): Promise<void> {
  const args = readArguments("compare", words, COMPARE_OPTIONS);
  expectWords("compare", args.words, [], 0);
  await driveMany(await readMany(args, []), args, around);
}
