import { describe, expect, it } from "vitest";
import { batteryPowers } from "../../../sim/vehicle/battery-power.ts";
import { derivedFigures } from "../../../sim/vehicle/figures.ts";
import { PRESETS, vehicleById } from "../../../sim/vehicle/presets/registry.ts";
import { readVehicle } from "../../../sim/vehicle/read.ts";

describe("derivedFigures", () => {
  const compact = vehicleById("compact");
  const value = (id: string, vehicle = compact): number => {
    const found = derivedFigures(vehicle).find((figure) => figure.id === id);
    if (!found) throw new Error(`no figure ${id}`);
    return found.value;
  };

  it.each(PRESETS.map((preset) => preset.id))("%s: finite, positive, each id once", (id) => {
    const figures = derivedFigures(vehicleById(id));
    expect(new Set(figures.map((figure) => figure.id)).size).toBe(figures.length);
    for (const figure of figures) {
      expect(figure.value, figure.id).toBeGreaterThan(0);
      expect(Number.isFinite(figure.value), figure.id).toBe(true);
      expect(figure.unit).not.toBe("");
      expect(figure.title).not.toBe("");
    }
  });

  // Lever balance: Benford and Leising, SAE 810102 (from memory); worked by hand for k = 2.6.
  it("splits the engine's torque 0.72222 to 0.27778 at k = 2.6", () => {
    const vehicle = readVehicle({ gearSet: { sunTeeth: 40, planetTeeth: 32, ringTeeth: 104 } }, "");
    expect(value("basic-ratio", vehicle)).toBe(2.6);
    expect(value("ring-torque-share", vehicle)).toBeCloseTo(0.72222, 5);
    expect(value("sun-torque-share", vehicle)).toBeCloseTo(0.27778, 5);
    expect(value("sun-rest-ratio", vehicle)).toBeCloseTo(1.384615, 6);
  });

  it("follows from the compact's parameters, worked by hand", () => {
    const metres = 0.305 / 3.3;
    expect(value("sun-rest-per-1000")).toBeCloseTo(104.71976 * 1.4 * metres, 5);
    expect(value("electric-top-speed")).toBeCloseTo((0.95 * 1100 * metres) / 2.5, 9);
    expect(value("output-top-speed")).toBeCloseTo((1450 / 2.5) * metres, 9);
    expect(value("electric-wheel-force")).toBeCloseTo((190 * 2.5) / metres, 6);
    // 5,000 rev/min and 126 N·m
    expect(value("engine-greatest-power")).toBeCloseTo(126 * 523.5988, 0);
    // 1,530 kg, wheels, ring and output machine at the ring, sun by k², planets by Nr/Np
    const atRing = 0.02 + 0.035 * 2.5 ** 2 + 0.02 * 2.5 ** 2 + 4 * 2.5e-5 * (100 / 30) ** 2;
    expect(value("effective-mass")).toBeCloseTo(1530 + 3.2 / 0.305 ** 2 + atRing / metres ** 2, 6);
  });

  // Best point of the demo engine: 0.384 near 2,000 rev/min, from a separate estimate of ours.
  it("finds the engine's best point", () => {
    expect(value("engine-best-efficiency")).toBeCloseTo(0.384, 3);
    expect(value("engine-best-speed") * (30 / Math.PI)).toBeCloseTo(2000, -2);
  });

  it("holds the usable energy below the whole, and both near cells × voltage × charge", () => {
    expect(value("battery-usable-energy")).toBeLessThan(value("battery-energy"));
    expect(value("battery-energy") / (54 * 3.73 * 6 * 3600)).toBeCloseTo(1, 1);
  });

  it("takes the battery's powers from current or voltage, whichever is less", () => {
    const open = 54 * 3.7;
    const byCurrent = batteryPowers(compact.battery, 0.5);
    expect(byCurrent.discharge).toBeCloseTo((open - 0.12 * 130) * 130, 6);
    expect(byCurrent.charge).toBeCloseTo((open + 0.12 * 130) * 130, 6);
    const tight = { ...compact.battery, cellVoltageMin: 3.6, cellVoltageMax: 3.75 };
    const byVoltage = batteryPowers(tight, 0.5);
    expect(byVoltage.discharge).toBeCloseTo((54 * 3.6 * (open - 54 * 3.6)) / 0.12, 6);
    expect(byVoltage.charge).toBeCloseTo((54 * 3.75 * (54 * 3.75 - open)) / 0.12, 6);
  });
});
