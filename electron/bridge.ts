import type { z } from "zod";
import type { DesktopBridge } from "../shared/bridge.ts";
import {
  type Answer,
  MENU_CHANNEL,
  menuMessage,
  OPEN_FILE_CHANNEL,
  openFileMessage,
  type Payload,
  REQUEST_CHANNEL,
  REQUESTS,
  type RequestName,
} from "../shared/bridge-messages.ts";

type Listener = (event: unknown, message: unknown) => void;

/** What of Electron's side of the page is used. */
export interface Wire {
  invoke(channel: string, message: unknown): Promise<unknown>;
  on(channel: string, listener: Listener): unknown;
  removeListener(channel: string, listener: Listener): unknown;
}

/** The bridge over messages to the main process; what comes back is parsed too. */
export function desktopBridge(wire: Wire) {
  const ask = async <N extends RequestName>(request: N, payload: Payload<N>): Promise<Answer<N>> => {
    const answer = await wire.invoke(REQUEST_CHANNEL, { request, payload });
    return REQUESTS[request].answer.parse(answer) as Answer<N>;
  };
  return {
    windowInfo: () => ask("windowInfo", null),
    open: () => ask("open", null),
    save: ({ id, text }) => ask("save", { id, text }),
    saveAs: ({ suggestedName, text }) => ask("saveAs", { suggestedName, text }),
    recentFiles: () => ask("recentFiles", null),
    openRecent: (id) => ask("openRecent", id),
    forgetRecent: (id) => ask("forgetRecent", id),
    exportFile: ({ suggestedName, kinds, content }) => ask("exportFile", { suggestedName, kinds, content }),
    printToPdf: ({ suggestedName, landscape }) => ask("printToPdf", { suggestedName, landscape }),
    reveal: (id) => ask("reveal", id),
    onMenu: (listener) => listen(wire, MENU_CHANNEL, menuMessage, listener),
    onOpenFile: (listener) => {
      const stop = listen(wire, OPEN_FILE_CHANNEL, openFileMessage, listener);
      void ask("ready", null);
      return stop;
    },
  } satisfies DesktopBridge;
}

function listen<T>(
  wire: Wire,
  channel: string,
  schema: z.ZodType<T>,
  tell: (message: T) => void,
): () => void {
  const listener: Listener = (_event, message) => tell(schema.parse(message));
  wire.on(channel, listener);
  return () => {
    wire.removeListener(channel, listener);
  };
}
