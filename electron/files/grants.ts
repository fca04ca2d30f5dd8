import { createHash, randomUUID } from "node:crypto";
import { basename, dirname } from "node:path";
import type { FileRef } from "../../shared/bridge.ts";

/**
 * Files that a person chose since the program started. The page knows them by ids made here, so that it can name no
 * other file.
 */
export class Grants {
  private readonly paths = new Map<string, string>();
  private readonly ids = new Map<string, string>();
  private readonly seen = new Map<string, string>();

  /** The same id each time for a path. @param path full path */
  grant(path: string): FileRef {
    const id = this.ids.get(path) ?? randomUUID();
    this.ids.set(path, id);
    this.paths.set(id, path);
    return { id, name: basename(path), folder: dirname(path) };
  }

  /** Full path behind an id; undefined for one that was never given out. */
  pathOf(id: string): string | undefined {
    return this.paths.get(id);
  }

  /** Notes what a file held when it was last read or written here. */
  see(path: string, text: string): void {
    this.seen.set(path, digest(text));
  }

  /** Whether a text is what the file held when it was last read or written here. */
  isAsSeen(path: string, text: string): boolean {
    return this.seen.get(path) === digest(text);
  }
}

const digest = (text: string): string => createHash("sha256").update(text).digest("base64");
