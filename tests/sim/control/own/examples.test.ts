import { describe, expect, it } from "vitest";
import { cycleById } from "../../../../cycles/catalogue.ts";
import { OWN_ANSWER, OWN_INPUTS, OWN_VEHICLE } from "../../../../sim/control/own/contract.ts";
import { OWN_EXAMPLES } from "../../../../sim/control/own/examples/registry.ts";
import { loadOwnStrategies } from "../../../../sim/control/own/load.ts";
import { simulate } from "../../../../sim/run/simulate.ts";
import { traceQuality } from "../../../../sim/run/trace-quality.ts";
import { PRESETS, vehicleById } from "../../../../sim/vehicle/presets/registry.ts";

const own = await loadOwnStrategies();

describe("the worked examples", () => {
  it.each(OWN_EXAMPLES.map((e) => [e.id, e] as const))("%s drives every vehicle", (_, { title, text }) => {
    for (const { id } of PRESETS) {
      const strategy = own.strategy({ name: title, text, seed: 1 });
      const run = simulate(vehicleById(id), cycleById("nycc"), strategy);
      expect(traceQuality(run.log).secondsOutside, id).toBe(0);
      strategy.close();
    }
  });

  it.each(OWN_EXAMPLES.map((e) => [e.id, e] as const))("%s uses only what is documented", (_, { text }) => {
    const known = [...OWN_INPUTS.map(({ name }) => name), "vehicle"];
    for (const [, name] of text.matchAll(/\bnow\.(\w+)/g)) expect(known).toContain(name);
    const vehicle = OWN_VEHICLE.map(({ name }) => name);
    for (const [, name] of text.matchAll(/\bvehicle\.(\w+)/g)) expect(vehicle).toContain(name);
    for (const [, name] of text.matchAll(/\b(engine\w+): /g))
      expect(OWN_ANSWER.map((field) => field.name)).toContain(name);
  });
});
