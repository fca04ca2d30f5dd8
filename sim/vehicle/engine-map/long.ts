import type { FaultList } from "../../../cycles/import/faults.ts";
import { MAP_ROLES, type MapRole, ROLE_NAMES } from "./measures.ts";
import { type NameReading, readMapName } from "./names.ts";
import type { FilePoint, MapChoices, MapHow } from "./reading.ts";
import { CellReader, type Sheet } from "./sheet.ts";

/** Where a role's numbers stand in a table with a row for each point. */
export interface RoleColumn {
  /** from 1; 0: not found */
  readonly column: number;
  readonly how: MapHow;
  /** what the column's name says of this role */
  readonly named: NameReading | null;
}

const EXAMPLES: Readonly<Record<MapRole, string>> = {
  speed: "speed (rev/min)",
  torque: "torque (N·m)",
  figure: "fuel flow (g/s), consumption (g/kWh) or efficiency (%)",
};

/** Finds the columns by their names; what is left over takes the columns left over, in their order. */
export function longColumns({ header }: Sheet, choices: MapChoices): Readonly<Record<MapRole, RoleColumn>> {
  const named = header.cells.map(readMapName);
  const find = (role: MapRole): RoleColumn => {
    const chosen = choices.columns?.[role];
    const first = named.findIndex((reading) => reading?.role === role);
    const column = chosen ?? first + 1;
    const reading = named[column - 1];
    const how = chosen === undefined ? "from the header" : "chosen";
    return { column, how, named: reading?.role === role ? reading : null };
  };
  const found = { speed: find("speed"), torque: find("torque"), figure: find("figure") };
  const missing = MAP_ROLES.filter((role) => found[role].column === 0);
  const used = new Set(MAP_ROLES.map((role) => found[role].column));
  const left = header.cells.map((_, i) => i + 1).filter((column) => !used.has(column));
  if (missing.length === 0 || missing.length !== left.length) return found;
  const assumed = missing.map((role, i) => [role, { column: left[i] ?? 0, how: "assumed", named: null }]);
  return { ...found, ...Object.fromEntries(assumed) };
}

/** Points of a table with a row for each. Columns that are missing and wrong cells are booked. */
export function longPoints(
  { header, rows }: Sheet,
  columns: Readonly<Record<MapRole, RoleColumn>>,
  faults: FaultList,
): readonly FilePoint[] {
  for (const role of MAP_ROLES) {
    if (columns[role].column > 0) continue;
    const found = header.cells.join(", ");
    const what = `No column, or no clear one, gives ${ROLE_NAMES[role]}.`;
    faults.add(what, { row: header.line }, found, `a column named ${EXAMPLES[role]}`);
  }
  if (faults.any) return [];
  const cells = new CellReader(faults);
  const points: FilePoint[] = [];
  for (const row of rows) {
    if (faults.full) break;
    const one = (role: MapRole) => {
      const index = columns[role].column - 1;
      const name = header.cells[index] ?? "";
      const place = {
        line: row.line,
        column: name === "" ? String(index + 1) : name,
        text: row.cells[index] ?? "",
      };
      return { place, value: cells.read(place.text, place.line, place.column, "a number") };
    };
    const [speed, torque, figure] = [one("speed"), one("torque"), one("figure")];
    if (speed.value === null || torque.value === null || figure.value === null) continue;
    const places = { speed: speed.place, torque: torque.place, figure: figure.place };
    points.push({ speed: speed.value, torque: torque.value, figure: figure.value, at: places });
  }
  return points;
}
