import { constants } from "node:fs";
import { type FileHandle, open } from "node:fs/promises";
import type { InputFault } from "../../shared/errors.ts";
import { fileFault } from "./faults.ts";

/** A file's text, or why there is none. */
export type ReadText = { readonly text: string } | { readonly fault: InputFault };

/**
 * Reads a text file.
 * @param path full path
 * @param limit largest size, bytes
 */
export async function readText(path: string, limit: number): Promise<ReadText> {
  let handle: FileHandle | undefined;
  try {
    // Without waiting: a named pipe with no writer would hold the program up for ever.
    handle = await open(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
    const entry = await handle.stat();
    if (!entry.isFile())
      return refuse(path, "This is no file.", entry.isDirectory() ? "a folder" : "a device");
    if (entry.size > limit) return tooLarge(path, entry.size, limit);
    const bytes = await readAtMost(handle, limit + 1);
    // It may have grown meanwhile.
    if (bytes.length > limit) return tooLarge(path, bytes.length, limit);
    return decode(bytes, path);
  } catch (error) {
    return { fault: fileFault(error, "read", path) };
  } finally {
    await handle?.close();
  }
}

async function readAtMost(handle: FileHandle, most: number): Promise<Buffer> {
  const parts: Buffer[] = [];
  let total = 0;
  while (total < most) {
    const part = Buffer.allocUnsafe(Math.min(1024 * 1024, most - total));
    const { bytesRead } = await handle.read(part, 0, part.length, null);
    if (bytesRead === 0) break;
    parts.push(part.subarray(0, bytesRead));
    total += bytesRead;
  }
  return Buffer.concat(parts, total);
}

function decode(bytes: Buffer, path: string): ReadText {
  try {
    return { text: new TextDecoder("utf-8", { fatal: true }).decode(bytes) };
  } catch {
    return refuse(path, "The file is not text.", "bytes that are no UTF-8");
  }
}

const refuse = (where: string, what: string, value: string): ReadText => ({
  fault: { what, where, value, accepted: "a text file in UTF-8" },
});

const tooLarge = (where: string, size: number, limit: number): ReadText => ({
  fault: {
    what: "The file is too large.",
    where,
    value: `${size} bytes`,
    accepted: `${limit} bytes or less`,
  },
});
