// Finds a Chromium-family browser for the browser tests: CHROME_PATH first, then the usual places; on Debian as root it
// installs Debian's own; elsewhere it says in one line what to install.
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { delimiter, join } from "node:path";

const NAMES = ["chromium", "chromium-browser", "chromium.exe", "chrome", "chrome.exe"];
const PLACES = { darwin: ["/Applications/Chromium.app/Contents/MacOS/Chromium"] };

/** Path of an installed browser, or null. */
export function findBrowser(env = process.env) {
  if (env.CHROME_PATH) return existsSync(env.CHROME_PATH) ? env.CHROME_PATH : null;
  const folders = (env.PATH ?? "").split(delimiter);
  const listed = folders.flatMap((folder) => NAMES.map((name) => join(folder, name)));
  return [...listed, ...(PLACES[process.platform] ?? [])].find((path) => existsSync(path)) ?? null;
}

/** Path of a browser; installs Debian's where that is possible, else ends the process with the line to follow. */
export function needBrowser() {
  const found = findBrowser();
  if (found) return found;
  if (process.env.CHROME_PATH) stop(`CHROME_PATH names no file: ${process.env.CHROME_PATH}`);
  if (existsSync("/etc/debian_version") && process.getuid?.() === 0) {
    process.stderr.write("Installing Debian's chromium for the browser tests (once) …\n");
    const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
    spawnSync("apt-get", ["update", "-q"], { stdio: "ignore", env });
    const done = spawnSync("apt-get", ["install", "-y", "-q", "chromium"], { encoding: "utf8", env });
    const installed = findBrowser();
    if (installed) return installed;
    stop(`Debian's chromium could not be installed: ${(done.stderr ?? "").trim().split("\n").pop() ?? ""}`);
  }
  return stop("The browser tests need a Chromium-family browser: install one, or set CHROME_PATH to it.");
}

function stop(line) {
  process.stderr.write(`${line}\n`);
  process.exit(1);
}
