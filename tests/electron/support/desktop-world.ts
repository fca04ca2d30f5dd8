import { EventEmitter } from "node:events";
import { mkdir, readFile, rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { desktopBridge } from "../../../electron/bridge.ts";
import { makeDoor } from "../../../electron/door.ts";
import { Grants } from "../../../electron/files/grants.ts";
import { remember } from "../../../electron/files/recent.ts";
import { APP_PAGE } from "../../../electron/policy/origin.ts";
import { makeHandlers, type Surroundings } from "../../../electron/requests.ts";
import { MENU_CHANNEL, OPEN_FILE_CHANNEL, REQUEST_CHANNEL } from "../../../shared/bridge-messages.ts";
import type { BridgeWorld } from "./bridge-world.ts";
import { temporaryFolder } from "./temporary.ts";

/** The desktop bridge with the real door and real files; only Electron itself is played. */
export interface DesktopWorld extends BridgeWorld {
  readonly folder: string;
  readonly wire: EventEmitter;
  readonly shown: string[];
  readonly readies: () => number;
  /** Sends a file as the main process would. */
  sendFile(message: unknown): void;
}

export async function desktopWorld(): Promise<DesktopWorld> {
  const folder = join(await temporaryFolder(), "projects");
  await mkdir(folder);
  const { around, answers, shown, readies } = surroundings(folder);
  const door = makeDoor(makeHandlers(around));
  const wire = new EventEmitter();
  const bridge = desktopBridge({
    invoke: async (channel, message) => {
      if (channel !== REQUEST_CHANNEL) throw new Error(`no handler for ${channel}`);
      // As between processes: only what can be cloned comes through.
      const copy: unknown = structuredClone(message);
      return structuredClone(await door({ senderFrame: { url: APP_PAGE, parent: null } }, copy));
    },
    on: (channel, listener) => wire.on(channel, listener),
    removeListener: (channel, listener) => wire.removeListener(channel, listener),
  });
  return {
    bridge,
    folder,
    wire,
    shown,
    readies,
    put: (name, content) => writeFile(join(folder, name), content),
    contentOf: (name) => readFile(join(folder, name), "utf8").catch(() => undefined),
    vanish: (name) => rm(join(folder, name)),
    answerWith: (name) => answers.push(name === null ? null : join(folder, name)),
    breakWriting: () => rm(folder, { recursive: true }),
    command: (command) => wire.emit(MENU_CHANNEL, {}, command),
    sendFile: (message) => wire.emit(OPEN_FILE_CHANNEL, {}, message),
  };
}

function surroundings(folder: string) {
  const answers: (string | null)[] = [];
  const shown: string[] = [];
  let recent: readonly string[] = [];
  let ready = 0;
  const next = (): string | null => {
    const answer = answers.shift();
    if (answer === undefined) throw new Error("no answer was given");
    return answer;
  };
  const around: Surroundings = {
    info: { version: "1.2.3", commandKey: "Ctrl", savesInPlace: true, reveals: true, menuBar: true },
    grants: new Grants(),
    recent: () => recent,
    setRecent: (paths) => {
      recent = paths;
    },
    remember: (path) => {
      recent = remember(recent, path);
    },
    chooseOpen: async () => next(),
    chooseSave: async (suggestedName) => {
      const answer = next();
      return answer === join(folder, "suggested") ? join(folder, suggestedName) : answer;
    },
    pdf: async (landscape) => new TextEncoder().encode(landscape ? "%PDF wide" : "%PDF"),
    showInFolder: (path) => shown.push(path),
    pageReady: () => {
      ready += 1;
    },
  };
  return { around, answers, shown, readies: () => ready };
}
