import type { Remote } from "comlink";
import type { RunWorker } from "../workers/contract.ts";
import { Cancelled } from "../workers/runner.ts";

/** A piece of work for a worker; `report` hears how many runs were driven. */
export type Ask<T> = (worker: Remote<RunWorker>, report: (runs: number) => void) => Promise<T>;

/** What a desk needs of a runner. */
export interface DeskRunner {
  ask<T>(work: Ask<T>, report?: (runs: number) => void): Promise<T>;
  cancel(): void;
}

/** Time that work under way may still take when newer work waits, ms: if it ends in time, its runs are kept. */
const PATIENCE = 1500;

const nothing = (): void => undefined;

/** Hands work to one worker, a piece after the other. Of what is asked for as `newest`, only the newest counts. */
export class Desk {
  private tail: Promise<unknown> = Promise.resolve();
  private waiting = 0;
  private count = 0;

  constructor(
    private readonly runner: DeskRunner,
    private readonly patience = PATIENCE,
  ) {}

  /** After all that was asked before. @throws Cancelled; whatever the work throws */
  inTurn<T>(work: Ask<T>, report: (runs: number) => void = nothing): Promise<T> {
    this.waiting += 1;
    const mine = this.tail
      .catch(nothing)
      .then(() => this.runner.ask(work, report))
      .finally(() => {
        this.waiting -= 1;
      });
    this.tail = mine;
    return mine;
  }

  /** @returns null when newer work came, before or after this was done @throws whatever the work throws */
  async newest<T>(work: Ask<T>, report: (runs: number) => void = nothing): Promise<T | null> {
    this.count += 1;
    const mine = this.count;
    const timer = this.waiting > 0 ? setTimeout(() => this.runner.cancel(), this.patience) : undefined;
    const begin: Ask<T> = (worker, hear) => {
      clearTimeout(timer);
      if (mine !== this.count) throw new Cancelled();
      return work(worker, hear);
    };
    try {
      const found = await this.inTurn(begin, (runs) => mine === this.count && report(runs));
      return mine === this.count ? found : null;
    } catch (error) {
      if (error instanceof Cancelled) return null;
      throw error;
    } finally {
      clearTimeout(timer);
    }
  }
}
