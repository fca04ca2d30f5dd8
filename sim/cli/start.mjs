// The command line: puts the packages in place, bundles sim/cli/main.ts when a source is newer, and runs it.
// Plain Node, because it must run before anything is installed. Only the command itself writes to stdout.
import { mkdirSync, readdirSync, renameSync, rmSync, statSync, utimesSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { ensureInstalled, root } from "./install.mjs";

const folder = join(root, "node_modules", ".cache", "trishaft");
const bundle = join(folder, "cli.mjs");
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

/** The whole command line as one module's text. */
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
      rolldownOptions: { output: { codeSplitting: false } },
    },
  });
  const [chunk] = (Array.isArray(result) ? result : [result]).flatMap((part) => part.output);
  return chunk.code;
}

/** Written beside and renamed, so that two starts at once are safe. */
async function renew() {
  const began = new Date();
  const code = await build();
  const beside = join(folder, `cli.${process.pid}.${process.hrtime.bigint()}.tmp`);
  mkdirSync(folder, { recursive: true });
  try {
    writeFileSync(beside, code);
    // A source changed while the bundle was made is newer than this time, so the next start makes it again.
    utimesSync(beside, began, began);
    renameSync(beside, bundle);
  } finally {
    rmSync(beside, { force: true });
  }
}

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
