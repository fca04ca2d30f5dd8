import type { Drive } from "../drive.ts";
import { energyLines, engineLines, fuelLines, pathLines, phaseLines, recoveryLines } from "./figures.ts";
import { headLines } from "./head.ts";
import { ledgerLines } from "./ledger.ts";
import { section } from "./text.ts";
import { limitLines, momentLines, regimeLines, traceLines, warningLines } from "./time.ts";
import type { ReportUnits } from "./units.ts";

/**
 * One drive as a table to read.
 * @param notes what a person may want to know of the cycle's file, one sentence each
 */
export function driveReport(done: Drive, units: ReportUnits, notes: readonly string[]): string {
  const { summary, run } = done;
  return [
    ...headLines(summary, units, notes),
    ...section("fuel", fuelLines(summary, units)),
    ...section("phases", phaseLines(summary, units)),
    ...section("battery", energyLines(summary)),
    ...section("braking energy", recoveryLines(summary)),
    ...section("engine", engineLines(summary)),
    ...section("ways of the engine's power", pathLines(summary)),
    ...section("regimes", regimeLines(summary)),
    ...section("energy ledger", ledgerLines(summary), " (kJ)"),
    ...section("speed trace", traceLines(summary, units)),
    ...section("limits and overrides", limitLines(summary)),
    ...section("moments", momentLines(summary)),
    ...section("about this vehicle", warningLines(run.vehicle)),
    "",
  ].join("\n");
}
