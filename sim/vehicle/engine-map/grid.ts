import type { FaultList } from "../../../cycles/import/faults.ts";
import { at } from "../../../shared/at.ts";
import type { FilePlace, FilePoint } from "./reading.ts";
import { CellReader, type Sheet } from "./sheet.ts";

interface Axis {
  readonly value: number;
  readonly place: FilePlace;
}

const EVERY_CELL =
  "a number: every cell is needed, above full load too, since the engine reads between four neighbours";

/** Column as a person counts it where its head says nothing. */
const columnName = (head: string, index: number): string => (head === "" ? String(index + 1) : head);

/** Books each place at which an axis does not rise. */
function checkRising(axis: readonly Axis[], name: string, faults: FaultList): void {
  axis.forEach(({ value, place }, i) => {
    if (i === 0 || value > at(axis, i - 1).value) return;
    const before = at(axis, i - 1).place.text;
    faults.add(
      `The ${name}s do not rise.`,
      { row: place.line, column: place.column },
      place.text,
      `more than ${before}`,
    );
  });
}

/** Points of a grid: speeds in the first row, torques in the first column. Wrong cells are booked. */
export function gridPoints({ header, rows }: Sheet, faults: FaultList): readonly FilePoint[] {
  const cells = new CellReader(faults);
  const heads = header.cells.slice(1);
  const speeds = heads.flatMap((text, i): Axis[] => {
    const column = columnName(text, i + 1);
    const value = cells.read(text, header.line, column, "a speed");
    return value === null ? [] : [{ value, place: { line: header.line, column, text } }];
  });
  const corner = columnName(at(header.cells, 0), 0);
  const torques: Axis[] = [];
  const points: FilePoint[] = [];
  for (const row of rows) {
    if (faults.full) break;
    const [head = "", ...values] = row.cells;
    const value = cells.read(head, row.line, corner, "a torque");
    if (value === null) continue;
    const torque = { value, place: { line: row.line, column: corner, text: head } };
    torques.push(torque);
    if (values.slice(heads.length).some((cell) => cell !== "")) {
      const found = `${values.length} values for ${heads.length} speeds`;
      faults.add("The row is longer than the first one.", { row: row.line }, found, `${heads.length} values`);
    }
    if (speeds.length < heads.length) continue;
    speeds.forEach((speed, i) => {
      const text = values[i] ?? "";
      const figure = cells.read(text, row.line, speed.place.column, EVERY_CELL);
      if (figure === null) return;
      const place = { line: row.line, column: speed.place.column, text };
      const places = { speed: speed.place, torque: torque.place, figure: place };
      points.push({ speed: speed.value, torque: torque.value, figure, at: places });
    });
  }
  checkRising(speeds, "speed", faults);
  checkRising(torques, "torque", faults);
  return points;
}
