import { InputError } from "../../shared/errors.ts";
import type { ControlState } from "../control/state.ts";
import type { Prepared } from "../drivetrain/prepared.ts";
import type { PlantState } from "../drivetrain/state.ts";
import type { Books } from "./books.ts";
import { CHANNELS, type ChannelId } from "./channels.ts";
import { LEDGER_LINES, type StoredAtStart, writeLedger } from "./ledger.ts";

/** Most rows of one log: 24 hours at every 10 ms step would pass it and is refused before it starts. */
export const MOST_ROWS = 4_000_000;

/** The columns of a log: windows into one buffer, so that a log is allocated, moved to a worker and freed at once. */
class Columns {
  readonly channel: Record<ChannelId, Float64Array>;
  readonly ledger: readonly Float64Array[];
  readonly carrierAngle: Float64Array;
  readonly engineMode: Uint8Array;
  readonly limits: Uint32Array;
  readonly buffer: ArrayBuffer;

  constructor(readonly rows: number) {
    const wide = CHANNELS.length + LEDGER_LINES.length + 1;
    this.buffer = new ArrayBuffer(rows * (8 * wide + 4 + 1));
    let place = 0;
    const next = (): Float64Array => {
      const column = new Float64Array(this.buffer, place, rows);
      place += 8 * rows;
      return column;
    };
    this.channel = Object.fromEntries(CHANNELS.map(({ id }) => [id, next()])) as Record<
      ChannelId,
      Float64Array
    >;
    this.ledger = LEDGER_LINES.map(next);
    this.carrierAngle = next();
    this.limits = new Uint32Array(this.buffer, place, rows);
    this.engineMode = new Uint8Array(this.buffer, place + 4 * rows, rows);
  }

  /** Takes over the rows of a smaller set. */
  copy(from: Columns): void {
    for (const { id } of CHANNELS) this.channel[id].set(from.channel[id]);
    from.ledger.forEach((column, index) => {
      this.ledger[index]?.set(column);
    });
    this.carrierAngle.set(from.carrierAngle);
    this.engineMode.set(from.engineMode);
    this.limits.set(from.limits);
  }
}

/**
 * The log of a run: one typed array a channel. Rows are written by the run alone; readers take `view()`s.
 * Speeds, charge and distance are the end of the step's; powers, torques, voltage and current are that last step's.
 */
export class RunLog {
  rows = 0;
  private columns: Columns;

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
    this.columns = new Columns(rows);
  }

  /** Bytes held by the log. */
  get bytes(): number {
    return this.columns.buffer.byteLength;
  }

  /** Appends a row. `torques` are the shaft torques on the gear set, their own inertia removed. */
  write(time: number, p: Prepared, s: PlantState, c: ControlState, b: Books, start: StoredAtStart): void {
    if (this.rows === this.columns.rows) this.grow();
    const i = this.rows;
    const to = this.columns.channel;
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
    this.columns.engineMode[i] = c.engineMode;
    this.columns.limits[i] = s.limits;
    this.columns.carrierAngle[i] = b.carrierAngle;
    writeLedger(p, s, b, start, this.columns.ledger, i);
    this.rows = i + 1;
  }

  private writeTorques(i: number, p: Prepared, s: PlantState): void {
    const to = this.columns.channel;
    const mesh = s.meshTorque;
    const planet = p.planetInertia * (p.planetRowC * s.carrierChange + p.planetRowR * s.ringChange);
    to.sunTorque[i] = mesh + s.meshLossTorque;
    to.ringTorque[i] = p.k * mesh + p.planetRowR * planet;
    to.carrierTorque[i] = s.engineTorque - p.carrierInertia * s.carrierChange;
  }

  private grow(): void {
    const next = new Columns(Math.min(MOST_ROWS, Math.max(1024, this.columns.rows * 2)));
    if (next.rows === this.columns.rows) throw new RangeError(`log full at ${MOST_ROWS} rows`);
    next.copy(this.columns);
    this.columns = next;
  }

  /** One channel, as long as the rows written so far. A window, not a copy. */
  view(id: ChannelId): Float64Array {
    return this.columns.channel[id].subarray(0, this.rows);
  }

  /** Numbers of the engine's mode (sim/control/state.ts) a row. */
  get engineMode(): Uint8Array {
    return this.columns.engineMode.subarray(0, this.rows);
  }

  /** Bits of sim/limits.ts a row, gathered since the row before. */
  get limits(): Uint32Array {
    return this.columns.limits.subarray(0, this.rows);
  }

  /** Integrated angle of the carrier, rad. */
  get carrierAngle(): Float64Array {
    return this.columns.carrierAngle.subarray(0, this.rows);
  }

  /** One line of the ledger, cumulative, J, by its index in LEDGER_LINES. */
  ledgerLine(index: number): Float64Array {
    const column = this.columns.ledger[index];
    if (!column) throw new RangeError(`ledger has no line ${index}`);
    return column.subarray(0, this.rows);
  }
}
