import { describe, expect, it } from "vitest";
import { cycleById } from "../../../cycles/catalogue.ts";
import { at } from "../../../shared/at.ts";
import { rules } from "../../../sim/control/strategies/rules.ts";
import { FLOW_NODES, FLOWS, type FlowId, type Flows, flowsAt, nodeRest } from "../../../sim/run/flows.ts";
import { LEDGER_LINES } from "../../../sim/run/ledger.ts";
import { logReader } from "../../../sim/run/log.ts";
import { simulate } from "../../../sim/run/simulate.ts";
import { PRESETS, vehicleById } from "../../../sim/vehicle/presets/registry.ts";

/** Single precision keeps seven digits; the largest flow decides. */
const rounding = (flows: Flows): number => 1e-6 * Math.max(100, ...FLOWS.map((id) => Math.abs(flows[id])));

const CYCLES = ["udds", "us06", "hill-down", "back-up"];

describe("flows of a row", () => {
  for (const preset of PRESETS) {
    for (const id of CYCLES) {
      it(`add up at every node of every row: ${preset.id} on ${id}`, () => {
        const run = simulate(vehicleById(preset.id), cycleById(id), rules);
        for (let row = 0; row < run.log.rows; row += 1) {
          const flows = flowsAt(run.log, row);
          for (const node of FLOW_NODES) {
            if (Math.abs(nodeRest(flows, node)) > rounding(flows)) {
              expect.fail(`${node.id} at row ${row}: ${nodeRest(flows, node)} W of ${JSON.stringify(flows)}`);
            }
          }
        }
      });
    }
  }

  it("are what the log's own columns say", () => {
    const { log } = simulate(vehicleById("compact"), cycleById("udds"), rules);
    const same: readonly (readonly [FlowId, (row: number) => number])[] = [
      ["fuel", (row) => at(log.view("fuelPower"), row)],
      ["battery", (row) => at(log.view("batteryPower"), row)],
      ["sunElectric", (row) => -at(log.view("sunMachineElectric"), row)],
      ["outputElectric", (row) => at(log.view("outputMachineElectric"), row)],
      ["auxiliary", (row) => at(log.view("auxiliary"), row)],
    ];
    for (let row = 1; row < log.rows; row += 1) {
      const flows = flowsAt(log, row);
      for (const [id, column] of same) {
        expect(Math.abs(flows[id] - column(row))).toBeLessThan(rounding(flows));
      }
    }
  });

  it("of every step, summed, are the ledger's lines", () => {
    const { log } = simulate(vehicleById("compact"), cycleById("brake-stop"), rules, { logEvery: "step" });
    const sum = (id: FlowId): number => {
      const index = FLOWS.indexOf(id);
      let total = 0;
      for (let row = 1; row < log.rows; row += 1) total += 0.01 * at(log.flows, row * FLOWS.length + index);
      return total;
    };
    const line = (id: string): number => {
      const values = log.ledgerLine(LEDGER_LINES.findIndex((one) => one.id === id));
      return at(values, log.rows - 1);
    };
    const pairs = [
      [sum("meshLoss"), line("mesh_loss")],
      [sum("sunLoss"), line("sun_machine_loss")],
      [sum("outputLoss"), line("output_machine_loss")],
      [sum("gearsLoss"), line("final_drive_loss") + line("reduction_loss")],
      [sum("air"), line("air")],
      [sum("rolling"), line("rolling")],
      [sum("brake"), line("friction_brake") + line("contact_loss")],
      [sum("speedingUp") + sum("ringSpin") + sum("gearSetSpin"), line("kinetic_change")],
      [-sum("source"), line("battery_change")],
    ] as const;
    for (const [flows, ledger] of pairs) {
      expect(Math.abs(flows - ledger)).toBeLessThan(1e-4 * Math.max(1000, Math.abs(ledger)));
    }
  });
});

describe("a log as plain data", () => {
  it("reads the same after it went through a copy", () => {
    const { log } = simulate(vehicleById("compact"), cycleById("launch"), rules);
    const read = logReader(structuredClone(log.parts()));
    expect(read.rows).toBe(log.rows);
    expect(read.view("soc")).toEqual(log.view("soc"));
    expect(read.carrierAngle).toEqual(log.carrierAngle);
    expect(read.ledgerLine(18)).toEqual(log.ledgerLine(18));
    expect(read.flows).toEqual(log.flows);
    expect(read.limits).toEqual(log.limits);
    expect(read.engineMode).toEqual(log.engineMode);
  });
});
