import type { InputFault } from "./errors.ts";

/**
 * What the page may ask of the program around it. The preload answers it through the main process, a plain browser with
 * what browsers have; the page holds one object of this type and never asks which it is.
 *
 * Files are named by an opaque `id` that was given out when a person chose the file. No path goes from the page to the
 * disk, so that the page can only write where a person said so.
 */
export interface DesktopBridge {
  /** What the surroundings can do; asked once at the start. */
  windowInfo(): Promise<Result<WindowInfo>>;
  /** Lets a person choose a project file and reads it. */
  open(): Promise<Result<OpenedFile>>;
  /**
   * Writes a file that was opened or saved before; it holds either the old or the new text, never a mixture. One that
   * another window or program has changed meanwhile is refused and stays as it is.
   */
  save(request: SaveRequest): Promise<Result<FileRef>>;
  /** Lets a person choose where, then writes. */
  saveAs(request: SaveAsRequest): Promise<Result<FileRef>>;
  /** Newest first. In a browser only those of this visit. */
  recentFiles(): Promise<Result<readonly FileRef[]>>;
  /** Reads one of the recent files. A vanished one is refused and leaves the list. */
  openRecent(id: string): Promise<Result<OpenedFile>>;
  /** Takes one off the list, the file stays. @returns the list that is left */
  forgetRecent(id: string): Promise<Result<readonly FileRef[]>>;
  /** Lets a person choose where, then writes a picture, table, clip or report. */
  exportFile(request: ExportRequest): Promise<Result<WrittenFile>>;
  /** The page as it prints. A browser opens its print window, where a person picks the printer or a PDF. */
  printToPdf(request: PrintRequest): Promise<Result<WrittenFile>>;
  /** Shows a file in its folder, if `windowInfo` says that this can be done. */
  reveal(id: string): Promise<Result<null>>;
  /** Menu entries and their keys (`COMMAND_KEYS`). @returns stops listening */
  onMenu(listener: (command: MenuCommand) => void): () => void;
  /**
   * Files that come by another way than `open`: the command line, a double click, the menu's recent files. One that
   * came before the page was ready is told to the first listener.
   * @returns stops listening
   */
  onOpenFile(listener: (file: Result<OpenedFile>) => void): () => void;
}

/** How every request ends. What a person can cause and mend is `failed`; a refused message rejects the promise. */
export type Result<T> =
  | { readonly status: "ok"; readonly value: T }
  /** The person closed the window in which a file is chosen. */
  | { readonly status: "cancelled" }
  | { readonly status: "failed"; readonly fault: InputFault };

/** A file that a person chose. */
export interface FileRef {
  /** Valid until the program ends. */
  readonly id: string;
  readonly name: string;
  /** Where it lies, for a person to read; empty where a browser does not tell. */
  readonly folder: string;
}

/** A file with what it holds. */
export interface OpenedFile extends FileRef {
  readonly text: string;
}

/** A file that went out. */
export interface WrittenFile {
  /** For `reveal`; null when the program cannot know the place. */
  readonly id: string | null;
  readonly name: string;
  /** Empty where a browser does not tell. */
  readonly folder: string;
}

/** Text for a file already known. */
export interface SaveRequest {
  readonly id: string;
  readonly text: string;
}

/** Text for a file to be chosen. */
export interface SaveAsRequest {
  /** Without a folder. */
  readonly suggestedName: string;
  readonly text: string;
}

/** A kind of file, as the window for choosing files offers it. */
export interface FileKind {
  readonly title: string;
  /** Such as `text/csv`. */
  readonly mime: string;
  /** Without the leading dot, lower case; the first is added to a name that has none of them. */
  readonly extensions: readonly string[];
}

/** Anything but a project. */
export interface ExportRequest {
  readonly suggestedName: string;
  /** At least one; the first describes the content. */
  readonly kinds: readonly FileKind[];
  readonly content: string | Uint8Array;
}

/** The page on paper. */
export interface PrintRequest {
  readonly suggestedName: string;
  readonly landscape: boolean;
}

/** What the surroundings are and can do. */
export interface WindowInfo {
  /** Version of the program. */
  readonly version: string;
  /** The key that goes with letters, as it is called on this keyboard. */
  readonly commandKey: "Ctrl" | "⌘";
  /** Saving writes the opened file itself; otherwise each save is a download. */
  readonly savesInPlace: boolean;
  /** `reveal` works. */
  readonly reveals: boolean;
  /** There is a menu bar, so that the page need not draw one. */
  readonly menuBar: boolean;
}

/** What a menu entry asks of the page. */
export const MENU_COMMANDS = [
  "new",
  "open",
  "save",
  "save-as",
  "export-run",
  "export-report",
  "print",
  "undo",
  "redo",
  "place-bench",
  "place-road",
  "place-compare",
  "place-lessons",
  "place-vehicle",
  "place-cycles",
  "projector",
  "theme",
  "shortcuts",
  "glossary",
  "about",
] as const;

/** One of the menu's commands. */
export type MenuCommand = (typeof MENU_COMMANDS)[number];

/** A key that goes with Ctrl or ⌘. */
export interface CommandKey {
  readonly command: MenuCommand;
  /** Lower case. */
  readonly key: string;
  readonly shift: boolean;
}

/**
 * Keys that are told as commands by every implementation. Undo and redo are missing on purpose: a text field has its
 * own, so the page decides where the key was pressed.
 */
export const COMMAND_KEYS: readonly CommandKey[] = [
  { command: "new", key: "n", shift: false },
  { command: "open", key: "o", shift: false },
  { command: "save", key: "s", shift: false },
  { command: "save-as", key: "s", shift: true },
  { command: "export-run", key: "e", shift: false },
  { command: "print", key: "p", shift: false },
];

/** Our own file: a project as `shared/project.ts` reads it. */
export const PROJECT_KIND: FileKind = {
  title: "Trishaft project",
  mime: "application/json",
  extensions: ["trishaft.json"],
};

/** Largest project file that is read or written, bytes: ten cycles of the longest allowed kind. */
export const MAX_PROJECT_BYTES = 64 * 1024 * 1024;

/** Largest export, bytes: some half an hour of a clip. */
export const MAX_EXPORT_BYTES = 512 * 1024 * 1024;

/** The refusal of `save` where the file is not as it was left. @param where the file, for a person to read */
export const changedElsewhere = (where: string): InputFault => ({
  what: "The file was changed elsewhere since it was opened or saved here.",
  where,
  value: "",
  accepted: "another name (Save as), or the file opened anew",
});
