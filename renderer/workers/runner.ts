import { proxy, type Remote, wrap } from "comlink";
import type { RunWorker } from "./contract.ts";

/** Work was given up because the person asked for it, or because newer work came. */
export class Cancelled extends Error {
  constructor() {
    super("cancelled");
    this.name = "Cancelled";
  }
}

/** Starts the worker of runs and balances. */
const runWorker = (): Worker => new Worker(new URL("./run.worker.ts", import.meta.url), { type: "module" });

/**
 * Does one piece of long work after the other in a worker. A piece that is under way can only be stopped by ending its
 * worker; the next piece starts a new one.
 */
export class Runner<Work = RunWorker> {
  private readonly make: () => Worker;
  private worker: Worker | null = null;
  private remote: Remote<Work> | null = null;
  private giveUp: ((why: Error) => void) | null = null;

  /** @param make starts a worker that exposes `Work`; the one of runs where it is left out */
  constructor(make: () => Worker = runWorker) {
    this.make = make;
  }

  private start(): Remote<Work> {
    if (this.remote) return this.remote;
    this.worker = this.make();
    // A worker whose script cannot be loaded never answers: whoever waits must hear of it.
    this.worker.addEventListener("error", ({ message }) => {
      const giveUp = this.giveUp;
      this.end();
      giveUp?.(new Error(message || "the worker could not be started"));
    });
    this.remote = wrap<Work>(this.worker);
    return this.remote;
  }

  /** Starts the worker before it is needed, so that the first run does not wait for it. */
  warm(): void {
    this.start();
  }

  /**
   * @param work what to ask of the worker; `report` hears the share done, 0–1
   * @throws Cancelled; whatever the worker throws
   */
  async ask<T>(
    work: (worker: Remote<Work>, report: (share: number) => void) => Promise<T>,
    report: (share: number) => void = () => undefined,
  ): Promise<T> {
    const remote = this.start();
    const cancelled = new Promise<never>((_, reject) => {
      this.giveUp = reject;
    });
    try {
      return await Promise.race([work(remote, proxy(report)), cancelled]);
    } finally {
      this.giveUp = null;
    }
  }

  /** Lets the worker go; nothing may be under way. */
  end(): void {
    this.worker?.terminate();
    this.worker = null;
    this.remote = null;
  }

  /** Ends what is under way, if anything is. */
  cancel(): void {
    const giveUp = this.giveUp;
    if (!giveUp) return;
    this.end();
    giveUp(new Cancelled());
  }
}
