import { availableParallelism } from "node:os";
import { fileURLToPath } from "node:url";
import { isMainThread, type MessagePort, parentPort, Worker, workerData } from "node:worker_threads";
import type { Progress } from "../run/simulate.ts";
import type { SweepJob } from "../study/sweep/plan.ts";
import { runSweepJob, type SweepRow } from "../study/sweep/run-sweep-job.ts";
import { makeStrategy } from "./strategy-choice.ts";

/**
 * Many runs over all cores: threads that each take the next run as soon as they are done with one. What comes back
 * does not depend on how many there are.
 */

/** What a thread of the pool is given. */
interface Order {
  readonly job: "trishaft pool";
  /** One number in shared memory: 1 once the work is to stop. */
  readonly stop: SharedArrayBuffer;
}

/** What it says: a run is done, or was left off because the work is to stop. */
interface Reply {
  readonly row: SweepRow | null;
}

/** ms between two looks at whether the user has asked to stop. */
const LOOK_EVERY = 50;

/** How many threads run at once when nothing else is asked. */
export const coreCount = (): number => availableParallelism();

const orderOf = (data: unknown): Order | null =>
  typeof data === "object" && data !== null && "job" in data && data.job === "trishaft pool"
    ? (data as Order)
    : null;

/** Does one run, in whatever thread. */
async function doJob(job: SweepJob, progress: Progress): Promise<SweepRow> {
  const wanted = job.job?.strategy;
  const own = wanted?.kind === "own" ? await makeStrategy(wanted) : null;
  try {
    return runSweepJob(job, progress, own);
  } finally {
    own?.close?.();
  }
}

/** Does the runs that come to this thread. */
function serve(port: MessagePort, order: Order): void {
  const stop = new Int32Array(order.stop);
  const cancelled = (): boolean => Atomics.load(stop, 0) === 1;
  port.on("message", async (job: SweepJob) => {
    const row = cancelled() ? null : await doJob(job, { cancelled });
    // A run that was stopped half way is no result.
    port.postMessage({ row: cancelled() ? null : row } satisfies Reply);
  });
}

/** How many runs are done at once, who hears of each, and who may stop them. */
export interface PoolWatch {
  readonly threads: number;
  readonly done: (row: SweepRow) => void;
  readonly cancelled: () => boolean;
}

/**
 * Does all runs over several threads. When stopped, the runs under way are left off and those done remain.
 * @throws whatever is a fault of the program in a thread
 */
export async function doAll(jobs: Iterable<SweepJob>, watch: PoolWatch): Promise<void> {
  const order: Order = { job: "trishaft pool", stop: new SharedArrayBuffer(4) };
  const stop = new Int32Array(order.stop);
  const queue = jobs[Symbol.iterator]();
  const looking = setInterval(() => {
    if (watch.cancelled()) Atomics.store(stop, 0, 1);
  }, LOOK_EVERY);
  const workers = Array.from(
    { length: watch.threads },
    () => new Worker(fileURLToPath(import.meta.url), { workerData: order }),
  );
  try {
    await Promise.all(workers.map((worker) => keepBusy(worker, queue, watch)));
  } finally {
    clearInterval(looking);
    await Promise.all(workers.map((worker) => worker.terminate()));
  }
}

/** Gives a thread one run after the other until there are none or the work is to stop. */
function keepBusy(worker: Worker, queue: Iterator<SweepJob>, watch: PoolWatch): Promise<void> {
  return new Promise((resolve, reject) => {
    const next = (): void => {
      const { value, done } = queue.next();
      if (done === true || watch.cancelled()) resolve();
      else worker.postMessage(value);
    };
    worker.on("message", ({ row }: Reply) => {
      if (row) watch.done(row);
      next();
    });
    worker.on("error", reject);
    worker.on("exit", () => reject(new Error("a thread of the pool ended by itself")));
    next();
  });
}

const order = orderOf(workerData);
if (!isMainThread && parentPort && order) serve(parentPort, order);
