// `npm start`: puts the packages in place, builds what is stale and opens the app.
import { pathToFileURL } from "node:url";
import { ensureInstalled, root } from "../sim/cli/install.mjs";

ensureInstalled();
const { buildPage, buildProgram, orExit } = await import("./build.mjs");
const { start } = await import(pathToFileURL(await orExit(buildProgram, buildPage)).href);

const stop = new AbortController();
for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"]) process.once(signal, () => stop.abort());
process.exitCode = await start(process.argv.slice(2), {
  root,
  platform: process.platform,
  env: process.env,
  uid: process.getuid?.(),
  say: (line) => process.stdout.write(`${line}\n`),
  stop: stop.signal,
});
