import type { RegimeFamily } from "../../sim/run/regimes.ts";

const families: Readonly<Record<RegimeFamily, string>> = {
  engine: "engine",
  electric: "electric",
  braking: "braking",
  rest: "at rest",
};

/** Texts of the operating maps. */
export const map = {
  title: "Operating map",
  tabs: "Which map",
  names: {
    engine: "Engine",
    sunMachine: "Sun machine",
    outputMachine: "Output machine",
    wheels: "Wheels",
  },
  short: { engine: "Engine", sunMachine: "Sun m.", outputMachine: "Output m.", wheels: "Wheels" },
  torqueOver: (unit: string) => `N·m over ${unit}`,
  forceOver: (unit: string) => `N over ${unit}`,
  units: { torque: "N·m", force: "N" },
  families,
  lines: {
    best: "best line",
    friction: "without fuel",
    electric: "electric",
    regeneration: "regeneration",
    roadLoad: "level road",
  },
  at: (name: string, values: string) => `${name} now: ${values}.`,
  efficiency: (percent: string) => `efficiency ${percent}`,
  asked: (name: string) => `${name}: asked for just now, so the point is not shown.`,
  noPoint: (name: string) => `${name}: nothing is driven yet, so there is no point.`,
  about: {
    engine:
      "Torque over speed: lines of equal efficiency, full load in bold, the best-efficiency line dashed, the point of the instant with its last five seconds.",
    sunMachine:
      "Torque over speed in four quadrants: lines of equal efficiency of machine and inverter within the limits.",
    outputMachine:
      "Torque over speed in four quadrants: lines of equal efficiency of machine and inverter within the limits.",
    wheels:
      "Force at the wheels over road speed: every part of the drive by its regime, under what the vehicle can do, with what it can do electrically and by regeneration, and the load of a level road.",
  },
  reading: { efficiency: "Efficiency at the point", force: "Force at the wheels" },
} as const;
