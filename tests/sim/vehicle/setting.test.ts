import { describe, expect, it } from "vitest";
import { readVehicle } from "../../../sim/vehicle/read.ts";
import { applySetting, applySettings } from "../../../sim/vehicle/setting.ts";
import { faultsOf } from "../../cycles/faults-of.ts";

describe("applySetting", () => {
  it("sets numbers, lists, tables, flags and words in a copy", () => {
    const before = { engine: { inertia: 0.2 } };
    const after = applySettings(before, [
      "engine.startFuel=8000",
      " body.mass = 1.6e3",
      "battery.cellSoc=0, 0.5, 1",
      "battery.cellVoltage=3.2,3.7,4.1",
      "engine.oneWayClutch=true",
      "body.roadLoad=coastdown",
      "name=My own=car",
    ]);
    expect(before).toEqual({ engine: { inertia: 0.2 } });
    const vehicle = readVehicle(after, "");
    expect(vehicle.engine).toMatchObject({ inertia: 0.2, startFuel: 8000, oneWayClutch: true });
    expect(vehicle.body).toMatchObject({ mass: 1600, roadLoad: "coastdown" });
    expect(vehicle.battery.cellVoltage).toEqual([3.2, 3.7, 4.1]);
    expect(vehicle.name).toBe("My own=car");
    expect(applySetting(undefined, "engine.map.fuelPower", "1,2;3,4")).toEqual({
      engine: {
        map: {
          fuelPower: [
            [1, 2],
            [3, 4],
          ],
        },
      },
    });
  });

  it.each([
    ["engine.startFule", "1", /nearest known is engine\.startFuel$/, /dotted path/],
    ["startFuel", "1", /nearest known is engine\.startFuel$/, /dotted path/],
    ["engine", "1", /a group of parameters/, /engine\.displacement, /],
    ["", "1", /a group of parameters/, /gearSet/],
    ["__proto__.polluted", "1", /unknown parameter/, /dotted path/],
    ["constructor", "1", /unknown parameter/, /dotted path/],
    ["body.mass", "heavy", /not a number/, /300 … 12000 kg/],
    ["body.mass", "1,600", /not a number/, /300 … 12000 kg/],
    ["body.mass", "0x700", /not a number/, /300 … 12000 kg/],
    ["body.mass", "NaN", /not a number/, /300 … 12000 kg/],
    ["body.mass", " ", /no value/, /300 … 12000 kg/],
    ["body.mass", "5", /too small/, /300 … 12000 kg/],
    ["gearSet.sunTeeth", "40.5", /not a whole number/, /a whole number/],
    ["battery.cellSoc", "0,x,1", /not a number at place 2/, /a list of 2 to 500 numbers/],
    ["battery.cellSoc", "0,2", /too large at place 2/, /a list of 2 to 500 numbers/],
    ["battery.cellSoc", "0", /too few/, /a list of 2 to 500 numbers/],
    ["engine.oneWayClutch", "maybe", /neither true nor false/, /true or false/],
    ["body.roadLoad", "Formula", /known words/, /formula or coastdown/],
    ["id", "", /form/, /a-z/],
  ])("refuses %s=%s", (path, text, what, accepted) => {
    const faults = faultsOf(() => applySetting({}, path, text));
    expect(faults).toHaveLength(1);
    expect(faults[0]?.where).toBe(path || "setting");
    expect(faults[0]?.value).toBe(JSON.stringify(text));
    expect(faults[0]?.what).toMatch(what);
    expect(faults[0]?.accepted).toMatch(accepted);
  });

  it("refuses a text that is no setting, and an input that is no object", () => {
    expect(faultsOf(() => applySettings({}, ["engine.startFuel"]))[0]?.accepted).toMatch(/path=value/);
    expect(faultsOf(() => applySetting("compact", "body.mass", "1600"))[0]?.where).toBe("body.mass");
    expect(faultsOf(() => applySetting({ body: 3 }, "body.mass", "1600"))[0]?.value).toBe("3");
  });
});
