import { describe, expect, it } from "vitest";
import type { VehicleInput } from "../../../sim/parameters/schema.ts";
import { DECLARATIONS } from "../../../sim/vehicle/declarations.ts";
import { readVehicle } from "../../../sim/vehicle/read.ts";
import { faultsOf } from "../../cycles/faults-of.ts";

const refused = (input: unknown) => faultsOf(() => readVehicle(input, ""));

/** The only fault of an input. */
function only(input: unknown) {
  const faults = refused(input);
  expect(faults.map((fault) => fault.where)).toHaveLength(1);
  return faults[0] ?? { what: "", where: "", value: "", accepted: "" };
}

const gears = (sunTeeth: number, planetTeeth: number, ringTeeth: number, planets: number): VehicleInput => ({
  gearSet: { sunTeeth, planetTeeth, ringTeeth, planets },
});

const map = (change: object = {}): VehicleInput => ({
  engine: {
    map: {
      speed: [100, 300, 530],
      torque: [0, 70, 140],
      fuelPower: [
        [4000, 25000, 48000],
        [14000, 68000, 130000],
        [35000, 140000, 270000],
      ],
      ...change,
    },
  },
});

const steep = [
  [30000, 50000, 90000],
  [60000, 90000, 150000],
  [120000, 180000, 300000],
];

/** name, input, place, value found, what is wrong, what is accepted */
type Row = readonly [string, unknown, string, string, RegExp, RegExp];

describe("what a declaration refuses", () => {
  const rows: readonly Row[] = [
    ["too small", { body: { mass: 10 } }, "body.mass", "10", /too small/, /^300 … 12000 kg: test mass/],
    [
      "too large",
      { finalDrive: { ratio: 13 } },
      "finalDrive.ratio",
      "13",
      /too large/,
      /^1 … 12: ring turns/,
    ],
    [
      "a word for a number",
      { engine: { idleSpeed: "fast" } },
      "engine.idleSpeed",
      '"fast"',
      /not a number/,
      /rad\/s/,
    ],
    ["not-a-number", { body: { mass: Number.NaN } }, "body.mass", "NaN", /not a finite number/, /kg/],
    ["infinity", { body: { mass: 1 / 0 } }, "body.mass", "Infinity", /not a finite number/, /kg/],
    ["null", { body: { mass: null } }, "body.mass", "null", /not a number/, /kg/],
    [
      "half a tooth",
      { gearSet: { sunTeeth: 40.5 } },
      "gearSet.sunTeeth",
      "40.5",
      /whole/,
      /a whole number, 12 … 200/,
    ],
    [
      "a number for a list",
      { battery: { cellSoc: 1 } },
      "battery.cellSoc",
      "1",
      /not a list/,
      /a list of 2 to 500/,
    ],
    ["a list of one", { battery: { cellSoc: [0] } }, "battery.cellSoc", "0", /too few/, /a list of 2 to 500/],
    [
      "one bad element",
      { battery: { cellSoc: [0, 2] } },
      "battery.cellSoc[1]",
      "2",
      /too large/,
      /^0 … 1: state/,
    ],
    [
      "a word for a flag",
      { engine: { oneWayClutch: "yes" } },
      "engine.oneWayClutch",
      '"yes"',
      /neither/,
      /true or false/,
    ],
    [
      "an unknown word",
      { body: { roadLoad: "abc" } },
      "body.roadLoad",
      '"abc"',
      /known words/,
      /formula or coastdown/,
    ],
    ["a bad short name", { id: "No Spaces" }, "id", '"No Spaces"', /form/, /a-z, 0-9 and hyphen/],
    ["an empty name", { name: "" }, "name", '""', /form/, /1 to 80 characters/],
    ["a later version", { schemaVersion: 2 }, "schemaVersion", "2", /too large/, /1 … 1: version/],
    ["a list for a group", { engine: [1] }, "engine", "1", /not a group/, /displacement/],
    ["a word for a vehicle", "compact", "vehicle", '"compact"', /not a group/, /schemaVersion/],
    ["nothing at all", null, "vehicle", "null", /not a group/, /schemaVersion/],
    [
      "a map without torques",
      map({ torque: undefined }),
      "engine.map.torque",
      "",
      /missing/,
      /N m: engine map/,
    ],
    [
      "a bad cell of a map",
      map({
        fuelPower: [
          [1, 2, 3],
          [1, -2, 3],
          [1, 2, 3],
        ],
      }),
      "engine.map.fuelPower[1][1]",
      "-2",
      /too small/,
      /^0 … 3000000 W/,
    ],
  ];
  it.each(rows)("%s", (_, input, where, value, what, accepted) => {
    const fault = only(input);
    expect(fault.where).toBe(where);
    expect(fault.value).toBe(value);
    expect(fault.what).toMatch(what);
    expect(fault.accepted).toMatch(accepted);
  });

  it("names an unknown parameter with the nearest known one", () => {
    const fault = only({ engine: { startFule: 8000 } });
    expect(fault).toMatchObject({ where: "engine.startFule", value: "8000" });
    expect(fault.what).toMatch(/nearest known is startFuel$/);
    expect(only({ enigne: {} }).what).toMatch(/nearest known is engine$/);
    const hostile = refused(JSON.parse('{"__proto__": 1, "body": {}, "boby": 2}'));
    expect(hostile.map((fault) => fault.where)).toEqual(["__proto__", "boby"]);
  });

  it("gives one fault for each problem, with the file's name before the path", () => {
    const input = { body: { mass: 1, dragArea: "big" }, battery: { cels: 3 } };
    const faults = faultsOf(() => readVehicle(input, "my.json"));
    expect(faults.map((fault) => fault.where).sort()).toEqual([
      "my.json: battery.cels",
      "my.json: body.dragArea",
      "my.json: body.mass",
    ]);
  });
});

describe("what does not belong together", () => {
  const rows: readonly Row[] = [
    // A6 of a public transmission calculation: 21/43/108 with three planets, made to fit by profile shift.
    [
      "a profile-shifted set",
      gears(21, 43, 108, 3),
      "gearSet.ringTeeth",
      "108",
      /profile-shifted sets are not covered/,
      /sun \+ 2 × planet = 107/,
    ],
    [
      "planets that cannot be put in",
      gears(40, 30, 100, 3),
      "gearSet.planets",
      "3",
      /46\.67, not whole/,
      /^with these teeth 2 or 4 or 5 planets \(/,
    ],
    [
      "planets that touch",
      gears(40, 30, 100, 7),
      "gearSet.planets",
      "7",
      /touch/,
      /^with these teeth 2 or 4 or 5 planets \(/,
    ],
    ["an undercut sun", gears(16, 28, 72, 4), "gearSet.sunTeeth", "16", /undercut/, /17\.1, rounded to 17/],
    [
      "ring tips in the planets' flanks",
      gears(26, 18, 62, 4),
      "gearSet.planetTeeth",
      "18",
      /dig into/,
      /at least 2\d/,
    ],
    [
      "a weak output machine",
      { outputMachine: { peakTorque: 5 }, body: { mass: 12000, frictionBrakeForce: 1e5 } },
      "outputMachine.peakTorque",
      "5",
      /pull away/,
      /above \d+.* N m/,
    ],
    [
      "idle above the greatest speed",
      {
        engine: { idleSpeed: 160, maxSpeed: 200, fullLoadSpeed: [100, 200], fullLoadTorque: [90, 90] },
        sunMachine: { maxSpeed: 500 },
      },
      "sunMachine.maxSpeed",
      "500",
      /idling at rest over-speeds/,
      /above 589/,
    ],
    [
      "an easy breakaway",
      { engine: { breakaway: 5 } },
      "engine.breakaway",
      "5",
      /more easily/,
      /at least friction0 = 10\.5 N m/,
    ],
    [
      "an engine never warm",
      { engine: { noStopBelow: 370 } },
      "engine.noStopBelow",
      "370",
      /never be warm/,
      /363\.1.* K/,
    ],
    [
      "efficiency gone with speed",
      { engine: { speedFall: 0.8, bestSpeed: 200 } },
      "engine.speedFall",
      "0.8",
      /falls to nothing/,
      /at most 0\.2/,
    ],
    [
      "efficiency gone with load",
      { engine: { loadFall: 20, loadKnee: 0.5 } },
      "engine.loadFall",
      "20",
      /falls to nothing/,
      /at most 2\.8/,
    ],
    [
      "curves of two lengths",
      { engine: { fullLoadTorque: [98, 110] } },
      "engine.fullLoadTorque",
      "98, 110",
      /2 torques for 6/,
      /6 values in N m/,
    ],
    [
      "a curve that turns back",
      { engine: { fullLoadSpeed: [100, 150, 140, 300, 400, 530] } },
      "engine.fullLoadSpeed",
      "100, 150, 140, 300, 400, 530",
      /place 3/,
      /more than 150 rad\/s/,
    ],
    [
      "a curve too short",
      { engine: { fullLoadSpeed: [100, 150, 200, 300, 400, 500] } },
      "engine.fullLoadSpeed",
      "100, 150, 200, 300, 400, 500",
      /covers 100 … 500/,
      /105 \(idle\) to at least 523\.6 rad\/s/,
    ],
    [
      "no torque",
      { engine: { fullLoadTorque: [98, 110, 0, 127, 131, 126] } },
      "engine.fullLoadTorque",
      "98, 110, 0, 127, 131, 126",
      /place 3/,
      /above 0 N m/,
    ],
    [
      "map: axis that falls",
      map({ speed: [100, 90, 530] }),
      "engine.map.speed",
      "100, 90, 530",
      /place 2/,
      /more than 100 rad\/s/,
    ],
    [
      "map: rows missing",
      map({
        fuelPower: [
          [1, 2, 3],
          [1, 2, 3],
        ],
      }),
      "engine.map.fuelPower",
      "a list of 2",
      /2 rows for 3/,
      /3 rows in W/,
    ],
    [
      "map: ragged row",
      map({
        fuelPower: [
          [1, 2, 3],
          [1, 2],
          [1, 2, 3],
        ],
      }),
      "engine.map.fuelPower",
      "a list of 3",
      /row 2 has 2/,
      /3 values in every row/,
    ],
    [
      "map: speeds not covered",
      map({ speed: [100, 300, 500] }),
      "engine.map.speed",
      "100, 300, 500",
      /covers 100 … 500/,
      /523\.6/,
    ],
    [
      "map: torque not covered",
      map({ torque: [0, 70, 120] }),
      "engine.map.torque",
      "0, 70, 120",
      /covers 0 … 120/,
      /at least 131 N m/,
    ],
    [
      "map: part load not covered",
      map({ torque: [60, 90, 140], fuelPower: steep }),
      "engine.map.torque",
      "60, 90, 140",
      /covers 60/,
      /at most 32\.75/,
    ],
    [
      "map: fuel that falls",
      map({
        fuelPower: [
          [4e3, 25e3, 48e3],
          [14e3, 12e4, 11e4],
          [35e3, 14e4, 27e4],
        ],
      }),
      "engine.map.fuelPower",
      "a list of 3",
      /row 2, column 3/,
      /more than 120000 W/,
    ],
    [
      "map: too efficient",
      map({
        fuelPower: [
          [4e3, 25e3, 48e3],
          [14e3, 4e4, 13e4],
          [35e3, 14e4, 27e4],
        ],
      }),
      "engine.map.fuelPower",
      "a list of 3",
      /row 2, column 2 is above 0\.5/,
      /at least 42000 W/,
    ],
    [
      "a sun machine too weak for the engine",
      { sunMachine: { peakTorque: 20 } },
      "sunMachine.peakTorque",
      "20",
      /holds only 53/,
      /at least 22\.46, for all of it 37\.43 N m/,
    ],
    [
      "a sun machine that cannot crank",
      { engine: { breakaway: 200 } },
      "sunMachine.peakTorque",
      "42",
      /cannot start/,
      /above 57\.14 N m/,
    ],
    [
      "idle over-speeding the sun",
      { sunMachine: { maxSpeed: 300 } },
      "sunMachine.maxSpeed",
      "300",
      /= 367\.5 rad\/s/,
      /above 386\.8 rad\/s/,
    ],
    [
      "battery: lengths",
      { battery: { cellVoltage: [3, 4] } },
      "battery.cellVoltage",
      "3, 4",
      /2 voltages for 9/,
      /9 values in V/,
    ],
    [
      "battery: charge that falls",
      { battery: { cellSoc: [0, 0.5, 0.4, 1], cellVoltage: [3.2, 3.5, 3.6, 4] } },
      "battery.cellSoc",
      "0, 0.5, 0.4, 1",
      /place 3/,
      /more than 0\.5/,
    ],
    [
      "battery: not to full",
      { battery: { cellSoc: [0, 0.9], cellVoltage: [3.2, 4] } },
      "battery.cellSoc",
      "0, 0.9",
      /empty to full/,
      /first value 0, last value 1/,
    ],
    [
      "battery: voltage that falls",
      { battery: { cellSoc: [0, 0.5, 1], cellVoltage: [3.2, 3.9, 3.8] } },
      "battery.cellVoltage",
      "3.2, 3.9, 3.8",
      /place 3/,
      /at least 3\.9 V/,
    ],
    [
      "battery: no window",
      { battery: { socFloor: 0.8 } },
      "battery.socFloor",
      "0.8",
      /window is empty/,
      /below socCeiling = 0\.8/,
    ],
    [
      "battery: target outside",
      { battery: { socTarget: 0.9 } },
      "battery.socTarget",
      "0.9",
      /target is outside/,
      /between socFloor = 0\.35 and/,
    ],
    [
      "battery: start outside",
      { battery: { socStart: 0.2 } },
      "battery.socStart",
      "0.2",
      /start is outside/,
      /socCeiling = 0\.8/,
    ],
    [
      "battery: empty below its least voltage",
      { battery: { cellVoltageMin: 3.7 } },
      "battery.cellVoltageMin",
      "3.7",
      /already below/,
      /below 3\.65 V/,
    ],
    [
      "battery: full above its greatest",
      { battery: { cellVoltageMax: 3.9 } },
      "battery.cellVoltageMax",
      "3.9",
      /already above/,
      /above 3\.93 V/,
    ],
    [
      "battery: least voltage past greatest power",
      { battery: { cellVoltageMin: 1.5 } },
      "battery.cellVoltageMin",
      "1.5",
      /half the open-circuit/,
      /at least 1\.965 V/,
    ],
    [
      "battery: reserve it cannot give",
      { control: { crankReserve: 40000 } },
      "control.crankReserve",
      "40000",
      /never be stopped/,
      /at most 2\d+ W/,
    ],
    [
      "battery: cannot crank",
      { battery: { maxDischargeCurrent: 10 }, control: { crankReserve: 0 } },
      "battery.maxDischargeCurrent",
      "10",
      /cranking needs/,
      /or more.* A/,
    ],
    [
      "fade out of order",
      { control: { fadeEnd: 3 } },
      "control.fadeEnd",
      "3",
      /end before/,
      /below fadeStart = 2\.5 m\/s/,
    ],
    [
      "stop above start",
      { control: { stopPower: 7000 } },
      "control.stopPower",
      "7000",
      /at which it starts/,
      /below startPower = 7000 W/,
    ],
    [
      "least power too great",
      { control: { leastEnginePower: 90000 } },
      "control.leastEnginePower",
      "90000",
      /greatest power/,
      /at most 65970 W/,
    ],
    [
      "thermostat too great",
      { control: { thermostatPower: 90000 } },
      "control.thermostatPower",
      "90000",
      /greatest power/,
      /at most 65970 W/,
    ],
  ];
  it.each(rows)("%s", (_, input, where, value, what, accepted) => {
    const fault = only(input);
    expect(fault.where).toBe(where);
    expect(fault.value).toBe(value);
    expect(fault.what).toMatch(what);
    expect(fault.accepted).toMatch(accepted);
  });

  it("needs no check of idle below the greatest speed: their ranges do not touch", () => {
    const idle = DECLARATIONS.find((declaration) => declaration.path === "engine.idleSpeed")?.meta;
    const most = DECLARATIONS.find((declaration) => declaration.path === "engine.maxSpeed")?.meta;
    expect(idle && most && "max" in idle && "min" in most && idle.max < most.min).toBe(true);
  });
});

describe("what is accepted", () => {
  it("takes the defaults for everything left out, and freezes the result", () => {
    const vehicle = readVehicle({}, "");
    expect(vehicle.id).toBe("compact");
    expect(Object.isFrozen(vehicle.engine.fullLoadTorque)).toBe(true);
    expect(() => readVehicle(vehicle, "again")).not.toThrow();
    expect(readVehicle(structuredClone(vehicle), "copy")).toEqual(vehicle);
  });

  it("takes curves whose ends differ from the engine's speeds by rounding only", () => {
    // 5000 rev/min as the preset has it, to four decimals, and as a form reads it.
    const typed = (5000 * Math.PI) / 30;
    const engine = {
      maxSpeed: 523.5988,
      fullLoadSpeed: [104.7198, 157.0796, 209.4395, 314.1593, 418.879, typed],
    };
    expect(typed).toBeLessThan(engine.maxSpeed);
    expect(() => readVehicle({ engine }, "")).not.toThrow();
    expect(() => readVehicle(map({ speed: [100, 300, typed] }), "")).not.toThrow();
  });

  it("takes an engine map that is complete", () => {
    expect(readVehicle(map(), "").engine.map?.torque).toEqual([0, 70, 140]);
  });

  // 40/32/104 with four planets: common practice, no source; it meets the three conditions by hand
  // (40 + 64 = 104, 144/4 = 36, 34 < 50.91).
  it("takes the tooth numbers 40/32/104 with four planets", () => {
    expect(readVehicle(gears(40, 32, 104, 4), "").gearSet.ringTeeth).toBe(104);
  });

  it("takes 17 teeth, the usual least without undercut", () => {
    expect(() => readVehicle(gears(17, 25, 67, 3), "")).not.toThrow();
  });
});
