/** What of a browser's window the bridge uses, so that a stand-in can take its place. */
export interface BrowserWindow {
  /** File System Access; missing in some browsers. */
  readonly showOpenFilePicker?: (options: PickerOptions) => Promise<readonly FileHandle[]>;
  readonly showSaveFilePicker?: (
    options: PickerOptions & { readonly suggestedName: string },
  ) => Promise<FileHandle>;
  readonly navigator: { readonly platform: string };
  print(): void;
  addEventListener(type: "keydown", listener: (event: KeyPress) => void): void;
  removeEventListener(type: "keydown", listener: (event: KeyPress) => void): void;
  readonly document: {
    createElement(tag: "a"): DownloadLink;
    createElement(tag: "input"): FileInput;
  };
  readonly URL: { createObjectURL(content: Blob): string; revokeObjectURL(url: string): void };
  setTimeout(action: () => void, milliseconds: number): unknown;
}

/** What the windows for choosing files are told. */
export interface PickerOptions {
  readonly types: readonly {
    readonly description: string;
    readonly accept: Readonly<Record<string, readonly string[]>>;
  }[];
}

/** A file that can be read again and, if the person allows it, written. */
export interface FileHandle {
  readonly name: string;
  getFile(): Promise<PickedFile>;
  createWritable(): Promise<Writable>;
  isSameEntry(other: FileHandle): Promise<boolean>;
}

/** Written to a copy, which takes the file's place when it is closed. */
export interface Writable {
  write(content: Blob): Promise<void>;
  close(): Promise<void>;
  abort(): Promise<void>;
}

/** A file's content. */
export interface PickedFile {
  readonly name: string;
  readonly size: number;
  arrayBuffer(): Promise<ArrayBuffer>;
}

/** An `a` element. */
export interface DownloadLink {
  href: string;
  download: string;
  click(): void;
}

/** An `input` element of type file. */
export interface FileInput {
  type: string;
  accept: string;
  readonly files: ArrayLike<PickedFile> | null;
  addEventListener(type: "change" | "cancel", listener: () => void): void;
  click(): void;
}

/** A key that went down. */
export interface KeyPress {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly shiftKey: boolean;
  readonly altKey: boolean;
  preventDefault(): void;
}
