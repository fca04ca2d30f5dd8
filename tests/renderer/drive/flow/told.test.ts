import { describe, expect, it } from "vitest";
import { ledgerAt } from "../../../../renderer/drive/flow/ledger-flows.ts";
import { toldEnergies, toldPowers, toldWords } from "../../../../renderer/drive/flow/told.ts";
import { at } from "../../../../shared/at.ts";
import { FLOWS, flowsAt } from "../../../../sim/run/flows.ts";
import { LEDGER_LINES } from "../../../../sim/run/ledger.ts";
import { runsOfAllKinds, spread } from "./runs.ts";

const runs = runsOfAllKinds();
const NOTHING_HIDDEN: ReadonlySet<never> = new Set();
const read = (text: string): number => Number(text.replace("\u2212", "-").replaceAll("\u202f", ""));

describe("the flow sheet in words", () => {
  it("says each flow as the log has it, to 0.1 kW with its sign", () => {
    for (const { log } of runs) {
      for (const row of spread(log.rows, 50)) {
        const told = new Map(
          toldPowers(flowsAt(log, row), NOTHING_HIDDEN).map(([id, , value]) => [id, value]),
        );
        FLOWS.forEach((id, index) => {
          const watts = at(log.flows, row * FLOWS.length + index);
          const said = told.get(`flow:${id}`) ?? "";
          if (said === "< 0.1") expect(Math.abs(watts)).toBeLessThan(50);
          else expect(read(said)).toBeCloseTo(Number((watts / 1000).toFixed(1)), 9);
        });
      }
    }
  });

  it("says each line of the ledger in its unit", () => {
    const { log } = at(runs, 0);
    const ledger = ledgerAt(log, log.rows - 1);
    const told = toldEnergies(ledger, { per: 1000, decimals: 1, unit: "kJ" }, NOTHING_HIDDEN);
    expect(told.map(([id]) => id)).toEqual(LEDGER_LINES.map(({ id }) => `ledger:${id}`));
    told.forEach(([, , value], index) => {
      expect(read(value)).toBeCloseTo(Number((at(ledger, index) / 1000).toFixed(1)), 9);
    });
  });

  it("says '?' for what is asked, and for the bars that would tell it", () => {
    const flows = flowsAt(at(runs, 0).log, 4540);
    const told = new Map(toldPowers(flows, new Set(["battery-power"] as const)).map(([id, , v]) => [id, v]));
    for (const id of ["flow:battery", "flow:source", "flow:batteryLoss", "node:dcLink", "node:battery"]) {
      expect(told.get(id), id).toBe("?");
    }
    expect(told.get("flow:engine")).not.toBe("?");
    const energies = toldEnergies(
      ledgerAt(at(runs, 0).log, 4540),
      { per: 1000, decimals: 0, unit: "kJ" },
      new Set(["fuel"] as const),
    );
    expect(new Map(energies.map(([id, , v]) => [id, v])).get("ledger:running_fuel")).toBe("?");
  });

  it("leaves nothing out but what is nothing", () => {
    const flows = flowsAt(at(runs, 0).log, 4540);
    const words = toldWords(toldPowers(flows, NOTHING_HIDDEN));
    expect(words).toContain("Fuel 6");
    expect(words).not.toContain("Friction brakes");
  });
});
