import { describe, expect, it } from "vitest";
import { cycleById } from "../../../../cycles/catalogue.ts";
import { traceCsv } from "../../../../cycles/export.ts";
import { tableKind } from "../../../../sim/vehicle/engine-map/table-kind.ts";
import { engineMapCsv, presentEngineMap } from "../../../../sim/vehicle/engine-map/write.ts";
import { PRESETS, vehicleById } from "../../../../sim/vehicle/presets/registry.ts";

describe("what a table holds, by its columns", () => {
  it.each([
    "time_s,speed_kmh",
    "t;v [m/s];grade_percent",
    '# recorded\n\n"Time (s)"\tSpeed (mph)',
    "elapsed time,gps speed,engine speed (rpm),torque (Nm),fuel rate (g/s)",
    "t,v",
    // Its place says that the speed is missing.
    "time_s,height_m",
    '<?xml version="1.0"?>\n<gpx version="1.1">',
  ])("a drive: %s", (text) => {
    expect(tableKind(text).kind).toBe("drive");
  });

  it.each([
    "speed (rev/min),torque (N·m),fuel flow (g/s)",
    "\uFEFFspeed,torque,fuel",
    "n;t;be",
    "rpm|N·m|g/kWh",
    "engine speed in rpm,brake torque in Nm,efficiency (1)",
    // Stamped when it was measured: a shaft's speed is no drive.
    "time_s,speed (rpm),torque (Nm),bsfc (g/kWh)",
    "N·m / rpm / efficiency (%),800,2000,3500",
    "torque;800,5;2000;3500,5",
    ",1000,2000,3000",
    // Its place says that the fuel is missing.
    "rpm,torque_Nm,remarks",
  ])("an engine map: %s", (text) => {
    expect(tableKind(text).kind).toBe("engine map");
  });

  it.each([
    ["", []],
    ["name,price", ["name", "price"]],
    ["speed,note", ["speed", "note"]],
    // A drive without a header is no grid: what comes does not rise.
    ["0,0,0\n1,10,0", ["0", "0", "0"]],
    ["0,0\n1,10", ["0", "0"]],
  ])("neither: %j", (text, header) => {
    expect(tableKind(text)).toEqual({ kind: null, header });
  });

  it("knows what the program itself writes", () => {
    expect(tableKind([...traceCsv(cycleById("udds"))].join("")).kind).toBe("drive");
    for (const { id } of PRESETS) {
      const { engine, fuel } = vehicleById(id);
      expect(tableKind(engineMapCsv(presentEngineMap(engine), fuel.lowerHeat)).kind).toBe("engine map");
    }
  });

  it("looks at the beginning only", () => {
    const long = `speed,torque,fuel\n${"1000,10,1\n".repeat(100_000)}`;
    expect(tableKind(long)).toEqual({ kind: "engine map", header: ["speed", "torque", "fuel"] });
  });
});
