import type { ColumnChoice, ColumnChoices, How } from "../../cycles/import/columns.ts";
import {
  DIMENSION_OF,
  RECORDED_ROLES,
  type RecordedRole,
  type Role,
  readHeader,
} from "../../cycles/import/headers.ts";
import type { ImportReport } from "../../cycles/import/report.ts";
import { unitsOf } from "../../cycles/quantities.ts";
import type { Draft } from "./state.ts";

/** How one quantity is taken from a table. */
export interface TakenNow {
  readonly role: Role;
  /** number of the column from 1; 0: none, or not clear */
  readonly column: number;
  /** id of the unit; empty: not clear */
  readonly unit: string;
  readonly columnHow: How | null;
  readonly unitHow: How | null;
  /** the drive does without it */
  readonly optional: boolean;
}

const isRecorded = (role: Role): role is RecordedRole => RECORDED_ROLES.some((one) => one === role);

/** What a person chose for a role. */
export function choiceOf(columns: ColumnChoices | undefined, role: Role): ColumnChoice | "none" | undefined {
  return isRecorded(role) ? columns?.recorded?.[role] : columns?.[role];
}

/** Choices with one role's changed. */
export function withChoice(
  columns: ColumnChoices | undefined,
  role: Role,
  choice: ColumnChoice | "none",
): ColumnChoices {
  if (isRecorded(role)) return { ...columns, recorded: { ...columns?.recorded, [role]: choice } };
  return { ...columns, [role]: choice };
}

function reported(report: ImportReport, role: Role) {
  if (isRecorded(role)) return report.recorded.find((column) => column.role === role) ?? null;
  return report[role];
}

/** What is read of a table now: as it was taken, else as it was chosen, else the only column that looks like it. */
export function takenNow({ read, choices }: Pick<Draft, "read" | "choices">, role: Role): TakenNow {
  const optional = role !== "time" && role !== "speed";
  const { imported, inspection } = read;
  const report = imported?.kind === "csv" ? reported(imported.report, role) : null;
  if (report) {
    const { number, unit, columnHow, unitHow } = report;
    return { role, column: number, unit, columnHow, unitHow, optional };
  }
  const choice = choiceOf(choices.columns, role);
  const nothing = { role, column: 0, unit: "", columnHow: null, unitHow: null, optional };
  if (choice === "none" || (imported && !choice)) return nothing;
  const header = inspection?.header ?? [];
  if (choice) {
    const column = typeof choice.column === "number" ? choice.column : header.indexOf(choice.column) + 1;
    return { ...nothing, column, unit: choice.unit ?? named(role, header[column - 1]), columnHow: "chosen" };
  }
  const [only, second] = inspection?.candidates[role] ?? [];
  const clear = only !== undefined && second === undefined;
  return clear
    ? { ...nothing, column: header.indexOf(only) + 1, unit: named(role, only), columnHow: "from the header" }
    : nothing;
}

/** The unit that a column's name states for a role; empty when it states none. */
function named(role: Role, name: string | undefined): string {
  const reading = readHeader(name ?? "");
  return reading?.role === role ? (reading.unit?.id ?? "") : "";
}

/** Ids of the units that a role may be in. */
export const unitIds = (role: Role): readonly string[] => unitsOf(DIMENSION_OF[role]).map(({ id }) => id);
