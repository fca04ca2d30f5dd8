/**
 * Mean tractive energy and driving dynamics against figures from outside.
 * Standing: MEMORY = recalled, not found again; FOUND = seen in a public copy; DERIVED = computed apart from this
 * program from the tables.
 */
import { describe, expect, it } from "vitest";
import { cycleById } from "../../../cycles/catalogue.ts";
import { type CycleStatistics, statistics } from "../../../cycles/statistics/basics.ts";
import { type DemandFactors, demandFactors } from "../../../cycles/statistics/factors.ts";
import { drivingDynamics, dynamicsLimits } from "../../../cycles/statistics/on-road.ts";
import { kmhToMps } from "../../../shared/units.ts";

const relative = (value: number, expected: number): number => Math.abs(value / expected - 1);
const nedc = cycleById("nedc");
const URBAN = { start: 0, end: 780 };
const EXTRA_URBAN = { start: 780, end: 1180 };

describe("NEDC: Guzzella and Sciarretta, Vehicle Propulsion Systems, chapter 2", () => {
  const whole = demandFactors(nedc);
  const urban = demandFactors(nedc, URBAN);
  const country = demandFactors(nedc, EXTRA_URBAN);

  it.each([
    ["C1 air in traction", whole.traction.air, 314.6],
    ["C1 urban", urban.traction.air, 82.9],
    ["C1 extra-urban", country.traction.air, 450.3],
    ["C2 rolling in traction", whole.traction.rolling, 0.8541],
    ["C2 urban", urban.traction.rolling, 0.799],
    ["C2 extra-urban", country.traction.rolling, 0.886],
    ["C3 inertia in traction", whole.traction.inertia, 0.1112],
    ["C3 urban", urban.traction.inertia, 0.142],
    ["C3 extra-urban", country.traction.inertia, 0.0932],
    ["C4 air over everything", whole.whole.air, 362.0],
    ["C4 urban", urban.whole.air, 100.5],
    ["C4 extra-urban", country.whole.air, 515.2],
  ])("%s (DERIVED, 0.5 %%)", (_, value, expected) => {
    expect(relative(value, expected)).toBeLessThan(0.005);
  });

  it.each([
    // The book's air and rolling figures, MEMORY; the trace bears them out to 2 %.
    ["C1", whole.traction.air, 319],
    ["C1 urban", urban.traction.air, 82.9],
    ["C1 extra-urban", country.traction.air, 455],
    ["C2", whole.traction.rolling, 0.856],
    ["C2 urban", urban.traction.rolling, 0.81],
    ["C2 extra-urban", country.traction.rolling, 0.88],
    ["C4", whole.whole.air, 363],
    ["C4 urban", urban.whole.air, 100],
    ["C4 extra-urban", country.whole.air, 515],
  ])("%s as printed (MEMORY, 2 %%)", (_, value, expected) => {
    expect(relative(value, expected)).toBeLessThan(0.02);
  });

  it("C3 as recalled, 0.101, is 10 % below the trace: half the squares of the peaks over the way (MEMORY)", () => {
    // Up to 15, 32 and 50 km/h in each urban part; up to 70, and from 50 to 120 km/h, in the other.
    const square = (kmh: number): number => kmhToMps(kmh) ** 2;
    const urbanGain = 4 * (square(15) + square(32) + square(50));
    const countryGain = square(70) + square(70) - square(50) + square(120) - square(70);
    expect(whole.traction.inertia).toBeCloseTo((urbanGain + countryGain) / 2 / statistics(nedc).distance, 4);
    expect(relative(whole.traction.inertia, 0.101)).toBeLessThan(0.11);
  });

  // kJ/100 km of a full-size car: 1500 kg, drag area 0.7 m², rolling coefficient 0.012, air 1.2 kg/m³, g 9.81 m/s².
  const energy = (f: DemandFactors): number =>
    100 * (0.5 * 1.2 * 0.7 * f.air + 1500 * 9.81 * 0.012 * f.rolling + 1500 * f.inertia);

  it("C5 no recuperation: 44,980 kJ/100 km on the trace (DERIVED), 43,420 by the book's formula (MEMORY, 5 %)", () => {
    expect(relative(energy(whole.traction), 44_980)).toBeLessThan(0.001);
    expect(relative(energy(whole.traction), 1.9e4 * 0.7 + 8.4e2 * 1500 * 0.012 + 10 * 1500)).toBeLessThan(
      0.05,
    );
  });

  it("C6 full recuperation: 33,058 kJ/100 km by the book's formula (MEMORY, 2 %)", () => {
    expect(relative(energy(whole.whole), 2.2e4 * 0.7 + 9.81e2 * 1500 * 0.012)).toBeLessThan(0.02);
  });
});

describe("way and demand factors of every table (DERIVED)", () => {
  // The table was made with the mean speed of each second cubed, here the cube is integrated along the line: up to
  // 0.25 % more on the jerkiest schedule. Tolerance 0.5 % for both air columns, the printed digits for the others.
  it.each([
    ["udds", 11_990.2, 219.2, 128.8, 0.5873, 0.175],
    ["hwfet", 16_506.5, 517.3, 314.8, 0.6115, 0.0706],
    ["us06", 12_887.6, 769.9, 449.7, 0.5691, 0.2104],
    ["sc03", 5760.6, 232.7, 129.5, 0.5726, 0.2061],
    ["la92", 15_797.4, 380.7, 246.4, 0.6276, 0.2268],
    ["nycc", 1898.4, 59.7, 32.6, 0.5327, 0.3085],
    ["wltc-class3b", 23_266.3, 514.7, 289.5, 0.5521, 0.1538],
    ["jc08", 8159.4, 191.2, 113.0, 0.5605, 0.1778],
    ["nedc", 11_028.2, 362.0, 314.6, 0.8541, 0.1112],
  ])("%s", (id, way, airWhole, air, rolling, inertia) => {
    const figures: CycleStatistics = statistics(cycleById(id));
    const { traction, whole } = figures.demand;
    expect(Math.abs(figures.distance - way)).toBeLessThan(0.051);
    expect(relative(whole.air, airWhole)).toBeLessThan(0.005);
    expect(relative(traction.air, air)).toBeLessThan(0.005);
    expect(Math.abs(traction.rolling - rolling)).toBeLessThan(0.000051);
    expect(Math.abs(traction.inertia - inertia)).toBeLessThan(0.000051);
    expect(figures.relativePositiveAcceleration).toBe(traction.inertia);
    expect(whole.rolling).toBeCloseTo(1, 12);
    expect(whole.inertia).toBeCloseTo(0, 12);
  });
});

describe("driving dynamics, Regulation (EU) 2016/646", () => {
  it.each([
    [25, 0.1355, 17.84],
    [60, 0.0795, 22.6],
    [100, 0.025, 26.386],
  ])("Y7, Y8: limits at %d km/h (FOUND, an open journal's table)", (kmh, rpa, brisk) => {
    const limits = dynamicsLimits(kmhToMps(kmh));
    expect(limits.minRelativePositiveAcceleration).toBeCloseTo(rpa, 9);
    expect(limits.maxBrisk95).toBeCloseTo(brisk, 9);
  });

  it("the two lines of each limit meet where they change over, to the rounding of the regulation", () => {
    const step = 1e-6;
    const jump = (kmh: number, of: "minRelativePositiveAcceleration" | "maxBrisk95"): number =>
      Math.abs(dynamicsLimits(kmhToMps(kmh + step))[of] - dynamicsLimits(kmhToMps(kmh - step))[of]);
    expect(jump(94.05, "minRelativePositiveAcceleration")).toBeLessThan(1e-4);
    expect(jump(74.6, "maxBrisk95")).toBeLessThan(0.1);
  });

  it("Y9: UDDS has 0.166 m/s² by central differences above 0.1 m/s², less than 0.1750 (DERIVED)", () => {
    expect(drivingDynamics(cycleById("udds")).relativePositiveAcceleration).toBeCloseTo(0.166, 3);
  });

  it("every schedule but the steepest stays under the upper limit at its own mean speed", () => {
    for (const id of ["udds", "hwfet", "sc03", "nycc", "la92", "wltc-class3b", "nedc", "jc08"]) {
      const trace = cycleById(id);
      const limit = dynamicsLimits(statistics(trace).meanSpeed).maxBrisk95;
      expect(drivingDynamics(trace).brisk95).toBeLessThan(limit);
    }
  });
});
