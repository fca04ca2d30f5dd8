import { fileURLToPath } from "node:url";
import { type MessagePort, Worker, workerData } from "node:worker_threads";
import { type Around, EXIT } from "./around.ts";
import { progressLine } from "./progress.ts";

/**
 * Long work is done in a thread of its own, so that this one hears Ctrl-C and shows progress while the simulation,
 * which never waits, computes.
 */

/** What the working thread is given. */
interface Order {
  readonly job: "trishaft command line";
  readonly words: readonly string[];
  readonly start: string;
  /** One number in shared memory: 1 once the user has asked to stop. */
  readonly stop: SharedArrayBuffer;
}

/** What it says. */
type Message =
  | { readonly kind: "out" | "note"; readonly text: string }
  | { readonly kind: "progress"; readonly what: string; readonly share: number }
  | { readonly kind: "end"; readonly code: number };

/** How long an interrupted command may take to clean up, ms. */
const PATIENCE = 10_000;

const orderOf = (data: unknown): Order | null =>
  typeof data === "object" && data !== null && "job" in data && data.job === "trishaft command line"
    ? (data as Order)
    : null;

/** True in a thread that `workBeside` has started. */
export const isOurs = (): boolean => orderOf(workerData) !== null;

/** Runs a command in a thread of its own. @returns exit code */
export function workBeside(words: readonly string[], start: string): Promise<number> {
  const stop = new SharedArrayBuffer(4);
  const order: Order = { job: "trishaft command line", words, start, stop };
  const worker = new Worker(fileURLToPath(import.meta.url), { workerData: order });
  const progress = progressLine();
  listenToStop(new Int32Array(stop));
  return new Promise((resolve) => {
    let code: number = EXIT.programFault;
    worker.on("message", (message: Message) => {
      if (message.kind === "progress") return progress.show(message.what, message.share);
      progress.clear();
      if (message.kind === "out") process.stdout.write(message.text);
      if (message.kind === "note") process.stderr.write(message.text);
      if (message.kind === "end") code = message.code;
    });
    worker.on("error", (error) => {
      progress.clear();
      process.stderr.write(
        `This is a fault of the program, not of the input:\n${error.stack ?? error.message}\n`,
      );
    });
    worker.on("exit", () => resolve(code));
  });
}

/** The first signal asks the work to stop and clean up; the second ends at once. */
function listenToStop(stop: Int32Array): void {
  const ask = (): void => {
    if (Atomics.exchange(stop, 0, 1) === 1) process.exit(EXIT.interrupted);
    setTimeout(() => process.exit(EXIT.interrupted), PATIENCE).unref();
  };
  process.on("SIGINT", ask);
  process.on("SIGTERM", ask);
}

/** Does the order of this thread and says how it ended. */
export async function serve(
  port: MessagePort,
  execute: (words: readonly string[], around: Around) => Promise<number>,
): Promise<void> {
  const order = orderOf(workerData);
  if (!order) throw new Error("no order for this thread");
  const stop = new Int32Array(order.stop);
  const say = (message: Message): void => port.postMessage(message);
  const code = await execute(order.words, {
    out: (text) => say({ kind: "out", text }),
    note: (text) => say({ kind: "note", text }),
    progress: (what, share) => say({ kind: "progress", what, share }),
    cancelled: () => Atomics.load(stop, 0) === 1,
    start: order.start,
  });
  say({ kind: "end", code });
}
