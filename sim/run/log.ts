import { InputError } from "../../shared/errors.ts";
import type { ControlState } from "../control/state.ts";
import type { Prepared } from "../drivetrain/prepared.ts";
import type { PlantState } from "../drivetrain/state.ts";
import type { Books } from "./books.ts";
import { CHANNELS, type ChannelId } from "./channels.ts";
import { LEDGER_LINES, readLedger, type StoredAtStart } from "./ledger.ts";

type Columns = Record<ChannelId, Float64Array>;

/** Most rows of one log: 24 hours at every 10 ms step would pass it and is refused before it starts. */
export const MOST_ROWS = 4_000_000;

const fresh = (rows: number): Columns =>
  Object.fromEntries(CHANNELS.map(({ id }) => [id, new Float64Array(rows)])) as Columns;

/**
 * The log of a run: one typed array a channel. Rows are written by the run alone; readers take `view()`s.
 * Speeds, charge and distance are the end of the step's; powers, torques, voltage and current are that last step's.
 */
export class RunLog {
  rows = 0;
  private capacity: number;
  private columns: Columns;
  private engineModes: Uint8Array;
  private masks: Uint32Array;
  private carrierAngles: Float64Array;
  private ledger: Float64Array[];
  private readonly line = new Float64Array(LEDGER_LINES.length);

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
    this.columns = fresh(rows);
    this.engineModes = new Uint8Array(rows);
    this.masks = new Uint32Array(rows);
    this.carrierAngles = new Float64Array(rows);
    this.ledger = LEDGER_LINES.map(() => new Float64Array(rows));
  }

  /** Bytes held by the arrays. */
  get bytes(): number {
    const row = 8 * (CHANNELS.length + LEDGER_LINES.length + 1) + 4 + 1;
    return row * this.capacity;
  }

  /** Appends a row. `torques` are the shaft torques on the gear set, their own inertia removed. */
  write(time: number, p: Prepared, s: PlantState, c: ControlState, b: Books, start: StoredAtStart): void {
    if (this.rows === this.capacity) this.grow();
    const i = this.rows;
    const to = this.columns;
    const speed = s.ringSpeed * p.metresPerRing;
    to.time[i] = time;
    to.target[i] = c.target;
    to.speed[i] = speed;
    to.distance[i] = b.distance;
    to.grade[i] = c.grade;
    to.wheelForceAsk[i] = c.wheelForceAsk;
    to.wheelPowerAsk[i] = c.wheelForceAsk * speed;
    to.engineOn[i] = s.firing;
    to.engineSpeed[i] = s.carrierSpeed;
    to.engineTorque[i] = s.engineTorque;
    to.fuelPower[i] = s.fuelPower + s.startFuelPower;
    to.fuel[i] = b.runningFuel + b.startFuel;
    to.sunMachineSpeed[i] = p.k1 * s.carrierSpeed - p.k * s.ringSpeed;
    to.sunMachineTorque[i] = s.sunTorque;
    to.sunMachineElectric[i] = s.sunElectric;
    to.outputMachineSpeed[i] = p.reduction * s.ringSpeed;
    to.outputMachineTorque[i] = s.outputTorque;
    to.outputMachineElectric[i] = s.outputElectric;
    to.ringSpeed[i] = s.ringSpeed;
    this.writeTorques(i, p, s);
    to.frictionBrake[i] = s.ringHeld === 1 ? Math.abs(s.ringReaction) / p.metresPerRing : s.brakeForce;
    to.batteryPower[i] = s.batteryPower;
    to.batteryCurrent[i] = s.current;
    to.batteryVoltage[i] = s.voltage;
    to.soc[i] = s.soc;
    to.auxiliary[i] = s.auxiliaryPower;
    to.recovered[i] = b.recovered;
    this.engineModes[i] = c.engineMode;
    this.masks[i] = s.limits;
    this.carrierAngles[i] = b.carrierAngle;
    readLedger(p, s, b, start, this.line);
    for (let j = 0; j < this.line.length; j += 1) {
      const column = this.ledger[j];
      if (column) column[i] = this.line[j] ?? 0;
    }
    this.rows = i + 1;
  }

  private writeTorques(i: number, p: Prepared, s: PlantState): void {
    const mesh = s.meshTorque;
    const planet = p.planetInertia * (p.planetRowC * s.carrierChange + p.planetRowR * s.ringChange);
    this.columns.sunTorque[i] = mesh + s.meshLossTorque;
    this.columns.ringTorque[i] = p.k * mesh + p.planetRowR * planet;
    this.columns.carrierTorque[i] = s.engineTorque - p.carrierInertia * s.carrierChange;
  }

  private grow(): void {
    const next = Math.min(MOST_ROWS, Math.max(1024, this.capacity * 2));
    if (next === this.capacity) throw new RangeError(`log full at ${MOST_ROWS} rows`);
    for (const { id } of CHANNELS) this.columns[id] = wider(this.columns[id], next);
    this.ledger = this.ledger.map((column) => wider(column, next));
    this.carrierAngles = wider(this.carrierAngles, next);
    const modes = new Uint8Array(next);
    modes.set(this.engineModes);
    this.engineModes = modes;
    const masks = new Uint32Array(next);
    masks.set(this.masks);
    this.masks = masks;
    this.capacity = next;
  }

  /** One channel, as long as the rows written so far. A window, not a copy. */
  view(id: ChannelId): Float64Array {
    return this.columns[id].subarray(0, this.rows);
  }

  /** Numbers of the engine's mode (sim/control/state.ts) a row. */
  get engineMode(): Uint8Array {
    return this.engineModes.subarray(0, this.rows);
  }

  /** Bits of sim/limits.ts a row, gathered since the row before. */
  get limits(): Uint32Array {
    return this.masks.subarray(0, this.rows);
  }

  /** Integrated angle of the carrier, rad. */
  get carrierAngle(): Float64Array {
    return this.carrierAngles.subarray(0, this.rows);
  }

  /** One line of the ledger, cumulative, J, by its index in LEDGER_LINES. */
  ledgerLine(index: number): Float64Array {
    const column = this.ledger[index];
    if (!column) throw new RangeError(`ledger has no line ${index}`);
    return column.subarray(0, this.rows);
  }
}

function wider(column: Float64Array, capacity: number): Float64Array {
  const next = new Float64Array(capacity);
  next.set(column);
  return next;
}
