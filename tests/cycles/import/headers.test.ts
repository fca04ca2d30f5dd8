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
  ])("%s is %s in %s", (name, role, unit) => {
    const reading = readHeader(name);
    expect(reading?.role).toBe(role);
    expect(reading?.unit?.id ?? null).toBe(unit);
    expect(reading?.unknownUnit).toBe("");
  });

  it.each([
    "engine_speed_radps",
    "engine speed",
    "target_mps",
    "fan speed [km/h]",
    "s",
    "h",
    "%",
    "distance_m",
    "times",
    "soc",
    "grade 1",
    "upgrade",
    "v2",
    "",
  ])("%j is none of the three", (name) => {
    expect(readHeader(name)).toBeNull();
  });

  it("keeps a unit it does not know", () => {
    expect(readHeader("speed [furlong]")).toEqual({ role: "speed", unit: null, unknownUnit: "furlong" });
  });
});
