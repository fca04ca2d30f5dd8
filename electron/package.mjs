// `npm run package`: builds the app and hands it to the packager. It needs the network for Electron's runtime.
import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { ensureInstalled, root } from "../sim/cli/install.mjs";

ensureInstalled();
const { buildPage, buildProgram, orExit } = await import("./build.mjs");
await orExit(buildProgram, buildPage);
const packager = join(root, "node_modules", "electron-builder", "cli.js");
const words = ["--config", join("electron", "builder.yml"), "--publish", "never", ...process.argv.slice(2)];
process.exitCode =
  spawnSync(process.execPath, [packager, ...words], { cwd: root, stdio: "inherit" }).status ?? 1;
