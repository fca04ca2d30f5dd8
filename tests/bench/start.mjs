// `npm run bench`: the engine's benchmark, then the scene's and Road's. One part alone: `npm run bench -- engine --runs 5`,
// `npm run bench -- scene` or `-- road`. Options go to the engine's.
import { spawnSync } from "node:child_process";
import { join } from "node:path";

const root = join(import.meta.dirname, "..", "..");
const [first, ...rest] = process.argv.slice(2);
const named = ["engine", "scene", "road"].includes(first);
const options = named ? rest : process.argv.slice(2);
// A machine reads the engine's alone.
const parts = named ? [first] : options.length > 0 ? ["engine"] : ["engine", "scene", "road"];

const files = {
  engine: [join(root, "sim", "cli", "start.mjs"), "bench", ...options],
  scene: [join(root, "tests", "bench", "scene.mjs")],
  road: [join(root, "tests", "bench", "road.mjs")],
};
for (const part of parts) {
  const { status } = spawnSync(process.execPath, files[part], { stdio: "inherit" });
  if (status !== 0) process.exit(status ?? 1);
}
