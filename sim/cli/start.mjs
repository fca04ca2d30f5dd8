// The command line: puts the packages in place, bundles sim/cli/main.ts when a source is newer, and runs it.
// Plain Node, because it must run before anything is installed. Only the command itself writes to stdout.
import { mkdirSync, readdirSync, renameSync, rmSync, statSync, utimesSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { setFlagsFromString } from "node:v8";
import { ensureInstalled, root } from "./install.mjs";
import { OPTIMISER_FLAG } from "./optimiser.mjs";

const folder = join(root, "node_modules", ".cache", "trishaft");
const bundle = join(folder, "cli.mjs");
/** ms; a piece of an older bundle may still be wanted by a start under way. */
const HOUR = 3_600_000;
const sources = ["shared", "cycles", "sim", "package.json", "package-lock.json"];

/** Latest change below a path, ms. Folders count too, so that a removed file is noticed. */
function lastChange(path) {
  const entry = statSync(path);
  if (!entry.isDirectory()) return entry.mtimeMs;
  return readdirSync(path, { withFileTypes: true }).reduce((latest, child) => {
    const inner = join(path, child.name);
    return Math.max(latest, child.isDirectory() || child.isFile() ? lastChange(inner) : 0);
  }, entry.mtimeMs);
}

function isFresh() {
  const made = statSync(bundle, { throwIfNoEntry: false })?.mtimeMs ?? 0;
  return sources.every((name) => lastChange(join(root, name)) < made);
}

/** The command line as modules: the entry `cli.mjs`, and a piece for each part that is only loaded when wanted. */
async function build() {
  const { build: viteBuild } = await import("vite");
  const result = await viteBuild({
    configFile: false,
    root,
    logLevel: "error",
    publicDir: false,
    ssr: { noExternal: true },
    build: {
      ssr: join(root, "sim", "cli", "main.ts"),
      write: false,
      target: "node20",
      rolldownOptions: { output: { entryFileNames: "cli.mjs", chunkFileNames: "[name]-[hash].mjs" } },
    },
  });
  return (Array.isArray(result) ? result : [result]).flatMap((part) => part.output);
}

/** Written beside and renamed, so that two starts at once are safe. */
function put(name, code, time) {
  const beside = join(folder, `${name}.${process.pid}.tmp`);
  try {
    writeFileSync(beside, code);
    utimesSync(beside, time, time);
    renameSync(beside, join(folder, name));
  } finally {
    rmSync(beside, { force: true });
  }
}

/** Makes the bundle again. The entry comes last; the pieces are named by their contents, so an older entry keeps its own. */
async function renew() {
  // A source changed while the bundle is made is newer than this time, so the next start makes it again.
  const began = new Date();
  const chunks = await build();
  mkdirSync(folder, { recursive: true });
  for (const { fileName, code } of chunks.toReversed()) put(fileName, code, began);
  const kept = new Set(chunks.map((chunk) => chunk.fileName));
  for (const name of readdirSync(folder)) {
    const age =
      began.getTime() - (statSync(join(folder, name), { throwIfNoEntry: false })?.mtimeMs ?? Infinity);
    if (!kept.has(name) && age > HOUR) rmSync(join(folder, name), { force: true });
  }
}

setFlagsFromString(OPTIMISER_FLAG);
ensureInstalled();
try {
  if (!isFresh()) await renew();
} catch (error) {
  process.stderr.write(
    `The command line could not be built: ${error instanceof Error ? error.message : error}\n`,
  );
  process.exit(1);
}
const { main } = await import(pathToFileURL(bundle).href);
process.exitCode = await main(process.argv.slice(2), fileURLToPath(import.meta.url));
