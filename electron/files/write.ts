import { randomUUID } from "node:crypto";
import { chmod, type FileHandle, open, realpath, rename, rm, stat } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import type { InputFault } from "../../shared/errors.ts";
import { codeOf, fileFault } from "./faults.ts";

/** Opens the temporary file; tests put a failing disk here. */
export type OpenNew = (path: string) => Promise<Pick<FileHandle, "writeFile" | "sync" | "close">>;

const openNew: OpenNew = (path) => open(path, "wx", 0o666);

/**
 * Writes a whole file: beside it under a temporary name, down to the drive, then renamed, so that at any moment the
 * name holds either the old or the new content.
 * @param path full path; a link is followed, so that it stays a link
 * @returns what went wrong, or null. After a fault the old file is untouched and nothing is left beside it.
 */
export async function writeWhole(
  path: string,
  content: string | Uint8Array,
  openTemporary: OpenNew = openNew,
): Promise<InputFault | null> {
  let beside: string | null = null;
  try {
    const target = await linkTarget(path);
    beside = join(dirname(target), `.${basename(target).slice(0, 80)}.${randomUUID()}.tmp`);
    await writeDown(await openTemporary(beside), content);
    await keepMode(target, beside);
    await rename(beside, target);
    beside = null;
    await syncFolder(dirname(target));
    return null;
  } catch (error) {
    return fileFault(error, "write", path);
  } finally {
    if (beside !== null) await rm(beside, { force: true }).catch(() => {});
  }
}

async function writeDown(file: Awaited<ReturnType<OpenNew>>, content: string | Uint8Array): Promise<void> {
  try {
    await file.writeFile(content);
    await file.sync();
  } finally {
    await file.close();
  }
}

async function linkTarget(path: string): Promise<string> {
  try {
    return await realpath(path);
  } catch (error) {
    if (codeOf(error) === "ENOENT") return path;
    throw error;
  }
}

/** A file that was there keeps who may read and write it; one that may not be written is not replaced. */
async function keepMode(target: string, beside: string): Promise<void> {
  const old = await stat(target).catch(() => null);
  if (!old) return;
  if (!old.isFile()) throw Object.assign(new Error("no file"), { code: "EISDIR" });
  if ((old.mode & 0o222) === 0) throw Object.assign(new Error("read only"), { code: "EACCES" });
  await chmod(beside, old.mode & 0o777);
}

/** Makes the rename last through a power cut, where folders can be synced at all. */
async function syncFolder(path: string): Promise<void> {
  try {
    const folder = await open(path, "r");
    await folder.sync().finally(() => folder.close());
  } catch {
    // Windows and some network drives cannot; the file itself is safe.
  }
}
