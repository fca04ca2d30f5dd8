/** A list of numbers that grows in large steps: bodies have hundreds of thousands, and plain lists are slow at that. */
export class Numbers {
  /** Room; only the first {@link length} numbers count. */
  values: Float64Array;
  length = 0;

  constructor(room = 48) {
    this.values = new Float64Array(room);
  }

  /** Makes the list longer and gives the index of the first new number, which is 0 until it is written. */
  grow(by: number): number {
    const start = this.length;
    if (start + by > this.values.length) this.widen(Math.max(start + by, 2 * this.values.length));
    this.length = start + by;
    return start;
  }

  /** Makes room for so many more at once. */
  reserve(more: number): void {
    if (this.length + more > this.values.length) this.widen(this.length + more);
  }

  private widen(room: number): void {
    const wider = new Float64Array(room);
    wider.set(this.all());
    this.values = wider;
  }

  /** Adds three. */
  push(a: number, b: number, c: number): void {
    const i = this.grow(3);
    const { values } = this;
    values[i] = a;
    values[i + 1] = b;
    values[i + 2] = c;
  }

  /** The numbers that count. */
  all(): Float64Array {
    return this.values.subarray(0, this.length);
  }
}
