import type { FileKind, FileRef } from "../../shared/bridge.ts";
import type { BrowserWindow, FileHandle, PickedFile, PickerOptions } from "./browserWindow.ts";
import { isCancel, isGone } from "./faults.ts";

/** A file of this visit: with a handle it can be written in place, without it only read again or downloaded anew. */
export interface KnownFile {
  readonly name: string;
  /** The content, read anew. */
  read(): Promise<PickedFile>;
  readonly handle: FileHandle | null;
}

/** Files a person chose in this visit, under ids as the bridge gives them out. */
export class KnownFiles {
  private readonly files = new Map<string, KnownFile>();
  private readonly seen = new Map<string, string>();
  private recent: string[] = [];
  private next = 1;

  add(file: KnownFile): FileRef {
    const id = `file-${this.next}`;
    this.next += 1;
    this.files.set(id, file);
    return this.remember(id, file);
  }

  get(id: string): KnownFile | undefined {
    return this.files.get(id);
  }

  /** Puts what is known of a file anew, and the file at the head of the recent ones. */
  remember(id: string, file: KnownFile): FileRef {
    this.files.set(id, file);
    this.recent = [id, ...this.recent.filter((other) => other !== id)].slice(0, 10);
    return { id, name: file.name, folder: "" };
  }

  /** Takes a file off the recent ones; its id stays good. */
  forget(id: string): void {
    this.recent = this.recent.filter((other) => other !== id);
  }

  isRecent(id: string): boolean {
    return this.recent.includes(id);
  }

  /** Notes what a file held when it was last read or written here. */
  async see(id: string, content: Blob): Promise<void> {
    this.seen.set(id, await digest(new Uint8Array(await content.arrayBuffer())));
  }

  /** Whether a file holds what it held then; one that is gone counts as such: it is written anew. */
  async isAsSeen(id: string, file: KnownFile): Promise<boolean> {
    try {
      const bytes = new Uint8Array(await (await file.read()).arrayBuffer());
      return this.seen.get(id) === (await digest(withoutMark(bytes)));
    } catch (error) {
      if (isGone(error)) return true;
      throw error;
    }
  }

  /** Newest first. */
  recentRefs(): FileRef[] {
    return this.recent.map((id) => ({ id, name: this.files.get(id)?.name ?? "", folder: "" }));
  }

  /** The id of a file chosen again; undefined for a new one. */
  async idOf(handle: FileHandle): Promise<string | undefined> {
    for (const [id, known] of this.files) {
      if (known.handle && (await known.handle.isSameEntry(handle))) return id;
    }
    return undefined;
  }
}

async function digest(content: Uint8Array<ArrayBuffer>): Promise<string> {
  return new Uint8Array(await crypto.subtle.digest("SHA-256", content)).join();
}

const MARK = [0xef, 0xbb, 0xbf];

/** The bytes as they were read as text: a byte-order mark is no part of it. */
const withoutMark = (bytes: Uint8Array<ArrayBuffer>): Uint8Array<ArrayBuffer> =>
  MARK.every((byte, i) => bytes[i] === byte) ? bytes.subarray(MARK.length) : bytes;

/** Lets a person choose a file. @returns null when they think better of it */
export async function pickOpen(page: BrowserWindow, kinds: readonly FileKind[]): Promise<KnownFile | null> {
  if (!page.showOpenFilePicker) return upload(page, kinds);
  try {
    const [handle] = await page.showOpenFilePicker(pickerOptions(kinds));
    return handle ? withHandle(handle) : null;
  } catch (error) {
    if (isCancel(error)) return null;
    throw error;
  }
}

/** A file with its handle. */
export const withHandle = (handle: FileHandle): KnownFile => ({
  name: handle.name,
  read: () => handle.getFile(),
  handle,
});

/** A file whose content the page holds itself. */
export const withContent = (name: string, content: Blob): KnownFile => ({
  name,
  read: async () => ({ name, size: content.size, arrayBuffer: () => content.arrayBuffer() }),
  handle: null,
});

function upload(page: BrowserWindow, kinds: readonly FileKind[]): Promise<KnownFile | null> {
  const input = page.document.createElement("input");
  input.type = "file";
  input.accept = endingsOf(kinds).join(",");
  return new Promise((resolve) => {
    input.addEventListener("cancel", () => resolve(null));
    input.addEventListener("change", () => {
      const file = input.files?.[0];
      resolve(file ? { name: file.name, read: async () => file, handle: null } : null);
    });
    input.click();
  });
}

/** What `pickSave` came to; "download" where the browser has no window for it. */
export type SaveChoice = FileHandle | "cancelled" | "download";

/** Lets a person choose where to write. */
export async function pickSave(
  page: BrowserWindow,
  suggestedName: string,
  kinds: readonly FileKind[],
): Promise<SaveChoice> {
  if (!page.showSaveFilePicker) return "download";
  try {
    return await page.showSaveFilePicker({ ...pickerOptions(kinds), suggestedName });
  } catch (error) {
    if (isCancel(error)) return "cancelled";
    throw error;
  }
}

/** Writes a whole file; when that fails half way, it stays as it was. */
export async function writeTo(handle: FileHandle, content: Blob): Promise<void> {
  const writable = await handle.createWritable();
  try {
    await writable.write(content);
    await writable.close();
  } catch (error) {
    await writable.abort().catch(() => {});
    throw error;
  }
}

/** Hands a file to the browser's downloads. */
export function download(page: BrowserWindow, name: string, content: Blob): void {
  const link = page.document.createElement("a");
  link.href = page.URL.createObjectURL(content);
  link.download = name;
  link.click();
  // The browser reads it after the click.
  page.setTimeout(() => page.URL.revokeObjectURL(link.href), 60_000);
}

const endingsOf = (kinds: readonly FileKind[]): string[] => [
  ...new Set(kinds.flatMap((kind) => kind.extensions).map((extension) => `.${lastPart(extension)}`)),
];

const lastPart = (extension: string): string => extension.split(".").at(-1) ?? extension;

const pickerOptions = (kinds: readonly FileKind[]): PickerOptions => ({
  types: kinds.map((kind) => ({
    description: kind.title,
    // Both endings, as pickers look at the last part only.
    accept: { [kind.mime]: [...new Set(kind.extensions.flatMap((one) => [`.${one}`, `.${lastPart(one)}`]))] },
  })),
});
