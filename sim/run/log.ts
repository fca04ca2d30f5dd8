import { at, realAt } from "../../shared/at.ts";
import { InputError } from "../../shared/errors.ts";
import type { ControlState } from "../control/state.ts";
import type { Prepared } from "../drivetrain/prepared.ts";
import type { PlantState } from "../drivetrain/state.ts";
import type { Books } from "./books.ts";
import { CHANNELS, type ChannelId } from "./channels.ts";
import { FLOWS, fillFlows } from "./flows.ts";
import { fillLedger, LEDGER_LINES, type StoredAtStart } from "./ledger.ts";

/** Most rows of one log: 24 hours at every 10 ms step would pass it and is refused before it starts. */
export const MOST_ROWS = 4_000_000;

/** Places of the values in a row: the channels in their order, then the ledger's lines, then the carrier's angle. */
const LEDGER_AT = CHANNELS.length;
const ANGLE_AT = LEDGER_AT + LEDGER_LINES.length;
const WIDTH = ANGLE_AT + 1;

const PLACE = Object.fromEntries(CHANNELS.map(({ id }, index) => [id, index])) as Record<ChannelId, number>;

/** Bytes of a row: its numbers, the flows (single precision: they are drawn), the limits' bits and the engine's mode. */
const ROW_BYTES = 8 * WIDTH + 4 * FLOWS.length + 4 + 1;

/** Rows turned into columns at a time: a block of them stays in the processor's cache. */
const BLOCK = 128;

/** What reads a log: views that are as long as the rows so far. Nobody writes into them. */
export interface LogReader {
  readonly rows: number;
  /** one channel */
  view(id: ChannelId): Float64Array;
  /** numbers of the engine's mode (sim/control/state.ts) a row */
  readonly engineMode: Uint8Array;
  /** bits of sim/limits.ts a row, gathered since the row before */
  readonly limits: Uint32Array;
  /** integrated angle of the carrier, rad */
  readonly carrierAngle: Float64Array;
  /** one line of the ledger, cumulative, J, by its index in LEDGER_LINES */
  ledgerLine(index: number): Float64Array;
  /** the flows of all rows, W, row by row in the order of FLOWS */
  readonly flows: Float32Array;
}

/** A log as plain data, to go from one thread to another: its buffers may be transferred. */
export interface LogParts {
  readonly rows: number;
  /** rows that the buffers have room for */
  readonly capacity: number;
  /** the columns one behind the other, capacity numbers each */
  readonly columns: Float64Array;
  readonly modes: Uint8Array;
  readonly masks: Uint32Array;
  readonly flows: Float32Array;
}

/** One row as plain data: what a live drive says of an instant. */
export interface LogRow {
  /** the channels in their order, the ledger's lines, the carrier's angle */
  readonly values: Float64Array;
  readonly flows: Float32Array;
  readonly mode: number;
  readonly mask: number;
}

/** Reads a log out of its parts. */
export function logReader(parts: LogParts): LogReader {
  const { rows, capacity, columns, modes, masks, flows } = parts;
  const column = (index: number): Float64Array => columns.subarray(index * capacity, index * capacity + rows);
  return {
    rows,
    view: (id) => column(PLACE[id]),
    engineMode: modes.subarray(0, rows),
    limits: masks.subarray(0, rows),
    carrierAngle: column(ANGLE_AT),
    ledgerLine: (index) => column(ledgerPlace(index)),
    flows: flows.subarray(0, rows * FLOWS.length),
  };
}

function ledgerPlace(index: number): number {
  if (!(index >= 0 && index < LEDGER_LINES.length)) throw new RangeError(`the ledger has no line ${index}`);
  return LEDGER_AT + index;
}

/**
 * The log of a run: one typed array a channel. Rows are written by the run alone; readers take `view()`s.
 * Speeds, charge and distance are the end of the step's; powers, torques, voltage and current are that last step's.
 *
 * While a run writes, rows lie one behind the other in one buffer, which is what is quickest; the first reader has them
 * turned into columns, once, and from then on rows are written into the columns.
 */
export class RunLog implements LogReader {
  rows = 0;
  private capacity: number;
  private modes: Uint8Array;
  private masks: Uint32Array;
  private powers: Float32Array;
  /** rows in order; null once there are columns */
  private written: Float64Array | null;
  private columns: Float64Array[] = [];
  private readonly row = new Float64Array(WIDTH);

  /**
   * @param rows rows expected; more are made room for when needed
   * @throws InputError above MOST_ROWS
   */
  constructor(rows: number) {
    if (rows > MOST_ROWS) {
      throw new InputError({
        what: "the log would be too long",
        where: "log",
        value: `${rows} rows`,
        accepted: `at most ${MOST_ROWS} rows: log at 10 Hz, or take a shorter cycle`,
      });
    }
    this.capacity = rows;
    this.written = new Float64Array(rows * WIDTH);
    this.masks = new Uint32Array(rows);
    this.modes = new Uint8Array(rows);
    this.powers = new Float32Array(rows * FLOWS.length);
  }

  /** Numbers of a row. */
  get width(): number {
    return WIDTH;
  }

  /** Bytes held by the log. */
  get bytes(): number {
    return this.capacity * ROW_BYTES;
  }

  /** Appends a row. */
  write(time: number, p: Prepared, s: PlantState, c: ControlState, b: Books, start: StoredAtStart): void {
    if (this.rows === this.capacity) this.grow();
    const i = this.rows;
    this.modes[i] = c.engineMode;
    this.masks[i] = s.limits;
    this.rows = i + 1;
    const to = this.written ?? this.row;
    const from = this.written === null ? 0 : i * WIDTH;
    to[from] = time;
    fillRow(to, from, p, s, c, b);
    fillLedger(to, from + LEDGER_AT, p, s, b, start);
    to[from + ANGLE_AT] = b.carrierAngle;
    fillFlows(this.powers, i * FLOWS.length, p, s);
    if (this.written === null) {
      this.columns.forEach((column, index) => {
        column[i] = realAt(to, index);
      });
    }
  }

  /** The row that would be written now, without writing it. */
  snapshot(
    time: number,
    p: Prepared,
    s: PlantState,
    c: ControlState,
    b: Books,
    start: StoredAtStart,
  ): LogRow {
    const values = new Float64Array(WIDTH);
    const flows = new Float32Array(FLOWS.length);
    values[0] = time;
    fillRow(values, 0, p, s, c, b);
    fillLedger(values, LEDGER_AT, p, s, b, start);
    values[ANGLE_AT] = b.carrierAngle;
    fillFlows(flows, 0, p, s);
    return { values, flows, mode: c.engineMode, mask: s.limits };
  }

  /** A copy of one row. */
  copyRow(index: number): LogRow {
    const values = Float64Array.from({ length: WIDTH }, (_, place) => at(this.column(place), index));
    const from = index * FLOWS.length;
    const flows = this.powers.slice(from, from + FLOWS.length);
    return { values, flows, mode: at(this.modes, index), mask: at(this.masks, index) };
  }

  /** Puts a row that came from elsewhere at a place: at most one behind the last. */
  put(index: number, row: LogRow): void {
    if (!(index >= 0 && index <= this.rows)) throw new RangeError(`no place ${index} in ${this.rows} rows`);
    if (index === this.capacity) this.grow();
    this.turn();
    this.columns.forEach((column, place) => {
      column[index] = realAt(row.values, place);
    });
    this.powers.set(row.flows, index * FLOWS.length);
    this.modes[index] = row.mode;
    this.masks[index] = row.mask;
    this.rows = Math.max(this.rows, index + 1);
  }

  /** Turns the rows written so far into columns; from then on rows go straight into them. */
  private turn(): void {
    const from = this.written;
    if (from === null) return;
    const buffer = new ArrayBuffer(8 * WIDTH * this.capacity);
    this.columns = Array.from(
      { length: WIDTH },
      (_, index) => new Float64Array(buffer, 8 * this.capacity * index, this.capacity),
    );
    for (let start = 0; start < this.rows; start += BLOCK) {
      const end = Math.min(this.rows, start + BLOCK);
      this.columns.forEach((column, index) => {
        for (let i = start; i < end; i += 1) column[i] = realAt(from, i * WIDTH + index);
      });
    }
    this.written = null;
  }

  private column(index: number): Float64Array {
    this.turn();
    return at(this.columns, index).subarray(0, this.rows);
  }

  private grow(): void {
    const next = Math.min(MOST_ROWS, Math.max(1024, this.capacity * 2));
    if (next === this.capacity) throw new RangeError(`log full at ${MOST_ROWS} rows`);
    this.capacity = next;
    if (this.written !== null) this.written = wider(this.written, next * WIDTH);
    this.columns = this.columns.map((column) => wider(column, next));
    const modes = new Uint8Array(next);
    modes.set(this.modes);
    this.modes = modes;
    const powers = new Float32Array(next * FLOWS.length);
    powers.set(this.powers);
    this.powers = powers;
    const masks = new Uint32Array(next);
    masks.set(this.masks);
    this.masks = masks;
  }

  /** One channel, as long as the rows written so far. A window, not a copy. */
  view(id: ChannelId): Float64Array {
    return this.column(PLACE[id]);
  }

  /** Numbers of the engine's mode (sim/control/state.ts) a row. */
  get engineMode(): Uint8Array {
    return this.modes.subarray(0, this.rows);
  }

  /** Bits of sim/limits.ts a row, gathered since the row before. */
  get limits(): Uint32Array {
    return this.masks.subarray(0, this.rows);
  }

  /** Integrated angle of the carrier, rad. */
  get carrierAngle(): Float64Array {
    return this.column(ANGLE_AT);
  }

  /** One line of the ledger, cumulative, J, by its index in LEDGER_LINES. */
  ledgerLine(index: number): Float64Array {
    return this.column(ledgerPlace(index));
  }

  /** The flows of all rows, W, row by row in the order of FLOWS. */
  get flows(): Float32Array {
    return this.powers.subarray(0, this.rows * FLOWS.length);
  }

  /** The log as plain data over its own buffers; whoever transfers them ends this log. */
  parts(): LogParts {
    this.turn();
    const { rows, capacity, modes, masks } = this;
    const { buffer } = at(this.columns, 0);
    const whole = buffer.byteLength === 8 * WIDTH * capacity;
    const columns = whole ? new Float64Array(buffer) : joined(this.columns, capacity);
    return { rows, capacity, columns, modes, masks, flows: this.powers };
  }
}

/** Columns that have grown apart, one behind the other again. */
function joined(columns: readonly Float64Array[], capacity: number): Float64Array {
  const all = new Float64Array(columns.length * capacity);
  columns.forEach((column, index) => {
    all.set(column, index * capacity);
  });
  return all;
}

function wider(column: Float64Array, length: number): Float64Array {
  const next = new Float64Array(length);
  next.set(column);
  return next;
}

/** Fills in the channels after the time, in their order (a test holds the order against CHANNELS). */
function fillRow(
  row: Float64Array,
  from: number,
  p: Prepared,
  s: PlantState,
  c: ControlState,
  b: Books,
): void {
  const speed = s.ringSpeed * p.metresPerRing;
  const mesh = s.meshTorque;
  const planet = p.planetInertia * (p.planetRowC * s.carrierChange + p.planetRowR * s.ringChange);
  row[from + 1] = c.target;
  row[from + 2] = speed;
  row[from + 3] = b.distance;
  row[from + 4] = c.grade;
  row[from + 5] = c.wheelForceAsk;
  row[from + 6] = c.wheelForceAsk * speed;
  row[from + 7] = s.firing;
  row[from + 8] = s.carrierSpeed;
  row[from + 9] = s.engineTorque;
  row[from + 10] = s.fuelPower + s.startFuelPower;
  row[from + 11] = b.runningFuel + b.startFuel;
  row[from + 12] = p.k1 * s.carrierSpeed - p.k * s.ringSpeed;
  row[from + 13] = s.sunTorque;
  row[from + 14] = s.sunElectric;
  row[from + 15] = p.reduction * s.ringSpeed;
  row[from + 16] = s.outputTorque;
  row[from + 17] = s.outputElectric;
  row[from + 18] = s.ringSpeed;
  row[from + 19] = mesh + s.meshLossTorque;
  row[from + 20] = p.k * mesh + p.planetRowR * planet;
  row[from + 21] = s.engineTorque - p.carrierInertia * s.carrierChange;
  row[from + 22] = s.ringHeld === 1 ? Math.abs(s.ringReaction) / p.metresPerRing : s.brakeForce;
  row[from + 23] = s.batteryPower;
  row[from + 24] = s.current;
  row[from + 25] = s.voltage;
  row[from + 26] = s.soc;
  row[from + 27] = s.auxiliaryPower;
  row[from + 28] = b.recovered;
}
