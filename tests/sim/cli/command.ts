import { type SpawnSyncReturns, spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll } from "vitest";

/** The script that a person starts. */
export const START = join(import.meta.dirname, "..", "..", "..", "sim", "cli", "start.mjs");

/** Runs the command line in a folder and waits for it. */
export function command(folder: string, ...args: string[]): SpawnSyncReturns<string> {
  return spawnSync(process.execPath, [START, ...args], { cwd: folder, encoding: "utf8", maxBuffer: 1 << 28 });
}

/** Runs the command line and returns its stdout; throws when it does not end well. */
export function succeed(folder: string, ...args: string[]): string {
  const done = command(folder, ...args);
  if (done.status !== 0) throw new Error(`${args.join(" ")} ended with ${done.status}:\n${done.stderr}`);
  return done.stdout;
}

const folders: string[] = [];
// Once a test file, when it is loaded: a hook asked for from within a test would never run.
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

/** A temporary folder that goes when the test file is done. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), "trishaft-cli-"));
  folders.push(folder);
  return folder;
}

/** Text of a file in a folder. */
export const textIn = (folder: string, name: string): string => readFileSync(join(folder, name), "utf8");

/** Names of all files in a folder, hidden ones too. */
export const namesIn = (folder: string): string[] => readdirSync(folder).sort();
