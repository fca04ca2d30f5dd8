import type { InputFault } from "../../shared/errors.ts";
import { candidates } from "./columns.ts";
import { FaultList } from "./faults.ts";
import { ROLES, type Role } from "./headers.ts";
import { type ImportOptions, openText, takeColumns } from "./open.ts";
import { type Delimiter, eachRow } from "./rows.ts";

/** What a file offers, before it is read. */
export interface CsvInspection {
  readonly delimiter: Delimiter;
  readonly header: readonly string[];
  /** The first rows under the header, at most 5. */
  readonly firstRows: readonly (readonly string[])[];
  /** Names of the columns that look like each role. */
  readonly candidates: Readonly<Record<Role, readonly string[]>>;
  /** What stands in the way of reading the columns as guessed or chosen; empty when nothing does. */
  readonly faults: readonly InputFault[];
}

/** Rows shown to a person who chooses columns. */
const SHOWN_ROWS = 5;

/**
 * Looks into a file without reading it all: header, first rows, and which columns could be what. For a form that lets
 * people choose before importing.
 * @throws InputError only when the text is no table at all (empty, binary, too long, no header)
 */
export function inspectCsv(text: string, options: ImportOptions): CsvInspection {
  const faults = new FaultList(options.fileName);
  const { text: plain, delimiter, header } = openText(text, options, faults);
  const firstRows: (readonly string[])[] = [];
  eachRow(plain, delimiter, faults, ({ line, cells }) => {
    if (line !== header.line) firstRows.push(cells);
    return firstRows.length < SHOWN_ROWS;
  });
  takeColumns(header, options.columns, faults);
  const names = (role: Role): string[] => candidates(header.cells, role).map(({ name }) => name);
  return {
    delimiter,
    header: header.cells,
    firstRows,
    candidates: Object.fromEntries(ROLES.map((role) => [role, names(role)])) as Record<Role, string[]>,
    faults: faults.list,
  };
}
