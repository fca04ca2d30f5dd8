import type { DriveSummary } from "../drive.ts";
import { columns, fixed, wrap } from "./text.ts";
import { kj } from "./units.ts";

/** The energy ledger in two columns: what came in and what is stored, beside what was used or lost. */
export function ledgerLines(s: DriveSummary): string[] {
  const rows = (side: string): string[][] =>
    s.ledger.filter((line) => line.side === side).map((line) => [line.title, kj(line.value_j)]);
  const sum = (side: string): number =>
    s.ledger.filter((line) => line.side === side).reduce((total, line) => total + line.value_j, 0);
  const left = columns(
    [
      ["brought in", ""],
      ...rows("in"),
      ["total", kj(sum("in"))],
      [],
      ["stored", ""],
      ...rows("stored"),
      ["total", kj(sum("stored"))],
    ].map(([title = "", value = ""]) => [title, value]),
    "lr",
  );
  const right = columns([["used or lost", ""], ...rows("loss"), ["total", kj(sum("loss"))]], "lr");
  return [...sideBySide(left, right), ...wrap(closing(s))];
}

function sideBySide(left: readonly string[], right: readonly string[]): string[] {
  const width = Math.max(...left.map((line) => line.length));
  return Array.from({ length: Math.max(left.length, right.length) }, (_, i) =>
    `${(left[i] ?? "").padEnd(width)}     ${right[i] ?? ""}`.trimEnd(),
  );
}

function closing(s: DriveSummary): string {
  const residual = s.ledger_residual_j.toExponential(1);
  const relative = s.closure_relative.toExponential(1);
  return `in less used less stored: ${residual} J, ${relative} of the ${fixed(s.turned_over_j / 1e6, 2)} MJ turned over`;
}
