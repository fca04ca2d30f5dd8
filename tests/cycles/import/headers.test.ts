import { describe, expect, it } from "vitest";
import { readHeader } from "../../../cycles/import/headers.ts";

describe("readHeader", () => {
  it.each([
    ["time_s", "time", "s"],
    ["Time [s]", "time", "s"],
    ["t", "time", null],
    ["t (ms)", "time", "ms"],
    ["seconds", "time", "s"],
    ["timeMs", "time", "ms"],
    ["elapsed time in min", "time", "min"],
    ["speed_kmh", "speed", "km/h"],
    ["Speed (km/h)", "speed", "km/h"],
    ["speed_km_h", "speed", "km/h"],
    ["speedKmh", "speed", "km/h"],
    ["vehicle_speed_mph", "speed", "mph"],
    ["speed_mps", "speed", "m/s"],
    ["v [m/s]", "speed", "m/s"],
    ["v, m/s", "speed", "m/s"],
    ["Speed/kmh", "speed", "km/h"],
    ["km/h", "speed", "km/h"],
    ["[km/h]", "speed", "km/h"],
    ["MPH", "speed", "mph"],
    ["velocity", "speed", null],
    ["grade", "grade", null],
    ["grade_percent", "grade", "%"],
    ["slope%", "grade", "%"],
    ["Slope [%]", "grade", "%"],
    ["road_grade_deg", "grade", "deg"],
    ["gradient [-]", "grade", "rise/run"],
    ["engine_speed_radps", "engineSpeed", "rad/s"],
    ["engine speed", "engineSpeed", null],
    ["Engine Speed (rpm)", "engineSpeed", "rev/min"],
    ["rpm", "engineSpeed", "rev/min"],
    ["soc", "soc", null],
    ["SOC [%]", "soc", "%"],
    ["Battery current (A)", "batteryCurrent", "A"],
    ["battery_current_a", "batteryCurrent", "A"],
  ])("%s is %s in %s", (name, role, unit) => {
    const reading = readHeader(name);
    expect(reading?.role).toBe(role);
    expect(reading?.unit?.id ?? null).toBe(unit);
    expect(reading?.unknownUnit).toBe("");
  });

  it.each([
    "machine speed",
    "sun_machine_speed_radps",
    "target_mps",
    "fan speed [km/h]",
    "s",
    "h",
    "%",
    "distance_m",
    "times",
    "soccer",
    "engine torque",
    "grade 1",
    "upgrade",
    "v2",
    "",
  ])("%j is none of them", (name) => {
    expect(readHeader(name)).toBeNull();
  });

  it("keeps a unit it does not know", () => {
    expect(readHeader("speed [furlong]")).toEqual({ role: "speed", unit: null, unknownUnit: "furlong" });
  });
});
