import type { Consumed } from "../consumed.ts";
import type { TestSummary } from "../test-run.ts";
import { fuelLines, phaseLines } from "./figures.ts";
import { headLines } from "./head.ts";
import { columns, fixed, section, wrap } from "./text.ts";
import { traceLines } from "./time.ts";
import type { ReportUnits } from "./units.ts";

/** A test made of several drives as a table to read: each drive in short, then the joined figure. */
export function testReport(s: TestSummary, units: ReportUnits): string {
  const parts = s.parts.flatMap(({ title, weight, summary }) => [
    ...section(`${title}, weight ${fixed(weight, 2)}`, [
      ...headLines(summary, units, []),
      ...fuelLines(summary, units),
      ...phaseLines(summary, units),
      ...traceLines(summary, units),
    ]),
  ]);
  return [...wrap(s.test.title), ...wrap(s.test.source), ...parts, ...joined(s, units), ""].join("\n");
}

function joined(s: TestSummary, units: ReportUnits): string[] {
  const row = (label: string, raw: Consumed, balanced: Consumed | undefined): string[] => [
    label,
    units.consumption(raw),
    units.carbon(raw),
    ...(balanced ? [units.consumption(balanced), units.carbon(balanced)] : []),
  ];
  const head = [units.consumptionUnit, units.carbonUnit];
  const balanced = s.combined.balanced !== undefined;
  const rows = [
    ["", ...head, ...(balanced ? head.map((unit) => `${unit} balanced`) : [])],
    ...s.parts.map((part) => row(part.title, part.raw, part.balanced)),
    row("Combined", s.combined.raw, s.combined.balanced),
  ];
  return section("result", columns(rows, "lrrrr"));
}
