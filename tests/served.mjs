// The app as `npm start -- --no-open` serves it, and a browser to look at it with: for the browser tests, the benchmark
// of the scene and the pictures.
import { spawn } from "node:child_process";
import { join } from "node:path";
import { chromium } from "playwright-core";
import { findBrowser } from "./browser.mjs";

const root = join(import.meta.dirname, "..");

/** Software drawing, and nothing that asks for a network. */
const FLAGS = [
  "--no-sandbox",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--use-angle=swiftshader",
  "--enable-unsafe-swiftshader",
];

/** Builds what is stale and serves it. */
export async function serve() {
  const server = spawn(process.execPath, [join(root, "electron", "launch.mjs"), "--no-open"], {
    stdio: ["ignore", "pipe", "inherit"],
  });
  const address = await new Promise((resolve, reject) => {
    let said = "";
    server.stdout.on("data", (piece) => {
      said += piece.toString();
      const found = /http:\/\/[\d.]+:\d+\//.exec(said);
      if (found) resolve(found[0]);
    });
    server.once("exit", (code) => reject(new Error(`the launcher ended with ${code}: ${said}`)));
  });
  return { address, stop: () => server.kill("SIGINT") };
}

/** The installed browser without a window. `flags`: further ones of its own. */
export async function openBrowser(flags = []) {
  const executablePath = findBrowser();
  if (!executablePath) throw new Error("no Chromium-family browser: `npm test` says how to get one");
  return chromium.launch({ executablePath, args: [...FLAGS, ...flags] });
}
