/** A run's log read from its CSV alone, without any of the product's code. */
export class Rows {
  readonly header: readonly string[];
  readonly count: number;
  private readonly values: ReadonlyMap<string, readonly number[]>;

  constructor(csv: string) {
    const [header = "", ...lines] = csv.trimEnd().split("\n");
    this.header = header.split(",");
    const cells = lines.map((line) => line.split(","));
    this.count = cells.length;
    this.values = new Map(this.header.map((name, c) => [name, cells.map((row) => Number(row[c]))]));
  }

  /** One value. Row 0 is the start. */
  at(name: string, row: number): number {
    const value = this.values.get(name)?.[row];
    if (value === undefined) throw new RangeError(`no ${name} in row ${row}`);
    return value;
  }

  /** Mean of a value over the interval that ends with a row. */
  mean(name: string, row: number): number {
    return 0.5 * (this.at(name, row - 1) + this.at(name, row));
  }

  /** Length of the interval that ends with a row, s. */
  width(row: number): number {
    return this.at("time_s", row) - this.at("time_s", row - 1);
  }

  /** Greatest of a figure over all rows from the second on. */
  greatest(of: (row: number) => number): number {
    let most = 0;
    for (let row = 1; row < this.count; row += 1) most = Math.max(most, of(row));
    return most;
  }

  /** Sum of a figure over all rows from the second on. */
  sum(of: (row: number) => number): number {
    let total = 0;
    for (let row = 1; row < this.count; row += 1) total += of(row);
    return total;
  }
}

/** The parameters of a vehicle file that the recomputation needs. */
export interface VehicleFile {
  readonly gearSet: { readonly sunTeeth: number; readonly ringTeeth: number };
  readonly sunMachine: MachineFile;
  readonly outputMachine: MachineFile & { readonly reduction: number };
  readonly battery: { readonly capacityAh: number };
}

/** Coefficients of a machine's loss. */
export interface MachineFile {
  readonly loss0: number;
  readonly loss1: number;
  readonly loss2: number;
  readonly loss3: number;
  readonly loss4: number;
}

/** Electrical power of a machine from its coefficients, W. */
export function electricPower(m: MachineFile, torque: number, speed: number): number {
  const w = Math.abs(speed);
  const loss =
    m.loss0 + m.loss1 * torque ** 2 + m.loss2 * w + m.loss3 * w ** 3 + m.loss4 * Math.abs(torque) * w;
  return torque * speed + loss;
}
