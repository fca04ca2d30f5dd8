import { version } from "../../../package.json";
import { InputError } from "../../../shared/errors.ts";
import { runReport } from "../../report/report.ts";
import { regimes } from "../../run/regimes.ts";
import { expectWords, readArguments } from "../arguments.ts";
import { type Around, stopIfCancelled } from "../around.ts";
import { chooseCycle, cycleFile } from "../cycle-choice.ts";
import { drive } from "../drive.ts";
import { REPORT_OPTIONS } from "../lesson-options.ts";
import { checkTargets, writeAll } from "../outputs.ts";
import { namingOptions, readSetup } from "../setup.ts";

/** `report`: drives a cycle and writes what happened as one HTML file. */
export async function report(words: readonly string[], around: Around): Promise<void> {
  const args = readArguments("report", words, REPORT_OPTIONS);
  expectWords("report", args.words, [], 0);
  const name = args.text("cycle") ?? "udds";
  const path = args.text("out");
  if (path === undefined) {
    throw new InputError({
      what: "nothing to write",
      where: "report",
      value: "",
      accepted: "--out FILE.html",
    });
  }
  const cycle = chooseCycle("--cycle", name);
  if (cycle.kind === "test") {
    const accepted = cycle.test.parts.map((part) => part.cycle).join(", ");
    throw new InputError({
      what: `${cycle.test.id} is made of several drives, and a report tells one`,
      where: "--cycle",
      value: name,
      accepted,
    });
  }
  const setup = await readSetup(args);
  const input = cycleFile(name);
  const target = { where: "--out", path };
  checkTargets([target], input === undefined ? [] : [input]);
  const { run, summary } = namingOptions(args, () => drive(setup, cycle.trace, args.has("balance"), around));
  const text = runReport({
    vehicle: setup.vehicle,
    summary,
    log: run.log,
    regime: regimes(run.log, run.p),
    balance: summary.balanced ? { ...summary.balanced, ofThisRun: true } : null,
    cycleLine: name,
    notes: cycle.notes,
    version,
    made: "",
  });
  writeAll([{ ...target, pieces: () => [text] }], () => stopIfCancelled(around));
  around.out(`${setup.vehicle.name} on ${summary.cycle.title}: report in ${path}\n`);
}
