/** A source of repeatable draws: the same seed gives the same numbers on every machine but for the last bit of `normal`. */
export class Draws {
  private state: number;

  /** @param seed whole number */
  constructor(seed: number) {
    this.state = seed >>> 0;
  }

  /** Evenly from 0 to 1, both left out. Linear congruential, modulus 2³² (Numerical Recipes, ch. 7, from memory). */
  even(): number {
    this.state = (Math.imul(this.state, 1664525) + 1013904223) >>> 0;
    return (this.state + 0.5) / 4294967296;
  }

  /** Evenly between two numbers. */
  between(low: number, high: number): number {
    return low + (high - low) * this.even();
  }

  /** Normal with mean 0 and deviation 1, by the method of Box and Muller (1958). */
  normal(): number {
    return Math.sqrt(-2 * Math.log(this.even())) * Math.cos(2 * Math.PI * this.even());
  }
}
