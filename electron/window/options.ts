import type { BrowserWindowConstructorOptions } from "electron";
import { TEXTS } from "../texts.ts";
import { type Box, LEAST } from "./placement.ts";

/**
 * How the window is made.
 * @param bounds where
 * @param preload full path of the preload script
 * @param dark whether the system prefers dark, for the moment before the page is drawn
 */
export const windowOptions = (bounds: Box, preload: string, dark: boolean) =>
  ({
    ...bounds,
    minWidth: LEAST.width,
    minHeight: LEAST.height,
    show: false,
    title: TEXTS.app,
    backgroundColor: dark ? "#14181c" : "#ffffff",
    webPreferences: {
      preload,
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      webviewTag: false,
      navigateOnDragDrop: false,
      spellcheck: false,
      devTools: true,
    },
  }) satisfies BrowserWindowConstructorOptions;
