// Builds the page and the desktop program into dist/, each only when a source is newer. Plain Node, because it runs
// before anything of ours is built.
import { existsSync, readdirSync, renameSync, rmSync, statSync, utimesSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { root } from "../sim/cli/install.mjs";

const packages = ["package.json", "package-lock.json"];
const dist = join(root, "dist");

/** Latest change below a path, ms. Folders count too, so that a removed file is noticed. */
function lastChange(path) {
  const entry = statSync(path);
  if (!entry.isDirectory()) return entry.mtimeMs;
  return readdirSync(path, { withFileTypes: true }).reduce((latest, child) => {
    const inner = join(path, child.name);
    return Math.max(latest, child.isDirectory() || child.isFile() ? lastChange(inner) : 0);
  }, entry.mtimeMs);
}

function isFresh(name, sources) {
  const made = statSync(join(dist, name, ".built"), { throwIfNoEntry: false })?.mtimeMs ?? 0;
  return [...sources, ...packages].every((source) => lastChange(join(root, source)) < made);
}

/** Builds into a folder beside and changes names, so that a running app or a second start never sees half a build. */
async function renew(name, sources, build) {
  if (isFresh(name, sources)) return;
  const began = new Date();
  const beside = join(dist, `.${name}.${process.pid}`);
  const old = join(dist, `.${name}.${process.pid}.old`);
  try {
    await build(beside);
    writeFileSync(join(beside, ".built"), "");
    // A source changed while this was built is newer than this time, so the next start builds again.
    utimesSync(join(beside, ".built"), began, began);
    if (existsSync(join(dist, name))) renameSync(join(dist, name), old);
    renameSync(beside, join(dist, name));
  } finally {
    for (const path of [beside, old]) rmSync(path, { recursive: true, force: true });
  }
}

/** The page, by its own configuration. */
async function buildRenderer(outDir) {
  const { build } = await import("vite");
  const home = join(root, "renderer");
  await build({
    root: home,
    configFile: join(home, "vite.config.ts"),
    logLevel: "warn",
    build: { outDir, emptyOutDir: true },
  });
}

/** One file with everything in it but Electron. */
const bundle = (input, format, extension, outDir) => ({
  configFile: false,
  root,
  logLevel: "warn",
  publicDir: false,
  ssr: { noExternal: true },
  build: {
    ssr: true,
    outDir,
    emptyOutDir: false,
    target: "node20.19",
    rolldownOptions: {
      input: join(root, "electron", input),
      external: ["electron"],
      output: { format, codeSplitting: false, entryFileNames: `[name].${extension}` },
    },
  },
});

/** Main process and launcher as modules, the preload as the one CommonJS file that a sandboxed page can load. */
async function buildElectron(outDir) {
  const { build } = await import("vite");
  await build(bundle("main.ts", "es", "js", outDir));
  await build(bundle("preload.ts", "cjs", "cjs", outDir));
  await build(bundle(join("start", "start.ts"), "es", "js", outDir));
}

/**
 * Brings the desktop program and the launcher up to date.
 * @returns full path of the built launcher
 */
export async function buildProgram() {
  await renew("electron", ["electron", "shared"], buildElectron);
  return join(dist, "electron", "start.js");
}

/** Brings the page up to date. */
export async function buildPage() {
  await renew("renderer", ["renderer", "shared", "cycles", "sim"], buildRenderer);
}

/** Builds parts one after the other; ends the process with one line when one fails. @returns what the first gave */
export async function orExit(...parts) {
  try {
    const results = [];
    for (const part of parts) results.push(await part());
    return results[0];
  } catch (error) {
    process.stderr.write(`The app could not be built: ${error instanceof Error ? error.message : error}\n`);
    return process.exit(1);
  }
}
