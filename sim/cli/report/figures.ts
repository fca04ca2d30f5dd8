import type { Consumed } from "../consumed.ts";
import type { BalancedFigures, DriveSummary } from "../drive.ts";
import { clock, columns, fixed, wrap } from "./text.ts";
import { kj, kwh, percent, type ReportUnits } from "./units.ts";

/** Rows of the two consumption figures, raw and, where there is one, balanced. */
function consumptionRows(units: ReportUnits, raw: Consumed, balanced: Consumed | undefined): string[][] {
  const row = (label: string, of: (f: Consumed) => string): string[] =>
    balanced ? [label, of(raw), of(balanced)] : [label, of(raw)];
  return [
    balanced ? ["", "raw", "balanced"] : [],
    row(units.consumptionUnit, units.consumption),
    row(units.carbonUnit, units.carbon),
  ].filter((cells) => cells.length > 0);
}

/** Fuel used, and the same with the battery's charge balanced. */
export function fuelLines(s: DriveSummary, units: ReportUnits): string[] {
  const { fuel, balanced } = s;
  const starts =
    fuel.energy_j > 0 ? `, ${percent(fuel.of_which_starts_j / fuel.energy_j)} of it for starts` : "";
  return [
    ...columns(consumptionRows(units, fuel, balanced), "lrr"),
    `${units.volume(fuel.litres)}, ${kwh(fuel.energy_j)}${starts}`,
    ...(balanced ? balanceLines(balanced) : []),
    ...(balanced ? [] : ["not charge-balanced: --balance makes the figures comparable"]),
  ];
}

function balanceLines(b: BalancedFigures): string[] {
  if (b.reason !== "") return wrap(`not balanced: ${b.reason} (${b.runs} runs)`);
  const side = b.net_share >= 0 ? "gave" : "took";
  const source = b.slope_source === "measured" ? "measured" : "at the margin";
  return wrap(
    `balanced over ${b.runs} runs: in the one shown the battery ${side} ${percent(Math.abs(b.net_share), 2)} of the ` +
      `fuel energy; corrected by ${fixed(b.slope, 2)} J of fuel for 1 J of battery energy (${source})`,
  );
}

/** What each phase used, and the city test's weighted figure. */
export function phaseLines(s: DriveSummary, units: ReportUnits): string[] {
  const { phases = [], city_test: city } = s;
  if (phases.length === 0) return [];
  const balanced = phases.some((phase) => phase.balanced);
  const cells = (label: string, way: string, raw: Consumed, even: Consumed | undefined): string[] => [
    label,
    way,
    units.consumption(raw),
    ...(balanced ? [even ? units.consumption(even) : ""] : []),
  ];
  const unit = units.consumptionUnit;
  return columns(
    [
      ["", "distance", unit, ...(balanced ? ["balanced"] : [])],
      ...phases.map((p) => cells(p.title, units.distance(p.distance_m), p.raw, p.balanced)),
      ...(city ? [cells("Weighted, 0.43 cold and 0.57 hot", "", city.raw, city.balanced)] : []),
    ],
    "lrrr",
  );
}

/** Charge and net energy of the battery. */
export function energyLines({ battery }: DriveSummary): string[] {
  const side = battery.net_j >= 0 ? "given" : "taken";
  return columns(
    [
      ["charge", `${percent(battery.soc_start)} → ${percent(battery.soc_end)}`],
      [
        `net energy ${side}`,
        `${kwh(Math.abs(battery.net_j))} (${fixed(Math.abs(battery.net_kwh_per_100km), 2)} kWh/100 km)`,
      ],
      ["turned over at the terminals", kwh(battery.throughput_j)],
    ],
    "ll",
  );
}

/** Energy of braking at its four places. */
export function recoveryLines({ recovered: r }: DriveSummary): string[] {
  if (r.asked_at_wheels_j <= 0) return ["no braking was asked for"];
  const row = (label: string, joules: number): string[] => [
    label,
    `${kj(joules)} kJ`,
    percent(joules / r.asked_at_wheels_j),
  ];
  return columns(
    [
      row("asked at the wheels", r.asked_at_wheels_j),
      row("at the output machine's shaft", r.at_machine_shaft_j),
      row("into the battery", r.into_battery_j),
      row("in the friction brakes", r.friction_brakes_j),
    ],
    "lrr",
  );
}

/** Starts, time, work and mean efficiency of the engine. */
export function engineLines(s: DriveSummary): string[] {
  const { engine } = s;
  const share = percent(engine.seconds_on / s.duration_s);
  return columns(
    [
      ["starts", String(engine.starts)],
      ["time on", `${clock(engine.seconds_on)} (${share})`],
      ["work", `${kj(engine.work_j)} kJ`],
      ["mean efficiency", percent(engine.mean_efficiency)],
    ],
    "ll",
  );
}

/** How the engine's work reached the output. */
export function pathLines({ paths }: DriveSummary): string[] {
  if (paths.engine <= 0) return [];
  const row = (label: string, joules: number): string[] => [
    label,
    `${kj(joules)} kJ`,
    percent(joules / paths.engine),
  ];
  return columns(
    [
      row("engine into the gear set", paths.engine),
      row("straight to the ring", paths.mechanical),
      row("by way of the electric machines", paths.electrical),
      row("circulating beside it", paths.circulating),
    ],
    "lrr",
  );
}
