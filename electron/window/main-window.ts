import { app, BrowserWindow, dialog, nativeTheme, screen } from "electron";
import { APP_PAGE } from "../policy/origin.ts";
import type { SettingsFile } from "../settings.ts";
import { TEXTS } from "../texts.ts";
import { windowOptions } from "./options.ts";
import { placeWindow } from "./placement.ts";

/** Opens the window where it was. @param preload full path of the preload script */
export function openWindow(settings: SettingsFile, preload: string): BrowserWindow {
  const saved = settings.now.window;
  const main = screen.getPrimaryDisplay();
  const others = screen.getAllDisplays().filter((display) => display.id !== main.id);
  const bounds = placeWindow(saved, [main.workArea, ...others.map((display) => display.workArea)]);
  const window = new BrowserWindow(windowOptions(bounds, preload, nativeTheme.shouldUseDarkColors));
  if (saved?.maximized) window.maximize();
  if (saved?.fullScreen) window.setFullScreen(true);
  window.once("ready-to-show", () => window.show());
  window.on("close", () => keep(window, settings));
  window.webContents.on("will-prevent-unload", (event) => {
    if (closeWithoutSaving(window)) event.preventDefault();
  });
  void window.loadURL(APP_PAGE).catch((error: unknown) => {
    dialog.showErrorBox(TEXTS.app, String(error));
    app.exit(1);
  });
  return window;
}

const keep = (window: BrowserWindow, settings: SettingsFile): void =>
  settings.set({
    window: {
      bounds: window.getNormalBounds(),
      maximized: window.isMaximized(),
      fullScreen: window.isFullScreen(),
    },
  });

/** The page asked to stay (`beforeunload`). @returns whether the person wants to leave all the same */
function closeWithoutSaving(window: BrowserWindow): boolean {
  const { message, detail, close, stay } = TEXTS.unsaved;
  return (
    dialog.showMessageBoxSync(window, {
      type: "question",
      message,
      detail,
      buttons: [close, stay],
      defaultId: 1,
      cancelId: 1,
    }) === 0
  );
}
