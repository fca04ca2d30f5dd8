// `npm test`: the sum of named parts, cheapest first. Each part can be called alone: `npm test -- types lint unit`.
import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { ensureInstalled, root } from "../sim/cli/install.mjs";
import { needBrowser } from "./browser.mjs";

const bin = (name) => join(root, "node_modules", ".bin", process.platform === "win32" ? `${name}.cmd` : name);
const tsc = (config) => [bin("tsc"), "-p", config];
const parts = {
  types: ["shared", "cycles", "sim", "sim/cli", "electron", "renderer", "tests"].map((room) =>
    tsc(`${room}/tsconfig.json`),
  ),
  lint: [[bin("biome"), "ci", "--error-on-warnings", "."]],
  unit: [[bin("vitest"), "run"]],
};

ensureInstalled();
const asked = process.argv.slice(2);
const unknown = asked.filter((name) => !(name in parts));
if (unknown.length > 0) {
  process.stderr.write(`Unknown part: ${unknown.join(", ")}. Parts: ${Object.keys(parts).join(", ")}.\n`);
  process.exit(2);
}
for (const [name, commands] of Object.entries(parts)) {
  if (asked.length > 0 && !asked.includes(name)) continue;
  process.stdout.write(`\n== ${name}\n`);
  if (name === "unit") needBrowser();
  for (const [command, ...args] of commands) {
    const done = spawnSync(command, args, {
      cwd: root,
      stdio: "inherit",
      shell: process.platform === "win32",
    });
    if (done.status !== 0) process.exit(done.status ?? 1);
  }
}
