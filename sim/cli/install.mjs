// Puts the pinned packages in place when a bare clone is started, so that no command needs an install step before it.
import { spawnSync } from "node:child_process";
import { existsSync, lstatSync, statSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

/** The project's folder. */
export const root = join(dirname(fileURLToPath(import.meta.url)), "..", "..");

/**
 * Installs the packages of the lock file if they are missing or older than it. Says so on stderr, never on stdout.
 * Ends the process with exit code 1 and npm's own words when the install fails.
 */
export function ensureInstalled() {
  // A linked folder belongs to another checkout: npm would empty it.
  const modules = lstatSync(join(root, "node_modules"), { throwIfNoEntry: false });
  if (modules?.isSymbolicLink()) return;
  const stamp = join(root, "node_modules", ".package-lock.json");
  const lock = join(root, "package-lock.json");
  if (existsSync(stamp) && statSync(stamp).mtimeMs >= statSync(lock).mtimeMs) return;
  process.stderr.write("Installing the pinned packages (once) …\n");
  const npm = process.platform === "win32" ? "npm.cmd" : "npm";
  const done = spawnSync(npm, ["ci", "--no-audit", "--no-fund", "--loglevel=error"], {
    cwd: root,
    stdio: ["ignore", "pipe", "pipe"],
    encoding: "utf8",
    shell: process.platform === "win32",
  });
  if (done.status !== 0) {
    process.stderr.write(
      `${done.stdout ?? ""}${done.stderr ?? ""}The install failed: see npm's message above.\n`,
    );
    process.exit(1);
  }
}
