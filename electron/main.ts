import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { app, ipcMain } from "electron";
import { REQUEST_CHANNEL } from "../shared/bridge-messages.ts";
import { projectFileIn } from "./arguments.ts";
import { makeDoor } from "./door.ts";
import { lockDown } from "./lock-down.ts";
import { Program } from "./program.ts";
import { registerScheme, serveFiles } from "./protocol.ts";
import { makeHandlers } from "./requests.ts";
import { SettingsFile } from "./settings.ts";

/** Words behind the program's own name; while developing the first of them is our folder. */
const words = (argv: readonly string[]): readonly string[] => argv.slice(app.isPackaged ? 1 : 2);

registerScheme();
lockDown();

if (app.requestSingleInstanceLock()) start();
else app.quit();

function start(): void {
  mkdirSync(app.getPath("userData"), { recursive: true });
  const settings = new SettingsFile(join(app.getPath("userData"), "settings.json"));
  const program = new Program(settings, join(import.meta.dirname, "preload.cjs"));

  const asked = projectFileIn(words(process.argv), process.cwd());
  if (asked) program.openFile(asked);
  app.on("second-instance", (_event, argv, folder) => {
    const file = projectFileIn(words(argv), folder);
    if (file) program.openFile(file);
    program.show();
  });
  app.on("open-file", (event, path) => {
    event.preventDefault();
    program.openFile(path);
  });
  app.on("window-all-closed", () => app.quit());
  app.on("will-quit", (event) => program.beforeQuit(event));

  void app.whenReady().then(async () => {
    await settings.load();
    serveFiles(join(import.meta.dirname, "..", "renderer"));
    const door = makeDoor(makeHandlers(program));
    ipcMain.handle(REQUEST_CHANNEL, (event, message: unknown) => door(event, message));
    program.begin();
  });
}
