import { describe, expect, it } from "vitest";
import { lbfPerMph2ToNPerMps2, lbfPerMphToNPerMps, lbfToNewtons } from "../../../shared/units.ts";
import { currentForPower, greatestDischargePower } from "../../../sim/drivetrain/battery.ts";
import { machineEfficiency, machineElectric, machineLoss } from "../../../sim/drivetrain/machine.ts";
import { airDensity } from "../../../sim/drivetrain/road.ts";
import { interpolate, monotoneCubic } from "../../../sim/drivetrain/table.ts";

describe("battery as a source behind a resistance (Larminie and Lowry, Electric Vehicle Technology Explained)", () => {
  const resistance = (156 * 0.022) / 60 + 0.05;
  const voltage = 156 * 2.15;

  it("B2 lead-acid example: 156 cells at full charge", () => {
    expect(resistance).toBeCloseTo(0.1072, 4);
    expect(voltage).toBeCloseTo(335.4, 1);
    const rows = [
      [10e3, 30.105, 332.17, 97.2],
      [50e3, 156.95, 318.58, 2640.7],
    ] as const;
    for (const [power, current, terminal, lost] of rows) {
      const i = currentForPower(voltage, resistance, power);
      expect(i).toBeCloseTo(current, 2);
      expect(voltage - resistance * i).toBeCloseTo(terminal, 2);
      expect(resistance * i * i).toBeCloseTo(lost, 0);
    }
    expect(greatestDischargePower(voltage, resistance) / 1000).toBeCloseTo(262.34, 2);
  });

  it("B3 round numbers, 200 V and 0.5 Ω: the small root, both ways, and the limit (derived)", () => {
    expect(currentForPower(200, 0.5, 10e3)).toBeCloseTo(58.579, 3);
    expect(currentForPower(200, 0.5, -10e3)).toBeCloseTo(-44.949, 3);
    expect(currentForPower(200, 0.5, 20e3)).toBeCloseTo(200, 9);
    expect(currentForPower(200, 0.5, 20_001)).toBeNaN();
  });

  it("B4 twice the resistance on charge: 10 kW into the lead-acid example take 29.268 A", () => {
    expect(-currentForPower(voltage, 2 * resistance, -10e3)).toBeCloseTo(29.268, 3);
  });

  it("B6 open-circuit points of a 21700 cell (Sunil, Pattipati and Balasingam 2025): monotone through the points", () => {
    const soc = [0, 0.0151, 0.0452, 0.0955, 0.1508, 0.2915, 0.4573, 0.8342, 0.9497, 1];
    const volts = [2.5061, 2.8981, 3.1461, 3.3231, 3.4218, 3.5737, 3.7017, 4.0637, 4.1009, 4.1932];
    expect(interpolate(soc, volts, 0.5)).toBeCloseTo(3.7427, 4);
    const curve = monotoneCubic(soc, volts);
    soc.forEach((s, i) => {
      expect(curve(s)).toBeCloseTo(volts[i] ?? 0, 12);
    });
    for (let i = 1; i <= 1000; i += 1) expect(curve(i / 1000)).toBeGreaterThanOrEqual(curve((i - 1) / 1000));
  });
});

describe("machine loss (Larminie and Lowry, eq. 7.23)", () => {
  const large = { loss0: 600, loss1: 0.3, loss2: 0.01, loss3: 5e-6, loss4: 0 };
  const small = { loss0: 20, loss1: 1.5, loss2: 0.1, loss3: 1e-5, loss4: 0 };

  it("M2 large machine", () => {
    const rows = [
      [50, 500, 1980, 0.92661],
      [100, 500, 4230, 0.922],
      [100, 1000, 8610, 0.92073],
      [200, 800, 15168, 0.91341],
    ] as const;
    for (const [torque, speed, loss, efficiency] of rows) {
      expect(machineLoss(large, torque, speed)).toBeCloseTo(loss, 6);
      expect(machineEfficiency(large, torque, speed)).toBeCloseTo(efficiency, 5);
    }
  });

  it("M3 small machine", () => {
    const rows = [
      [5, 200, 157.5, 0.86393],
      [10, 300, 470, 0.86455],
      [10, 400, 850, 0.82474],
    ] as const;
    for (const [torque, speed, loss, efficiency] of rows) {
      expect(machineLoss(small, torque, speed)).toBeCloseTo(loss, 6);
      expect(machineEfficiency(small, torque, speed)).toBeCloseTo(efficiency, 5);
    }
  });

  it("M4 the best torque at a speed is where copper loss equals the rest (derived): 64.03 and 136.75 N·m", () => {
    for (const [speed, best] of [
      [500, 64.03],
      [1000, 136.75],
    ] as const) {
      expect(Math.sqrt(machineLoss(large, 0, speed) / large.loss1)).toBeCloseTo(best, 2);
      const at = (t: number): number => machineEfficiency(large, t, speed);
      expect(at(best)).toBeGreaterThan(at(best * 0.9));
      expect(at(best)).toBeGreaterThan(at(best * 1.1));
    }
  });

  it("M5 and M6 from the wheels to the battery at 20 m/s, steady and at 1 m/s²", () => {
    const mass = 1540;
    const rolling = 0.0048 * mass * 9.8;
    const air = 0.5 * 1.25 * 1.8 * 0.19 * 400;
    expect(rolling).toBeCloseTo(72.44, 2);
    expect(air).toBeCloseTo(85.5, 2);
    const chain = (acceleration: number): { battery: number; current: number } => {
      const wheels = (rolling + air + 1.05 * mass * acceleration) * 20;
      const torque = wheels / 0.95 / 740;
      const battery = machineElectric(large, torque, 740) + 250;
      return { battery, current: currentForPower(156 * 2.15, (156 * 0.022) / 60 + 0.05, battery) };
    };
    expect(chain(0).battery).toBeCloseTo(6214.66, 1);
    expect(chain(0).current).toBeCloseTo(18.64, 3);
    expect(chain(1).battery).toBeCloseTo(41015.7, 0);
    expect(chain(1).current).toBeCloseTo(127.483, 2);
  });

  it("M7 electrical power is never below shaft power, in all four quadrants and at zero", () => {
    for (const torque of [-100, -1e-9, -0, 0, 1e-9, 100]) {
      for (const speed of [-900, -1e-9, -0, 0, 1e-9, 900]) {
        const electric = machineElectric(large, torque, speed);
        expect(electric).toBeGreaterThanOrEqual(torque * speed);
        expect(Number.isFinite(electric)).toBe(true);
      }
    }
  });
});

describe("air and coast-down units", () => {
  it("R8 density: ISO 2533 at 15 °C 1.2250, UN GTR No. 15 reference 1.18898 kg/m³ (from memory; ratios derived)", () => {
    expect(airDensity(101325, 288.15)).toBeCloseTo(1.225, 4);
    expect(airDensity(100000, 293)).toBeCloseTo(1.18898, 4);
  });

  it("R2 coast-down coefficients in US units (exact unit definitions)", () => {
    expect(Math.abs(lbfToNewtons(1) / 4.4482216 - 1)).toBeLessThan(1e-6);
    expect(Math.abs(lbfPerMphToNPerMps(1) / 9.950388 - 1)).toBeLessThan(1e-6);
    expect(Math.abs(lbfPerMph2ToNPerMps2(1) / 22.258385 - 1)).toBeLessThan(1e-6);
  });
});
