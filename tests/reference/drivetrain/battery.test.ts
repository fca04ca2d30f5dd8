import { describe, expect, it } from "vitest";
import { at } from "../../../shared/at.ts";
import {
  currentForPower,
  greatestDischargePower,
  openCircuitTable,
} from "../../../sim/drivetrain/battery.ts";
import { charge } from "../../../sim/drivetrain/plant.ts";
import { interpolate, lookUp, monotoneCubic } from "../../../sim/drivetrain/table.ts";
import type { Vehicle } from "../../../sim/parameters/schema.ts";
import { compactWith, HeldPlant } from "./held-plant.ts";
import { integrate } from "./integrate.ts";
import { orders } from "./orders.ts";

describe("B1 source behind a resistance (Larminie and Lowry, Electric Vehicle Technology Explained, 1st ed. eq. 2.20)", () => {
  it("draws the smaller of both currents that give the power", () => {
    for (const power of [-40e3, -1, 0, 1, 5e3, 19.9e3]) {
      const i = currentForPower(200, 0.5, power);
      const other = 200 / 0.5 - i;
      expect(Math.abs((200 - 0.5 * i) * i - power)).toBeLessThan(1e-9 * (1 + Math.abs(power)));
      expect(Math.abs(i)).toBeLessThanOrEqual(Math.abs(other));
      expect(Math.sign(i)).toBe(Math.sign(power));
    }
  });

  it("gives its greatest power E²/4R at E/2R and E/2", () => {
    const most = greatestDischargePower(335.4, 0.1072);
    // At the very limit rounding may leave the root's square below zero: a hair inside.
    const i = currentForPower(335.4, 0.1072, most * (1 - 1e-15));
    expect(Math.abs(i / (335.4 / (2 * 0.1072)) - 1)).toBeLessThan(1e-6);
    expect(Math.abs((335.4 - 0.1072 * i) / (335.4 / 2) - 1)).toBeLessThan(1e-6);
    expect(currentForPower(335.4, 0.1072, most * (1 + 1e-9))).toBeNaN();
  });

  // B2's lead-acid example at half discharge, derived with the same two formulas of the book.
  it("B2 weakens with the depth of discharge: E = 156 (2.15 − 0.15 DoD)", () => {
    const r = (156 * 0.022) / 60 + 0.05;
    const open = 156 * (2.15 - 0.15 * 0.5);
    const i = currentForPower(open, r, 10e3);
    expect(Math.abs(open - 323.7)).toBeLessThan(1e-9);
    expect(i).toBeGreaterThan(currentForPower(335.4, r, 10e3));
    expect(Math.abs((open - r * i) * i - 10e3)).toBeLessThan(1e-6);
  });
});

// Chen and Rincón-Mora, IEEE Trans. Energy Convers. 21(2), 2006, 504–511; results derived from the printed functions.
describe("B5 small Li-ion cell", () => {
  const voltage = (s: number): number =>
    -1.031 * Math.exp(-35 * s) + 3.685 + 0.2156 * s - 0.1178 * s * s + 0.3201 * s ** 3;
  const resistance = (s: number): number => 0.1562 * Math.exp(-24.37 * s) + 0.07446;
  const cellSoc = [0, 0.02, 0.04, 0.07, 0.1, 0.15, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1];
  const battery: Vehicle["battery"] = {
    ...compactWith(() => ({})).battery,
    cells: 1,
    cellSoc,
    cellVoltage: cellSoc.map(voltage),
  };

  it("open-circuit voltages 3.6746, 3.7250, 3.8034, 3.9460, 4.1029 V at 0.1, 0.2, 0.5, 0.8, 1", () => {
    const table = openCircuitTable(battery);
    for (const [soc, printed] of [
      [0.1, 3.6746],
      [0.2, 3.725],
      [0.5, 3.8034],
      [0.8, 3.946],
      [1, 4.1029],
    ] as const) {
      expect(Math.abs(voltage(soc) - printed)).toBeLessThan(6e-5);
      expect(Math.abs(lookUp(table, soc) - printed)).toBeLessThan(6e-5);
    }
  });

  it("between its points the table keeps within 3 mV of the function above 10 % charge", () => {
    const table = openCircuitTable(battery);
    for (let s = 0.1; s <= 1; s += 0.001) expect(Math.abs(lookUp(table, s) - voltage(s))).toBeLessThan(3e-3);
  });

  it("2 W at half charge draw 0.53138 A; no more than 48.57 W come out", () => {
    expect(Math.abs(resistance(0.5) - 0.07446)).toBeLessThan(5e-6);
    expect(Math.abs(currentForPower(voltage(0.5), resistance(0.5), 2) - 0.53138)).toBeLessThan(5e-6);
    expect(Math.abs(greatestDischargePower(voltage(0.5), resistance(0.5)) - 48.57)).toBeLessThan(0.005);
  });
});

// Sunil, Pattipati and Balasingam, IEEE Trans. Instrum. Meas., 2025, published data (breakpoints of the best line).
describe("B6 measured open-circuit tables", () => {
  const tables = [
    {
      cell: "21700, 4.2 V class, C/32",
      soc: [0, 0.0151, 0.0452, 0.0955, 0.1508, 0.2915, 0.4573, 0.8342, 0.9497, 1],
      volts: [2.5061, 2.8981, 3.1461, 3.3231, 3.4218, 3.5737, 3.7017, 4.0637, 4.1009, 4.1932],
      middle: 3.7427,
    },
    {
      cell: "18650 iron phosphate, C/32",
      soc: [0, 0.0033, 0.0117, 0.0267, 0.0534, 0.0885, 0.2972, 0.9833, 0.995, 1],
      volts: [2.0102, 2.4177, 2.7405, 2.9299, 3.0872, 3.1942, 3.2772, 3.3511, 3.418, 3.5981],
      middle: 3.299,
    },
    {
      cell: "21700, 4.2 V class, C/20",
      soc: [0, 0.005, 0.0352, 0.0854, 0.1357, 0.2915, 0.4523, 0.8392, 0.9548, 1],
      volts: [2.5, 2.808, 3.1179, 3.3182, 3.4193, 3.5826, 3.6941, 4.0664, 4.1121, 4.2],
      middle: 3.74,
    },
  ];

  it.each(tables)(
    "$cell: linear at half charge $middle V; the smooth curve passes the points and rises",
    (t) => {
      expect(Math.abs(interpolate(t.soc, t.volts, 0.5) - t.middle)).toBeLessThan(6e-5);
      const curve = monotoneCubic(t.soc, t.volts);
      t.soc.forEach((s, i) => {
        expect(Math.abs(curve(s) - at(t.volts, i))).toBeLessThan(1e-12);
      });
      let before = curve(0);
      for (let i = 1; i <= 4000; i += 1) {
        const now = curve(i / 4000);
        expect(now).toBeGreaterThanOrEqual(before);
        before = now;
      }
    },
  );

  it("the compact's curve lies where layered-oxide cells lie between 20 and 80 %: 3.45–4.05 V", () => {
    const { battery } = compactWith(() => ({}));
    const table = openCircuitTable(battery);
    for (let s = 0.2; s <= 0.8; s += 0.01) {
      const cell = lookUp(table, s) / battery.cells;
      expect(cell).toBeGreaterThan(3.45);
      expect(cell).toBeLessThan(4.05);
    }
  });
});

describe("B7 coulomb counting (definition)", () => {
  const small = compactWith((plain) => ({ battery: { ...plain.battery, capacityAh: 2, socStart: 0.6 } }));

  it("2 Ah at 1 A for 30 min lose a quarter of the charge", () => {
    const { p, s } = new HeldPlant(small);
    s.current = 1;
    for (let i = 0; i < 180_000; i += 1) charge(p, s);
    expect(Math.abs(s.soc - 0.35)).toBeLessThan(1e-10);
  });

  it("a closed cycle of currents comes back to where it began", () => {
    const { p, s } = new HeldPlant(small);
    for (const [current, steps] of [
      [30, 700],
      [-14, 2000],
      [7, 1000],
    ] as const) {
      s.current = current;
      for (let i = 0; i < steps; i += 1) charge(p, s);
    }
    expect(Math.abs(s.soc - 0.6)).toBeLessThan(1e-12);
  });
});

// MODEL: Rint with one RC pair, booked at the midpoint. The same circuit as differential equations, integrated finely.
describe("midpoint battery against a general-purpose integrator at constant power", () => {
  const LINE = { cellSoc: [0, 1], cellVoltage: [3.3, 4.1] };
  const pack = compactWith((plain) => ({
    battery: {
      ...plain.battery,
      ...LINE,
      resistanceDischarge: 0.1,
      resistanceCharge: 0.15,
      polarisationResistance: 0.08,
      polarisationTime: 6,
    },
  }));
  const { battery } = pack;
  const rates =
    (power: number) =>
    (_t: number, y: number[]): number[] => {
      const soc = at(y, 0);
      const u = at(y, 1);
      const r = power >= 0 ? battery.resistanceDischarge : battery.resistanceCharge;
      const e = battery.cells * (3.3 + 0.8 * soc) - u;
      const i = (e - Math.sqrt(e * e - 4 * r * power)) / (2 * r);
      const c1 = battery.polarisationTime / battery.polarisationResistance;
      return [-i / (battery.capacityAh * 3600), i / c1 - u / battery.polarisationTime];
    };
  /** Largest difference of charge (share) and of RC voltage (over 1 V) at some times. */
  const difference = (power: number, step: number, times: number[]): number => {
    const exact = integrate(rates(power), [0.6, 0.4], times);
    const plant = new HeldPlant(pack, { step, startSoc: 0.6 });
    plant.s.rcVoltage = 0.4;
    plant.s.awake = 0;
    plant.s.auxiliaryPower = power;
    let worst = 0;
    times.forEach((time, i) => {
      plant.runTo(time);
      const [soc = Number.NaN, u = Number.NaN] = exact[i] ?? [];
      worst = Math.max(worst, Math.abs(plant.s.soc - soc), Math.abs(plant.s.rcVoltage - u));
    });
    return worst;
  };

  it.each([15_000, 2_000, -12_000])("%i W at 10 ms: charge and RC voltage within 1e-6 over 40 s", (power) => {
    expect(difference(power, 0.01, [1, 5, 20, 40])).toBeLessThan(1e-6);
  });

  it("is of second order: within 10 % from 0.1 to 0.006 s", () => {
    for (const power of [15_000, -12_000]) {
      const errors = [0.1, 0.05, 0.025, 0.0125, 0.00625].map((step) => difference(power, step, [5]));
      for (const order of orders(errors)) expect(Math.abs(order - 2)).toBeLessThan(0.2);
    }
  });

  it("voltage times current is the power asked, exactly, and the energies of a step close", () => {
    const plant = new HeldPlant(pack, { startSoc: 0.6 });
    const { p, s } = plant;
    s.awake = 0;
    for (const power of [18_000, -16_000, 320, 0]) {
      s.auxiliaryPower = power;
      const soc = s.soc;
      const u = s.rcVoltage;
      plant.step();
      expect(Math.abs(s.voltage * s.current - power)).toBeLessThan(1e-9 * (1 + Math.abs(power)));
      const source = s.openCircuitMid * s.current * p.h;
      const stored = (0.5 * (s.rcVoltage ** 2 - u ** 2)) / p.rcPerCapacitance;
      const lost = p.h * (s.ohmic * s.current ** 2 + s.rcMid ** 2 / battery.polarisationResistance);
      expect(Math.abs(source - power * p.h - stored - lost)).toBeLessThan(1e-9 * (1 + Math.abs(source)));
      expect(Math.abs((soc - s.soc) * battery.capacityAh * 3600 - s.current * p.h)).toBeLessThan(1e-9);
    }
  });
});
