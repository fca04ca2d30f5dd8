import "./jitless.ts";
import { version } from "../../package.json";
import type { DesktopBridge } from "../../shared/bridge.ts";
import { browserBridge } from "./browser.ts";
import type { BrowserWindow } from "./browserWindow.ts";

declare global {
  interface Window {
    /** Put here by the desktop program's preload. */
    readonly trishaft?: DesktopBridge;
  }
}

/**
 * The bridge of this page: the desktop program's when there is one, else the browser's. The only place that asks; no
 * other file imports an implementation.
 */
export const bridge: DesktopBridge =
  window.trishaft ?? browserBridge(window satisfies BrowserWindow, version);
