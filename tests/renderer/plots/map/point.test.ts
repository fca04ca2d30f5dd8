import { describe, expect, it } from "vitest";
import { cloudOf, MOST_MARKS } from "../../../../renderer/plots/map/cloud.ts";
import {
  efficiencyAt,
  hidesPoint,
  MAPS,
  pointReader,
  powerAt,
} from "../../../../renderer/plots/map/kinds.ts";
import { FAMILIES, markSvg } from "../../../../renderer/plots/map/marks.ts";
import { mapWords, pointWords } from "../../../../renderer/plots/map/words.ts";
import { HIDEABLE, type HideableId } from "../../../../renderer/state/predict.ts";
import { readNow } from "../../../../renderer/state/run.ts";
import { brakeEfficiency } from "../../../../sim/drivetrain/engine.ts";
import { machineEfficiency } from "../../../../sim/drivetrain/machine.ts";
import { LEDGER_LINES } from "../../../../sim/run/ledger.ts";
import { roadRun } from "../../support/road-run.ts";

const run = roadRun("compact", "us06");
const { vehicle } = run.request;
const units = { shaft: "rpm", road: "kmh" } as const;
const nothing: ReadonlySet<HideableId> = new Set();
const rows = Array.from({ length: 50 }, (_, i) => 60 + i * 117);

describe("the point of a map", () => {
  it("is the row's own", () => {
    for (const row of rows) {
      const { at } = readNow(run, row);
      expect(pointReader("engine", run)(row)).toEqual([at.engineSpeed, at.engineTorque]);
      expect(pointReader("sunMachine", run)(row)).toEqual([at.sunMachineSpeed, at.sunMachineTorque]);
      expect(pointReader("outputMachine", run)(row)).toEqual([at.outputMachineSpeed, at.outputMachineTorque]);
      expect(pointReader("wheels", run)(row)[0]).toBe(at.speed);
    }
  });

  it("has the power that the flow sheet has, and torque times speed comes to it", () => {
    for (const row of rows) {
      const now = readNow(run, row);
      for (const map of MAPS) {
        const [x, y] = pointReader(map, run)(row);
        const power = powerAt(map, now.flows);
        // The flow is at the step's mean speed, the point at its end.
        expect(Math.abs(x * y - power)).toBeLessThan(150 + 0.02 * Math.abs(power));
      }
    }
  });

  it("has the efficiency that the map has there", () => {
    let [engine, machines] = [0, 0];
    const starts = run.log.ledgerLine(LEDGER_LINES.findIndex(({ id }) => id === "start_fuel"));
    for (const row of rows) {
      const now = readNow(run, row);
      const { at, flows } = now;
      const own = efficiencyAt("engine", flows);
      // The extra fuel of a start is no matter of the map.
      const started = starts[row] !== starts[row - 6];
      if (own !== null && !started && at.engineTorque > 20 && flows.engine > 5000) {
        engine += 1;
        const map = brakeEfficiency(vehicle.engine, null, at.engineSpeed, at.engineTorque);
        // The run's engine may be a little cooler than the warm one of the map.
        expect(Math.abs(own - map)).toBeLessThan(0.012);
      }
      const machine = efficiencyAt("outputMachine", flows);
      if (machine !== null && Math.abs(flows.outputShaft) > 3000) {
        machines += 1;
        const map = machineEfficiency(vehicle.outputMachine, at.outputMachineTorque, at.outputMachineSpeed);
        expect(Math.abs(machine - map)).toBeLessThan(0.003);
      }
    }
    expect(engine).toBeGreaterThan(10);
    expect(machines).toBeGreaterThan(10);
  });

  it("hides when one of its coordinates is asked for, and its words with it", () => {
    const now = readNow(run, 3300);
    const hides = (map: (typeof MAPS)[number]): readonly HideableId[] =>
      HIDEABLE.filter((id) => hidesPoint(map, new Set([id])));
    expect(hides("engine")).toEqual(["engine-power", "carrier-speed"]);
    expect(hides("sunMachine")).toEqual(["sun-machine-power", "sun-speed"]);
    expect(hides("wheels")).toContain("road-speed");
    expect(pointWords("engine", run, now, units, new Set(["carrier-speed"]))).toBeNull();
    const said = mapWords("engine", run, now, units, new Set(["carrier-speed"]));
    expect(said).not.toMatch(/\d/);
    expect(pointWords("engine", run, now, units, new Set(["fuel"]))?.efficiency).toBe("");
  });

  it("says the engine's columns at display precision", () => {
    for (const row of rows) {
      const now = readNow(run, row);
      const plain = mapWords("engine", run, now, units, nothing)
        .replaceAll("\u202f", "")
        .replaceAll("−", "-");
      const rpm = ((now.at.engineSpeed * 30) / Math.PI).toFixed(0);
      expect(plain).toContain(`Engine now: ${rpm} rev/min`);
      expect(plain).toContain(`${now.at.engineTorque.toFixed(1).replace(/^-(0\.0)$/, "$1")} N·m`);
      expect(plain).toContain(`${(now.flows.engine / 1000).toFixed(1).replace(/^-(0\.0)$/, "$1")} kW`);
    }
  });
});

describe("the cloud at the wheels", () => {
  it("has every row of a short run by its family, and a thinned one of a long", () => {
    const { marks } = cloudOf(roadRun("compact", "launch"));
    const count = FAMILIES.reduce((sum, family) => sum + marks[family].length / 2, 0);
    expect(count).toBe(roadRun("compact", "launch").log.rows);
    const long = cloudOf(run);
    const thinned = FAMILIES.reduce((sum, family) => sum + long.marks[family].length / 2, 0);
    expect(thinned).toBeLessThanOrEqual(MOST_MARKS);
    expect(thinned).toBeGreaterThan(MOST_MARKS / 3);
    expect(long.marks.engine.length).toBeGreaterThan(0);
    expect(long.marks.braking.length).toBeGreaterThan(0);
  });

  it("lies within its extent, whose ends are rounded out", () => {
    const { marks, extent } = cloudOf(run);
    for (const family of FAMILIES) {
      marks[family].forEach((value, i) => {
        if (i % 2 === 0) return;
        expect(value).toBeGreaterThanOrEqual(extent.least);
        expect(value).toBeLessThanOrEqual(extent.most);
      });
    }
    expect(Math.abs(extent.least % 500)).toBe(0);
  });

  it("has a shape of its own for each family", () => {
    const shapes = FAMILIES.map((family) => markSvg(family, 0, 0, 5));
    expect(new Set(shapes).size).toBe(FAMILIES.length);
  });
});
