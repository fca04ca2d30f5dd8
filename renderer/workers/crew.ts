import { Cancelled, Runner } from "./runner.ts";

/** One piece of work for any free worker. */
export type Piece = (runner: Runner) => Promise<void>;

/** Who hears of the work. */
export interface CrewWatch {
  /** pieces done so far, failed ones among them */
  readonly done: (count: number) => void;
  readonly failed: (error: unknown) => void;
}

/** As many workers as there are cores, each taking the next piece as soon as it is done with one. */
export class Crew {
  private runners: Runner[] = [];
  private cancelled = false;

  /**
   * Does all pieces; one call at a time.
   * @param pieces taken in their order, made one by one as they are asked for
   * @returns false when it was cancelled
   */
  async work(pieces: Iterable<Piece>, { done, failed }: CrewWatch): Promise<boolean> {
    const queue = pieces[Symbol.iterator]();
    this.cancelled = false;
    let count = 0;
    const keepBusy = async (runner: Runner): Promise<void> => {
      for (let next = queue.next(); !next.done && !this.cancelled; next = queue.next()) {
        try {
          await next.value(runner);
        } catch (error) {
          if (error instanceof Cancelled) return;
          failed(error);
        }
        count += 1;
        done(count);
      }
    };
    this.runners = Array.from({ length: Math.max(1, navigator.hardwareConcurrency) }, () => new Runner());
    await Promise.all(this.runners.map(keepBusy));
    for (const runner of this.runners) runner.end();
    this.runners = [];
    return !this.cancelled;
  }

  /** Ends what is under way; what is done stays. */
  cancel(): void {
    this.cancelled = true;
    for (const runner of this.runners) runner.cancel();
  }
}
