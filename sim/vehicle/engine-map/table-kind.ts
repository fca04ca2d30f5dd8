import { FaultList } from "../../../cycles/import/faults.ts";
import { looksLikeGpx } from "../../../cycles/import/gpx/guard.ts";
import { readHeader } from "../../../cycles/import/headers.ts";
import { firstRow, guessDelimiter, plainLines } from "../../../cycles/import/rows.ts";
import { MAP_ROLES } from "./measures.ts";
import { readMapName } from "./names.ts";
import { layoutOf } from "./sheet.ts";

/** What a table holds by its columns. */
export interface TableKind {
  /** null: neither can be told */
  readonly kind: "drive" | "engine map" | null;
  /** the first row, trimmed; empty where there is none */
  readonly header: readonly string[];
}

/** Characters in which the first row is looked for, behind whatever comments stand before it. */
const HEAD = 200_000;

/** A grid of an engine map: numbers behind its corner, rising as its speeds do. */
function isGrid(header: readonly string[]): boolean {
  if (layoutOf(header) !== "grid") return false;
  const numbers = header.slice(1).map((cell) => Number(cell.replace(",", ".")));
  return numbers.every((value, i) => i === 0 || !(value <= (numbers[i - 1] ?? 0)));
}

/**
 * Tells a table of a drive from one of an engine map, by its first row: a drive has time and the vehicle's speed, an
 * engine map a shaft's speed, its torque and fuel or efficiency, or it is a grid. A table with both is a drive that was
 * recorded with more. One that has only part of either is what its telling columns (time; torque) belong to, so that
 * its place can say what is missing.
 * @param text of the file; only its beginning is looked at
 */
export function tableKind(text: string): TableKind {
  const head = text.slice(text.startsWith("\uFEFF") ? 1 : 0, HEAD);
  if (looksLikeGpx(head)) return { kind: "drive", header: [] };
  const plain = plainLines(head).text;
  const header = firstRow(plain, guessDelimiter(plain), new FaultList(""))?.cells ?? [];
  return { kind: kindOf(header), header };
}

function kindOf(header: readonly string[]): TableKind["kind"] {
  if (isGrid(header)) return "engine map";
  const ofDrive = header.map(readHeader).filter((one) => one !== null);
  const ofMap = header.map(readMapName).filter((one) => one !== null);
  const drives = ofDrive.some(({ role }) => role === "time");
  // A speed in rev/min is a shaft's.
  const travels = ofDrive.some(({ role, unknownUnit }) => role === "speed" && unknownUnit === "");
  if (drives && travels) return "drive";
  if (MAP_ROLES.every((role) => ofMap.some((one) => one.role === role))) return "engine map";
  if (drives) return "drive";
  return ofMap.some(({ role }) => role === "torque") ? "engine map" : null;
}
