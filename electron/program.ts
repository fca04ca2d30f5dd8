import { app, type BrowserWindow, dialog, Menu, shell } from "electron";
import type { FileKind, WindowInfo } from "../shared/bridge.ts";
import { MENU_CHANNEL, OPEN_FILE_CHANNEL } from "../shared/bridge-messages.ts";
import { Grants } from "./files/grants.ts";
import { filtersOf } from "./files/names.ts";
import { remember, sameNameOn } from "./files/recent.ts";
import { Pending } from "./pending.ts";
import { openPath, type Surroundings } from "./requests.ts";
import type { SettingsFile } from "./settings.ts";
import { openWindow } from "./window/main-window.ts";
import { menuTemplate } from "./window/menu.ts";

const MAC = process.platform === "darwin";
const sameName = sameNameOn(process.platform);

/** The running program: one window, its menu, and what the requests need. */
export class Program implements Surroundings {
  readonly grants = new Grants();
  readonly info: WindowInfo = {
    version: app.getVersion(),
    commandKey: MAC ? "⌘" : "Ctrl",
    savesInPlace: true,
    reveals: true,
    menuBar: true,
  };
  private window: BrowserWindow | null = null;
  private begun = false;
  private readonly pending = new Pending((path) => void this.tell(path));

  constructor(
    private readonly settings: SettingsFile,
    private readonly preload: string,
  ) {}

  /** Everything the page needs is set up; opens the window. */
  begin(): void {
    this.begun = true;
    this.show();
  }

  /** Opens the window, or brings it to the front. Before `begin` it does nothing. */
  show(): void {
    if (!this.begun) return;
    if (this.window) {
      if (this.window.isMinimized()) this.window.restore();
      this.window.focus();
      return;
    }
    this.window = openWindow(this.settings, this.preload);
    // A page that is loaded again listens anew.
    this.window.webContents.on("did-navigate", () => this.pending.pause());
    this.window.on("closed", () => {
      this.window = null;
    });
    this.drawMenu();
  }

  /** A file from the command line, a second start or the system. */
  openFile(path: string): void {
    this.pending.add(path);
  }

  pageReady(): void {
    this.pending.resume();
  }

  /** Lets the settings be written before the program ends. */
  beforeQuit(event: { preventDefault(): void }): void {
    if (this.settings.isWritten) return;
    event.preventDefault();
    void this.settings.finished().then(() => app.quit());
  }

  recent(): readonly string[] {
    return this.settings.now.recent;
  }

  setRecent(paths: readonly string[]): void {
    void this.settings.set({ recent: [...paths] });
    this.drawMenu();
  }

  remember(path: string): void {
    app.addRecentDocument(path);
    this.setRecent(remember(this.recent(), path, sameName));
  }

  async chooseOpen(kinds: readonly FileKind[]): Promise<string | null> {
    const options = { filters: filtersOf(kinds), properties: ["openFile" as const] };
    const { filePaths } = this.window
      ? await dialog.showOpenDialog(this.window, options)
      : await dialog.showOpenDialog(options);
    return filePaths[0] ?? null;
  }

  async chooseSave(suggestedName: string, kinds: readonly FileKind[]): Promise<string | null> {
    const options = { defaultPath: suggestedName, filters: filtersOf(kinds) };
    const { canceled, filePath } = this.window
      ? await dialog.showSaveDialog(this.window, options)
      : await dialog.showSaveDialog(options);
    return canceled || filePath === "" ? null : filePath;
  }

  async pdf(landscape: boolean): Promise<Uint8Array> {
    if (!this.window) throw new Error("there is no window to print");
    return this.window.webContents.printToPDF({ landscape, printBackground: true, preferCSSPageSize: true });
  }

  showInFolder(path: string): void {
    shell.showItemInFolder(path);
  }

  private async tell(path: string): Promise<void> {
    this.window?.webContents.send(OPEN_FILE_CHANNEL, await openPath(path, this));
  }

  private drawMenu(): void {
    const recent = this.recent().map((path) => this.grants.grant(path));
    const template = menuTemplate(recent, MAC, {
      command: (command) => this.window?.webContents.send(MENU_CHANNEL, command),
      openRecent: (file) => this.openFile(this.grants.pathOf(file.id) ?? ""),
    });
    Menu.setApplicationMenu(Menu.buildFromTemplate(template));
  }
}
