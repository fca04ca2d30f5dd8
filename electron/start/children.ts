import { type ChildProcess, spawn } from "node:child_process";

/** How a program ended. */
export interface Ended {
  /** Null when it was stopped from outside or never started. */
  readonly code: number | null;
  /** s it ran */
  readonly seconds: number;
}

/**
 * Runs a program until it ends or is told to stop.
 * @param talks whether it may write to our terminal
 * @param stop told once; the program is then asked to end
 */
export function run(
  binary: string,
  words: readonly string[],
  talks: boolean,
  stop: AbortSignal,
): Promise<Ended> {
  const began = performance.now();
  return new Promise((resolve) => {
    const child: ChildProcess = spawn(binary, words, { stdio: talks ? "inherit" : "ignore" });
    const end = (): void => {
      child.kill();
    };
    const finish = (code: number | null): void => {
      stop.removeEventListener("abort", end);
      resolve({ code, seconds: (performance.now() - began) / 1000 });
    };
    child.once("error", () => finish(null));
    child.once("exit", finish);
    stop.addEventListener("abort", end, { once: true });
    if (stop.aborted) end();
  });
}
