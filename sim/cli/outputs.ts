import {
  accessSync,
  closeSync,
  constants,
  fchmodSync,
  fsyncSync,
  lstatSync,
  openSync,
  realpathSync,
  renameSync,
  rmSync,
  type Stats,
  statSync,
  writeSync,
} from "node:fs";
import { basename, dirname, join, resolve } from "node:path";
import { InputError } from "../../shared/errors.ts";
import { fileError } from "./system-faults.ts";

/** One file that a command writes. */
export interface Output {
  /** The option that named it, for messages. */
  readonly where: string;
  readonly path: string;
  /** Its text in pieces, so that a long log is never one string. */
  readonly pieces: () => Iterable<string>;
}

/** Where an output really goes. */
interface Target {
  readonly where: string;
  readonly path: string;
  /** Written to this name first; the path itself for a device or a pipe, which cannot be replaced. */
  readonly temporary: string;
  /** Mode of the file that is replaced; null when there is none. */
  readonly mode: number | null;
}

let count = 0;

/**
 * Looks at the targets before any work is done, so that nobody waits for a run that cannot be stored.
 * @param inputs files that must not be overwritten
 * @throws InputError with one fault for each target that cannot be written
 */
export function checkTargets(outputs: readonly Omit<Output, "pieces">[], inputs: readonly string[]): void {
  const taken = new Map(inputs.map((path) => [realPath(path), "the input"]));
  const faults = outputs.flatMap(({ where, path }) => {
    try {
      const target = findTarget(where, path);
      const other = taken.get(target.path);
      taken.set(target.path, `the file of ${where}`);
      if (other === undefined || isDirect(target)) return [];
      return [{ what: `this would overwrite ${other}`, where, value: path, accepted: "a file of its own" }];
    } catch (error) {
      if (error instanceof InputError) return error.faults;
      throw error;
    }
  });
  if (faults.length > 0) throw new InputError(faults);
}

/**
 * Writes all outputs of a command or none: each to a temporary name beside its target, then all are renamed. On any
 * failure, and when interrupted, the temporary files are removed and the files that were there stay as they were.
 * @param check called between pieces; throws to stop
 * @throws InputError saying what is wrong with the target, or what `check` throws
 */
export function writeAll(outputs: readonly Output[], check: () => void): void {
  const jobs = outputs.map((output) => ({ output, target: findTarget(output.where, output.path) }));
  // Devices and pipes cannot be taken back, so they come after everything that can.
  jobs.sort((a, b) => Number(isDirect(a.target)) - Number(isDirect(b.target)));
  const made: Target[] = [];
  try {
    for (const { output, target } of jobs) {
      if (!isDirect(target)) made.push(target);
      writeOne(output, target, check);
    }
    check();
    for (const target of [...made]) {
      rename(target);
      made.shift();
    }
  } finally {
    for (const target of made) rmSync(target.temporary, { force: true });
  }
}

const isDirect = (target: Target): boolean => target.temporary === target.path;

function writeOne(output: Output, target: Target, check: () => void): void {
  let file: number | undefined;
  try {
    file = openSync(target.temporary, isDirect(target) ? "w" : "wx");
    if (target.mode !== null && !isDirect(target)) fchmodSync(file, target.mode);
    for (const piece of output.pieces()) {
      check();
      writePiece(file, piece);
    }
    if (!isDirect(target)) fsyncSync(file);
  } catch (error) {
    throw isSystem(error) ? fileError(error, output.where, output.path) : error;
  } finally {
    if (file !== undefined) closeSync(file);
  }
}

/** Writes all of a piece: one call may take only a part of it. */
function writePiece(file: number, piece: string): void {
  const bytes = Buffer.from(piece, "utf8");
  for (let done = 0; done < bytes.length; ) done += writeSync(file, bytes, done);
}

function rename(target: Target): void {
  try {
    renameSync(target.temporary, target.path);
  } catch (error) {
    throw fileError(error, target.where, target.path);
  }
}

const isSystem = (error: unknown): boolean => error instanceof Error && "syscall" in error;

/** The path with links resolved as far as it exists. */
function realPath(path: string): string {
  try {
    return realpathSync(path);
  } catch {
    return resolve(path);
  }
}

/** @throws InputError when the target is a folder, write-protected, or in no folder that can be written to */
function findTarget(where: string, path: string): Target {
  try {
    return lookAt(where, path);
  } catch (error) {
    throw fileError(error, where, path);
  }
}

function lookAt(where: string, path: string): Target {
  const old = statSync(path, { throwIfNoEntry: false });
  const refuse = (what: string, accepted: string): never => {
    throw new InputError({ what, where, value: path, accepted });
  };
  if (path.endsWith("/") || old?.isDirectory()) return refuse("this is a folder", "a file");
  if (!old && lstatSync(path, { throwIfNoEntry: false })) return refuse("this link leads nowhere", "a file");
  if (old && !old.isFile()) return { where, path, temporary: path, mode: null };
  return fileTarget(where, old ? realpathSync(path) : resolve(path), old);
}

function fileTarget(where: string, path: string, old: Stats | undefined): Target {
  if (old) accessSync(path, constants.W_OK);
  const folder = realpathSync(dirname(path));
  if (!statSync(folder).isDirectory()) throw Object.assign(new Error("no folder"), { code: "ENOTDIR" });
  accessSync(folder, constants.W_OK);
  count += 1;
  const name = basename(path);
  const temporary = join(folder, `.${name.slice(0, 80)}.${process.pid}-${count}.tmp`);
  return { where, path: join(folder, name), temporary, mode: old ? old.mode & 0o7777 : null };
}
