import { at } from "../../shared/at.ts";
import type { RecordedChannel, RecordedLog } from "../../shared/recorded.ts";
import { findUnit } from "../quantities.ts";
import type { TakenColumn } from "./columns.ts";
import type { FaultList } from "./faults.ts";
import type { RecordedRole, Role } from "./headers.ts";
import type { NumberReader } from "./numbers.ts";
import type { Columns } from "./open.ts";
import type { Row } from "./rows.ts";

/** SI range of each quantity: beyond it the unit is wrong. Engines of cars stay below 12,000 rev/min. */
const RANGES: Readonly<Record<RecordedRole, readonly [least: number, most: number]>> = {
  engineSpeed: [-1, 1300],
  soc: [-0.01, 1.1],
  batteryCurrent: [-2000, 2000],
};

const ACCEPTED: Readonly<Record<RecordedRole, string>> = {
  engineSpeed: "0 to 12,000 rev/min, or an empty cell",
  soc: "0 to 100 %, or an empty cell",
  batteryCurrent: "-2000 to 2000 A, or an empty cell",
};

/** Cells with which loggers say that there is no value. */
const NOTHING = /^(?:|-|n\/?a|nan|null)$/i;

/** Reads the columns beside the drive, row by row. Rows without a value keep a hole. */
export class RecordedReader {
  private readonly values: number[][];

  constructor(
    private readonly columns: Columns,
    private readonly numbers: NumberReader,
    private readonly faults: FaultList,
  ) {
    this.values = columns.recorded.map(() => []);
  }

  /** Books a fault for a cell that is neither empty nor a number. */
  take(row: Row): void {
    this.columns.recorded.forEach((column, k) => {
      at(this.values, k).push(this.readCell(row, column));
    });
  }

  /**
   * @param time s, one for each row taken
   * @throws InputError when values are far out of range
   */
  finish(time: Float64Array): { overlay: RecordedLog | null; recorded: TakenColumn[] } {
    const recorded = this.columns.recorded.map((column, k) => settleUnit(column, at(this.values, k)));
    const channels = recorded.map((column, k) => this.channel(column, at(this.values, k)));
    this.faults.throwIfAny();
    return { overlay: channels.length === 0 ? null : { time, channels }, recorded };
  }

  private readCell(row: Row, column: TakenColumn): number {
    const cell = row.cells[column.index] ?? "";
    if (NOTHING.test(cell.trim())) return Number.NaN;
    const reading = this.numbers.read(cell);
    if ("value" in reading) return reading.value;
    const place = { row: row.line, column: column.name };
    this.faults.add(reading.fault, place, cell, "a number or an empty cell");
    return Number.NaN;
  }

  private channel(column: TakenColumn, written: readonly number[]): RecordedChannel {
    const id = roleOf(column.role);
    const sign = id === "batteryCurrent" ? this.columns.currentSign : 1;
    // Adding 0 turns -0 into 0.
    const values = Float64Array.from(written, (value) => sign * column.unit.toSi(value) + 0);
    const [least, most] = RANGES[id];
    const wrong = values.findIndex((value) => value < least || value > most);
    if (wrong >= 0) {
      const what = `The value is impossible when read in ${column.unit.id}; the unit looks wrong.`;
      this.faults.add(what, { column: column.name }, String(at(written, wrong)), ACCEPTED[id]);
    }
    return { id, name: column.name, values };
  }
}

/** A charge without a unit is in per cent when a value above 1 stands anywhere in it. */
function settleUnit(column: TakenColumn, written: readonly number[]): TakenColumn {
  const percent = findUnit("charge", "%");
  const isPercent =
    column.role === "soc" && column.unitHow === "assumed" && written.some((value) => value > 1);
  return isPercent && percent ? { ...column, unit: percent } : column;
}

function roleOf(role: Role): RecordedRole {
  if (role === "engineSpeed" || role === "soc" || role === "batteryCurrent") return role;
  throw new Error(`${role} is no role beside the drive`);
}
