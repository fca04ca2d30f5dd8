import type { ExportRequest, FileKind, FileRef, OpenedFile, Result, WindowInfo } from "../shared/bridge.ts";
import { changedElsewhere, MAX_EXPORT_BYTES, MAX_PROJECT_BYTES, PROJECT_KIND } from "../shared/bridge.ts";
import type { InputFault } from "../shared/errors.ts";
import type { Handlers } from "./door.ts";
import type { Grants } from "./files/grants.ts";
import { withEnding } from "./files/names.ts";
import { readText } from "./files/read.ts";
import { forget } from "./files/recent.ts";
import { writeWhole } from "./files/write.ts";

/** What the requests need of the program around them; Electron in the app, a stand-in in the tests. */
export interface Surroundings {
  readonly info: WindowInfo;
  readonly grants: Grants;
  /** Full paths, newest first. */
  recent(): readonly string[];
  setRecent(paths: readonly string[]): void;
  /** Moves a file to the head of the recent ones. */
  remember(path: string): void;
  /** Full path of an existing file, or null when the person thought better of it. */
  chooseOpen(kinds: readonly FileKind[]): Promise<string | null>;
  /** Full path to write to, or null. */
  chooseSave(suggestedName: string, kinds: readonly FileKind[]): Promise<string | null>;
  /** The page on paper. */
  pdf(landscape: boolean): Promise<Uint8Array>;
  /** Shows a file in its folder. */
  showInFolder(path: string): void;
  /** The page listens; files that wait may come. */
  pageReady(): void;
}

const PDF: FileKind = { title: "PDF", mime: "application/pdf", extensions: ["pdf"] };

const ok = <T>(value: T): Result<T> => ({ status: "ok", value });
const failed = (fault: InputFault): { status: "failed"; fault: InputFault } => ({ status: "failed", fault });
const CANCELLED = { status: "cancelled" } as const;

/** Reads a project a person chose, by whatever way, and remembers it. */
export async function openPath(path: string, around: Surroundings): Promise<Result<OpenedFile>> {
  const read = await readText(path, MAX_PROJECT_BYTES);
  if ("fault" in read) return failed(read.fault);
  around.remember(path);
  around.grants.see(path, read.text);
  return ok({ ...around.grants.grant(path), text: read.text });
}

async function openRecent(id: string, around: Surroundings): Promise<Result<OpenedFile>> {
  const path = around.grants.pathOf(id);
  if (path === undefined || !around.recent().includes(path)) return failed(strange(id, "a recent file"));
  const result = await openPath(path, around);
  if (result.status === "failed") around.setRecent(forget(around.recent(), path));
  return result;
}

async function writeChosen(
  request: ExportRequest,
  limit: number,
  around: Surroundings,
): Promise<Result<FileRef> & { path?: string }> {
  const size = Buffer.byteLength(request.content);
  if (size > limit) return failed(tooLarge(request.suggestedName, size, limit));
  const chosen = await around.chooseSave(request.suggestedName, request.kinds);
  if (chosen === null) return CANCELLED;
  const target = await withEnding(chosen, request.kinds);
  if ("fault" in target) return failed(target.fault);
  const fault = await writeWhole(target.path, request.content);
  return fault ? failed(fault) : { ...ok(around.grants.grant(target.path)), path: target.path };
}

async function saveAs(suggestedName: string, text: string, around: Surroundings): Promise<Result<FileRef>> {
  const request = { suggestedName, kinds: [PROJECT_KIND], content: text };
  const { path, ...result } = await writeChosen(request, MAX_PROJECT_BYTES, around);
  if (path !== undefined) {
    around.remember(path);
    around.grants.see(path, text);
  }
  return result;
}

async function save(id: string, text: string, around: Surroundings): Promise<Result<FileRef>> {
  const path = around.grants.pathOf(id);
  if (path === undefined) return failed(strange(id, "a file that was opened or saved before"));
  const size = Buffer.byteLength(text);
  if (size > MAX_PROJECT_BYTES) return failed(tooLarge(path, size, MAX_PROJECT_BYTES));
  // A file that is gone is written anew.
  const there = await readText(path, MAX_PROJECT_BYTES);
  if ("text" in there && !around.grants.isAsSeen(path, there.text)) return failed(changedElsewhere(path));
  const fault = await writeWhole(path, text);
  if (fault) return failed(fault);
  around.grants.see(path, text);
  around.remember(path);
  return ok(around.grants.grant(path));
}

async function exportFile(request: ExportRequest, around: Surroundings): Promise<Result<FileRef>> {
  const { path: _, ...result } = await writeChosen(request, MAX_EXPORT_BYTES, around);
  return result;
}

async function printToPdf(
  suggestedName: string,
  landscape: boolean,
  around: Surroundings,
): Promise<Result<FileRef>> {
  const content = await around.pdf(landscape);
  return exportFile({ suggestedName, kinds: [PDF], content }, around);
}

async function reveal(id: string, around: Surroundings): Promise<Result<null>> {
  const path = around.grants.pathOf(id);
  if (path === undefined) return failed(strange(id, "a file that was opened or written before"));
  around.showInFolder(path);
  return ok(null);
}

const strange = (id: string, accepted: string): InputFault => ({
  what: "This file was not chosen since the program started.",
  where: "file",
  value: id,
  accepted,
});

const tooLarge = (where: string, size: number, limit: number): InputFault => ({
  what: "This is too large to write.",
  where,
  value: `${size} bytes`,
  accepted: `${limit} bytes or less`,
});

/** What the main process does for each request. */
export function makeHandlers(around: Surroundings): Handlers {
  const recentRefs = (): FileRef[] => around.recent().map((path) => around.grants.grant(path));
  return {
    windowInfo: async () => ok(around.info),
    open: async () => {
      const path = await around.chooseOpen([PROJECT_KIND]);
      return path === null ? CANCELLED : openPath(path, around);
    },
    save: ({ id, text }) => save(id, text, around),
    saveAs: ({ suggestedName, text }) => saveAs(suggestedName, text, around),
    recentFiles: async () => ok(recentRefs()),
    openRecent: (id) => openRecent(id, around),
    forgetRecent: async (id) => {
      around.setRecent(forget(around.recent(), around.grants.pathOf(id) ?? ""));
      return ok(recentRefs());
    },
    exportFile: (request) => exportFile(request, around),
    printToPdf: ({ suggestedName, landscape }) => printToPdf(suggestedName, landscape, around),
    reveal: (id) => reveal(id, around),
    ready: async () => {
      around.pageReady();
      return ok(null);
    },
  };
}
