import {
  changedElsewhere,
  type DesktopBridge,
  type ExportRequest,
  type FileKind,
  type FileRef,
  MAX_EXPORT_BYTES,
  MAX_PROJECT_BYTES,
  type OpenedFile,
  PROJECT_KIND,
  type Result,
  type WindowInfo,
  type WrittenFile,
} from "../../shared/bridge.ts";
import type { InputFault } from "../../shared/errors.ts";
import type { BrowserWindow } from "./browserWindow.ts";
import { browserFault, strange, tooLarge } from "./faults.ts";
import {
  download,
  type KnownFile,
  KnownFiles,
  pickOpen,
  pickSave,
  withContent,
  withHandle,
  writeTo,
} from "./files.ts";
import { hasCommandKey, listenToKeys } from "./keys.ts";

const CANCELLED = { status: "cancelled" } as const;
const ok = <T>(value: T): Result<T> => ({ status: "ok", value });
const failed = (fault: InputFault): { status: "failed"; fault: InputFault } => ({ status: "failed", fault });

/** Does something with a file; what the browser refuses becomes a fault. */
async function attempt<T>(where: string, action: () => Promise<Result<T>>): Promise<Result<T>> {
  try {
    return await action();
  } catch (error) {
    return failed(browserFault(error, where));
  }
}

/**
 * The bridge with what browsers have: files through File System Access where it is there, else uploads and downloads.
 * @param page the browser's window
 * @param version of the program
 */
export function browserBridge(page: BrowserWindow, version: string) {
  const known = new KnownFiles();
  return {
    windowInfo: async () => ok(info(page, version)),
    open: () => attempt("file", () => open(page, known)),
    save: ({ id, text }) => attempt(known.get(id)?.name ?? id, () => save(page, known, id, text)),
    saveAs: ({ suggestedName, text }) =>
      attempt(suggestedName, () => saveAs(page, known, suggestedName, text)),
    recentFiles: async () => ok(known.recentRefs()),
    openRecent: (id) => openRecent(known, id),
    forgetRecent: async (id) => {
      known.forget(id);
      return ok(known.recentRefs());
    },
    exportFile: (request) => attempt(request.suggestedName, () => exportFile(page, request)),
    printToPdf: async ({ suggestedName }) => {
      page.print();
      return ok({ id: null, name: suggestedName, folder: "" });
    },
    reveal: async (id) => failed(cannotReveal(known.get(id)?.name ?? id)),
    onMenu: (listener) => listenToKeys(page, listener),
    // Nothing opens files in a page but the page.
    onOpenFile: () => () => {},
  } satisfies DesktopBridge;
}

const info = (page: BrowserWindow, version: string): WindowInfo => ({
  version,
  commandKey: hasCommandKey(page) ? "⌘" : "Ctrl",
  savesInPlace: page.showSaveFilePicker !== undefined,
  reveals: false,
  menuBar: false,
});

async function exportFile(
  page: BrowserWindow,
  { suggestedName, kinds, content }: ExportRequest,
): Promise<Result<WrittenFile>> {
  const blob = blobOf(content, kinds);
  const result = await writeChosen(page, suggestedName, kinds, blob, MAX_EXPORT_BYTES);
  return result.status === "ok" ? ok({ id: null, name: result.value.name, folder: "" }) : result;
}

const cannotReveal = (where: string): InputFault => ({
  what: "A browser cannot show a file in its folder.",
  where,
  value: "",
  accepted: "the desktop program",
});

const blobOf = (content: string | Uint8Array, kinds: readonly FileKind[]): Blob =>
  // A copy, as a blob takes no memory that is shared with a worker.
  new Blob([typeof content === "string" ? content : new Uint8Array(content)], { type: kinds[0]?.mime ?? "" });

async function open(page: BrowserWindow, known: KnownFiles): Promise<Result<OpenedFile>> {
  const file = await pickOpen(page, [PROJECT_KIND]);
  if (!file) return CANCELLED;
  const text = await readText(file);
  if (typeof text !== "string") return failed(text);
  return ok({ ...(await taken(known, file, new Blob([text]))), text });
}

/** Takes a file that was read or written among the known ones. */
async function taken(known: KnownFiles, file: KnownFile, content: Blob): Promise<FileRef> {
  const id = file.handle ? await known.idOf(file.handle) : undefined;
  const ref = id === undefined ? known.add(file) : known.remember(id, file);
  await known.see(ref.id, content);
  return ref;
}

async function openRecent(known: KnownFiles, id: string): Promise<Result<OpenedFile>> {
  const file = known.get(id);
  if (!file || !known.isRecent(id)) return failed(strange(id));
  const result = await attempt(file.name, async () => {
    const text = await readText(file);
    if (typeof text !== "string") return failed(text);
    await known.see(id, new Blob([text]));
    return ok({ ...known.remember(id, file), text });
  });
  if (result.status === "failed") known.forget(id);
  return result;
}

async function readText(file: KnownFile): Promise<string | InputFault> {
  const content = await file.read();
  if (content.size > MAX_PROJECT_BYTES) return tooLarge(file.name, content.size, MAX_PROJECT_BYTES);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(await content.arrayBuffer());
  } catch (error) {
    if (!(error instanceof TypeError)) throw error;
    const value = "bytes that are no UTF-8";
    return { what: "The file is not text.", where: file.name, value, accepted: "a text file in UTF-8" };
  }
}

async function save(
  page: BrowserWindow,
  known: KnownFiles,
  id: string,
  text: string,
): Promise<Result<FileRef>> {
  const file = known.get(id);
  if (!file) return failed(strange(id));
  const content = blobOf(text, [PROJECT_KIND]);
  if (content.size > MAX_PROJECT_BYTES) return failed(tooLarge(file.name, content.size, MAX_PROJECT_BYTES));
  if (file.handle) {
    if (!(await known.isAsSeen(id, file))) return failed(changedElsewhere(file.name));
    await writeTo(file.handle, content);
    await known.see(id, content);
    return ok(known.remember(id, file));
  }
  download(page, file.name, content);
  return ok(known.remember(id, withContent(file.name, content)));
}

async function saveAs(
  page: BrowserWindow,
  known: KnownFiles,
  suggestedName: string,
  text: string,
): Promise<Result<FileRef>> {
  const content = blobOf(text, [PROJECT_KIND]);
  const result = await writeChosen(page, suggestedName, [PROJECT_KIND], content, MAX_PROJECT_BYTES);
  if (result.status !== "ok") return result;
  return ok(await taken(known, result.value, content));
}

async function writeChosen(
  page: BrowserWindow,
  suggestedName: string,
  kinds: readonly FileKind[],
  content: Blob,
  limit: number,
): Promise<Result<KnownFile>> {
  if (content.size > limit) return failed(tooLarge(suggestedName, content.size, limit));
  const choice = await pickSave(page, suggestedName, kinds);
  if (choice === "cancelled") return CANCELLED;
  if (choice !== "download") {
    await writeTo(choice, content);
    return ok(withHandle(choice));
  }
  const name = withEnding(suggestedName, kinds);
  download(page, name, content);
  return ok(withContent(name, content));
}

function withEnding(name: string, kinds: readonly FileKind[]): string {
  const endings = kinds.flatMap((kind) => kind.extensions);
  const has = endings.some((ending) => name.toLowerCase().endsWith(`.${ending}`));
  return has || endings[0] === undefined ? name : `${name}.${endings[0]}`;
}
