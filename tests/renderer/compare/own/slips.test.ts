import { describe, expect, it } from "vitest";
import { mended, slipsIn } from "../../../../renderer/compare/own/slips.ts";
import { OWN_INPUTS, OWN_VEHICLE } from "../../../../sim/control/own/contract.ts";
import { OWN_EXAMPLES } from "../../../../sim/control/own/examples/registry.ts";

describe("misspelt inputs", () => {
  it("are found with their line, column and the nearest name, and mended by a push", () => {
    const text =
      "export function decide(now) {\n  return { engineOn: now.demnd_kW > now.vehicle.enginPower_kW };\n}\n";
    const slips = slipsIn(text);
    expect(slips.map(({ line, column, name, nearest }) => [line, column, name, nearest])).toEqual([
      [2, 26, "demnd_kW", "demand_kW"],
      [2, 49, "enginPower_kW", "enginePower_kW"],
    ]);
    let better = text;
    for (let i = 0; i < 2; i += 1) {
      const [slip] = slipsIn(better);
      if (slip) better = mended(better, slip);
    }
    expect(slipsIn(better)).toEqual([]);
    expect(better).toContain("now.demand_kW > now.vehicle.enginePower_kW");
  });

  it("are none in what every name of the contract reads, nor in the worked examples", () => {
    const all = [
      ...OWN_INPUTS.map(({ name }) => `now.${name};`),
      ...OWN_VEHICLE.map(({ name }) => `now.vehicle.${name};`),
    ].join("\n");
    expect(slipsIn(all)).toEqual([]);
    for (const { text } of OWN_EXAMPLES) expect(slipsIn(text)).toEqual([]);
  });

  it("are not looked for in comments and texts, nor behind other names", () => {
    expect(slipsIn('// now.x\n/* now.y\n now.z */ const a = "now.b"; unknow.c; snow.d;')).toEqual([]);
  });
});
