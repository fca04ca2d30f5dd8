import { describe, expect, it } from "vitest";
import { rpmToRadPerS } from "../../../shared/units.ts";
import { brakeEfficiency, frictionTorque, fuelPower } from "../../../sim/drivetrain/engine.ts";
import type { Vehicle } from "../../../sim/parameters/schema.ts";
import { litres } from "../../../sim/run/fuel.ts";
import { bestPoint } from "../../../sim/vehicle/engine-best.ts";
import { compactWith } from "./held-plant.ts";

const plain = compactWith(() => ({}));

/** Swept volume of cylinders, m³, from bore and stroke in metres. */
const swept = (cylinders: number, bore: number, stroke: number): number =>
  (cylinders * Math.PI * bore * bore * stroke) / 4;
/** Mean effective pressure of a four-stroke engine, Pa: 4π T / Vd. */
const meanPressure = (torque: number, volume: number): number => (4 * Math.PI * torque) / volume;

/** An engine of one efficiency, without friction. */
const constant = (efficiency: number): Vehicle["engine"] => ({
  ...plain.engine,
  friction0: 0,
  friction1: 0,
  friction2: 0,
  indicatedEfficiency: efficiency,
  speedFall: 0,
  loadFall: 0,
});

describe("engines on the test bench (H. N. Gupta, Fundamentals of Internal Combustion Engines)", () => {
  it("E7 Ex. 16.4: 160 N at 0.35 m and 3000 rev/min on 6.6 L/h: 17.593 kW, 7.32 bar, 27.96 %, 0.293 kg/kWh", () => {
    const torque = 160 * 0.35;
    const speed = rpmToRadPerS(3000);
    const fuel: Vehicle["fuel"] = { ...plain.fuel, lowerHeat: 44e6, density: 780 };
    expect(Math.abs((torque * speed) / 1000 - 17.593)).toBeLessThan(5e-4);
    expect(Math.abs(meanPressure(torque, swept(4, 0.06, 0.085)) / 1e5 - 7.32)).toBeLessThan(5e-3);
    // An engine of the printed efficiency burns the printed fuel, in our units.
    const power = fuelPower(constant(0.2796), null, speed, torque);
    expect(Math.abs(litres(fuel, power * 3600) - 6.6)).toBeLessThan(2e-3);
    const perKwh = ((power / fuel.lowerHeat) * 3.6e6) / (torque * speed);
    expect(Math.abs(perKwh - 0.293)).toBeLessThan(5e-4);
  });

  it("E8 Ex. 16.6: 40 kgf at 0.55 m and 4500 rev/min, 100 cm³ in 9.5 s: 101.7 kW, 6.744 bar, 31.37 %, 0.261 kg/kWh", () => {
    const torque = 40 * 9.81 * 0.55;
    const speed = rpmToRadPerS(4500);
    const fuel: Vehicle["fuel"] = { ...plain.fuel, lowerHeat: 44e6, density: 700 };
    expect(Math.abs((torque * speed) / 1000 - 101.7)).toBeLessThan(0.05);
    expect(Math.abs(meanPressure(torque, swept(8, 0.08, 0.1)) / 1e5 - 6.744)).toBeLessThan(1e-3);
    const power = fuelPower(constant(0.3137), null, speed, torque);
    expect(Math.abs(litres(fuel, power * 9.5) - 0.1)).toBeLessThan(5e-5);
    const perKwh = ((power / fuel.lowerHeat) * 3.6e6) / (torque * speed);
    expect(Math.abs(perKwh - 0.261)).toBeLessThan(5e-4);
  });

  it.each([
    [210, 0.3987],
    [220, 0.3805],
    [230, 0.364],
    [240, 0.3488],
    [250, 0.3349],
  ])("E9 %i g/kWh at 43.0 MJ/kg is an efficiency of %f (definition)", (grams, printed) => {
    const exact = 3600 / (grams * 43);
    expect(Math.abs(exact - printed)).toBeLessThan(5.1e-5);
    // Our engine of that efficiency: grams of fuel for one kilowatt-hour of work.
    const engine = constant(exact);
    const burnt = fuelPower(engine, null, 200, 80) / (80 * 200);
    expect(Math.abs((burnt * 3.6e6 * 1000) / 43e6 / grams - 1)).toBeLessThan(1e-6);
    expect(Math.abs(brakeEfficiency(engine, null, 200, 80) / exact - 1)).toBeLessThan(1e-6);
  });
});

describe("Willans line", () => {
  // Commission Implementing Decision (EU) 2020/728, Annex, Table 2 (petrol 0.264 L/kWh); 32.0 MJ/L as the test fuel of
  // 40 CFR Part 600 Appendix II; E2: UN GTR 15 Annex 6 App. 2 (0.0733 L/MJ, from memory).
  it("E1, E2 0.264 L/kWh is 0.0733 L/MJ and 0.426; the compact's slope at its best speed lies by less than 5 % from it", () => {
    expect(Math.abs(0.264 / 3.6 - 0.0733)).toBeLessThan(5e-5);
    expect(Math.abs(3.6 / (0.264 * 32) - 0.426)).toBeLessThan(5e-4);
    const slope = (fuelPower(plain.engine, null, 235, 61) - fuelPower(plain.engine, null, 235, 60)) / 235;
    expect(Math.abs(1 / slope / 0.426 - 1)).toBeLessThan(0.05);
  });

  // Guzzella and Onder, Introduction to Modeling and Control of Internal Combustion Engine Systems, ch. 2 (from memory).
  it("E5 friction after the ETH form at 200 rad/s is 96.6 kPa; the compact's lies within 40 % of it", () => {
    const bore = 0.08;
    const form = 1.44e5 * (0.46 + 9.1e-4 * bore * bore * 200 * 200) * Math.sqrt(0.075 / bore);
    expect(Math.abs(form / 1000 - 96.6)).toBeLessThan(0.1);
    const ours = meanPressure(frictionTorque(plain.engine, 200), plain.engine.displacement);
    expect(Math.abs(ours / form - 1)).toBeLessThan(0.4);
  });

  it("E10 the best point of every speed and load is 0.37–0.40, near 2,000 rev/min (SAE papers as in the standing; from memory)", () => {
    const best = bestPoint(plain.engine);
    expect(best.efficiency).toBeGreaterThan(0.37);
    expect(best.efficiency).toBeLessThan(0.4);
    expect(best.speed).toBeGreaterThan(rpmToRadPerS(1600));
    expect(best.speed).toBeLessThan(rpmToRadPerS(2600));
  });
});
