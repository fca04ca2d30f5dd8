import type { createHash as CreateHash } from "node:crypto";
import { cycleById } from "../../cycles/catalogue.ts";
import { rules } from "../../sim/control/strategies/rules.ts";
import { vehicleSchema } from "../../sim/parameters/schema.ts";
import { runCsv } from "../../sim/run/export.ts";
import { regimes } from "../../sim/run/regimes.ts";
import { simulate } from "../../sim/run/simulate.ts";

/** SHA-256 of the exported run of the demo compact over a cycle. */
export function runDigest(cycle: string, createHash: typeof CreateHash): string {
  const run = simulate(vehicleSchema.parse({}), cycleById(cycle), rules);
  const hash = createHash("sha256");
  for (const piece of runCsv(run.log, regimes(run.log, run.p))) hash.update(piece);
  return hash.digest("hex");
}
