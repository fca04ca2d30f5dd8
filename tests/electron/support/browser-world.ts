import { browserBridge } from "../../../renderer/bridge/browser.ts";
import type {
  BrowserWindow,
  FileHandle,
  FileInput,
  KeyPress,
  PickedFile,
} from "../../../renderer/bridge/browserWindow.ts";
import { COMMAND_KEYS } from "../../../shared/bridge.ts";
import type { BridgeWorld } from "./bridge-world.ts";

type Listener = (event: KeyPress) => void;

/** What a test may look at besides. */
export interface BrowserWorld extends BridgeWorld {
  readonly printed: () => number;
  readonly press: (event: Partial<KeyPress>) => void;
}

const error = (name: string): Error => Object.assign(new Error(name), { name });

/** Files as a browser shows them. */
class Drive {
  readonly files = new Map<string, Blob>();
  broken = false;
  answers: (string | null)[] = [];

  next(suggestedName: string): string | null {
    const answer = this.answers.shift();
    if (answer === undefined) throw new Error("no answer was given");
    return answer === "suggested" ? suggestedName : answer;
  }

  picked(name: string): PickedFile {
    const content = this.files.get(name);
    if (!content) throw error("NotFoundError");
    return { name, size: content.size, arrayBuffer: () => content.arrayBuffer() };
  }

  handle(name: string): FileHandle {
    return {
      name,
      getFile: async () => this.picked(name),
      isSameEntry: async (other) => other.name === name,
      createWritable: async () => {
        let written: Blob | null = null;
        return {
          write: async (content) => {
            if (this.broken) throw error("QuotaExceededError");
            written = content;
          },
          close: async () => {
            if (written) this.files.set(name, written);
          },
          abort: async () => {},
        };
      },
    };
  }
}

/** The browser's bridge in a played window. @param withAccess whether it has File System Access */
export function browserWorld(withAccess: boolean, platform = "Linux x86_64"): BrowserWorld {
  const drive = new Drive();
  const listeners = new Set<Listener>();
  const urls = new Map<string, Blob>();
  let printed = 0;
  const page: BrowserWindow = {
    ...(withAccess ? pickers(drive) : {}),
    navigator: { platform },
    print: () => {
      printed += 1;
    },
    addEventListener: (_type, listener) => listeners.add(listener),
    removeEventListener: (_type, listener) => listeners.delete(listener),
    document: { createElement: elements(drive, urls) },
    URL: {
      createObjectURL: (content) => {
        const url = `blob:${urls.size}`;
        urls.set(url, content);
        return url;
      },
      revokeObjectURL: (url) => urls.delete(url),
    },
    setTimeout: (action) => setTimeout(action, 0),
  };
  const press = (event: Partial<KeyPress>): void => {
    const plain = { key: "", ctrlKey: false, metaKey: false, shiftKey: false, altKey: false };
    for (const listener of listeners) listener({ ...plain, preventDefault: () => {}, ...event });
  };
  return {
    bridge: browserBridge(page, "1.2.3"),
    printed: () => printed,
    press,
    put: async (name, content) => {
      drive.files.set(name, new Blob([typeof content === "string" ? content : new Uint8Array(content)]));
    },
    contentOf: async (name) => drive.files.get(name)?.text(),
    vanish: async (name) => {
      drive.files.delete(name);
    },
    answerWith: (name) => {
      drive.answers.push(name);
    },
    breakWriting: async () => {
      drive.broken = true;
    },
    command: (command) => {
      const entry = COMMAND_KEYS.find((one) => one.command === command);
      if (entry)
        press({
          key: entry.shift ? entry.key.toUpperCase() : entry.key,
          ctrlKey: true,
          shiftKey: entry.shift,
        });
    },
  };
}

function pickers(drive: Drive): Pick<Required<BrowserWindow>, "showOpenFilePicker" | "showSaveFilePicker"> {
  const choose = (suggestedName: string): FileHandle => {
    const name = drive.next(suggestedName);
    if (name === null) throw error("AbortError");
    return drive.handle(name);
  };
  return {
    showOpenFilePicker: async () => [choose("")],
    showSaveFilePicker: async ({ suggestedName }) => choose(suggestedName),
  };
}

function elements(drive: Drive, urls: Map<string, Blob>): BrowserWindow["document"]["createElement"] {
  const create = (tag: "a" | "input") => {
    if (tag === "input") return input(drive);
    const link = {
      href: "",
      download: "",
      click: () => {
        const content = urls.get(link.href);
        if (content) drive.files.set(link.download, content);
      },
    };
    return link;
  };
  return create as BrowserWindow["document"]["createElement"];
}

function input(drive: Drive): FileInput {
  const listeners = new Map<string, () => void>();
  let files: PickedFile[] = [];
  return {
    type: "",
    accept: "",
    get files() {
      return files;
    },
    addEventListener: (type, listener) => listeners.set(type, listener),
    click: () => {
      const name = drive.next("");
      if (name === null) return listeners.get("cancel")?.();
      // A File reads what is on the drive when it is asked.
      const { size } = drive.picked(name);
      files = [{ name, size, arrayBuffer: async () => drive.picked(name).arrayBuffer() }];
      return listeners.get("change")?.();
    },
  };
}
