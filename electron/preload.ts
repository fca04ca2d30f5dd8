import "./jitless.ts";
import { contextBridge, ipcRenderer } from "electron";
import type { DesktopBridge } from "../shared/bridge.ts";
import { desktopBridge } from "./bridge.ts";

// The page gets these functions and nothing else of Electron.
contextBridge.exposeInMainWorld("trishaft", desktopBridge(ipcRenderer) satisfies DesktopBridge);
