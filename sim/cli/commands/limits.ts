import { kmhToMps, shareToPercent } from "../../../shared/units.ts";
import { type LimitsResult, limitsRun } from "../../run/limits-run.ts";
import { vehicleWarnings } from "../../vehicle/warnings.ts";
import { expectWords, readArguments } from "../arguments.ts";
import { type Around, stopIfCancelled } from "../around.ts";
import { LIMITS_OPTIONS } from "../options.ts";
import { readChoice } from "../quantity.ts";
import { columns, fixed, section, wrap } from "../report/text.ts";
import { type ReportUnits, unitsBy } from "../report/units.ts";
import { namingOptions, readSetup } from "../setup.ts";

/** `limits`: what the vehicle can do at most, by simulation. */
export async function limits(words: readonly string[], around: Around): Promise<void> {
  const args = readArguments("limits", words, LIMITS_OPTIONS);
  expectWords("limits", args.words, [], 0);
  const units = unitsBy(readChoice("--units", args.text("units") ?? "metric", ["metric", "us"]));
  const { vehicle, strategy, options } = await readSetup(args);
  around.progress("full throttle", 0);
  const found = namingOptions(args, () => limitsRun(vehicle, strategy, options));
  stopIfCancelled(around);
  if (args.has("json")) {
    const answer = {
      format: "trishaft-limits",
      format_version: 1,
      vehicle: { id: vehicle.id, name: vehicle.name },
      strategy: strategy.id,
      zero_to_100_kmh_s: found.zeroTo100,
      top_speed_mps: found.topSpeed,
      steepest_grade: found.steepestGrade,
      top_electric_speed_mps: found.topElectricSpeed,
    };
    around.out(`${JSON.stringify(answer, null, 2)}\n`);
    return;
  }
  const warnings = vehicleWarnings(vehicle).flatMap((sentence) => wrap(sentence));
  around.out(
    [
      `${vehicle.name} (${vehicle.id}), strategy ${strategy.id}`,
      ...columns(rows(found, units), "ll"),
      ...section("about this vehicle", warnings),
      "",
    ].join("\n"),
  );
}

function rows(found: LimitsResult, units: ReportUnits): string[][] {
  const told = (value: number, text: (value: number) => string): string =>
    Number.isFinite(value) ? text(value) : "not reached";
  return [
    [`0 to ${units.speed(kmhToMps(100))}`, told(found.zeroTo100, (s) => `${fixed(s, 1)} s`)],
    ["top speed", told(found.topSpeed, units.speed)],
    ["steepest grade", told(found.steepestGrade, (grade) => `${fixed(shareToPercent(grade), 1)} %`)],
    ["top speed with the engine at rest", told(found.topElectricSpeed, units.speed)],
  ];
}
