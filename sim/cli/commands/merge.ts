import { InputError } from "../../../shared/errors.ts";
import { mergeResults, readResults, resultsJson } from "../../study/sweep/file.ts";
import { readArguments } from "../arguments.ts";
import { type Around, stopIfCancelled } from "../around.ts";
import { readJson } from "../files.ts";
import { resultOutputs, targetsOf } from "../many.ts";
import { MERGE_OPTIONS } from "../many-options.ts";
import { checkTargets, writeAll } from "../outputs.ts";
import { resultsReport } from "../report/results-report.ts";

/** `merge FILE…`: puts the parts of a sweep or comparison together. */
export function merge(words: readonly string[], around: Around): void {
  const args = readArguments("merge", words, MERGE_OPTIONS);
  if (args.words.length === 0) {
    throw new InputError({ what: "no files", where: "merge", value: "", accepted: "merge FILE… --out FILE" });
  }
  const targets = targetsOf(args);
  checkTargets(targets, args.words);
  const parts = args.words.map((name) => {
    stopIfCancelled(around);
    return { name, results: readResults(readJson("merge", name), name) };
  });
  const results = mergeResults(parts);
  writeAll(resultOutputs(targets, results), () => stopIfCancelled(around));
  around.out(args.has("json") ? resultsJson(results) : resultsReport(results));
}
