import { at } from "../../shared/at.ts";
import type { CycleTrace } from "../../shared/cycle.ts";
import { LIMITS } from "../limits.ts";
import type { Vehicle } from "../parameters/schema.ts";
import { turnedOver } from "./books.ts";
import { ledgerColumn } from "./channels.ts";
import { consumption, kwhPer100Km } from "./fuel.ts";
import { LEDGER_LINES, ledgerClosure, ledgerResidual, polarisationEnergy, readLedger } from "./ledger.ts";
import { type Moment, moments } from "./moments.ts";
import { type PowerPaths, powerPaths } from "./power-paths.ts";
import { REGIMES, regimes } from "./regimes.ts";
import type { Simulation } from "./simulation.ts";
import { type TraceQuality, traceQuality } from "./trace-quality.ts";

/** What a run reports: plain data, ready for JSON. Names carry their units. */
export interface RunSummary {
  readonly format: "trishaft-run";
  readonly format_version: 1;
  readonly vehicle: { readonly id: string; readonly name: string };
  readonly cycle: {
    readonly id: string;
    readonly title: string;
    readonly source: string;
    readonly treatment: readonly string[];
  };
  readonly strategy: string;
  readonly settings: Simulation["settings"];
  readonly duration_s: number;
  readonly distance_m: number;
  readonly fuel: {
    readonly energy_j: number;
    readonly of_which_starts_j: number;
    readonly litres: number;
    readonly l_per_100km: number;
    readonly mpg_us: number;
    readonly co2_g_per_km: number;
  };
  readonly battery: {
    readonly soc_start: number;
    readonly soc_end: number;
    /** taken out of the open-circuit source, J; positive when the battery gave */
    readonly net_j: number;
    /** the same at the terminals: ∫ V I dt */
    readonly net_terminal_j: number;
    readonly throughput_j: number;
    readonly net_kwh_per_100km: number;
  };
  readonly recovered: {
    readonly asked_at_wheels_j: number;
    readonly at_machine_shaft_j: number;
    readonly into_battery_j: number;
    readonly friction_brakes_j: number;
    /** into battery over asked; not a number without braking */
    readonly share: number;
  };
  readonly engine: {
    readonly starts: number;
    readonly seconds_on: number;
    readonly work_j: number;
    /** brake work over all fuel */
    readonly mean_efficiency: number;
  };
  readonly regimes: readonly {
    readonly id: string;
    readonly title: string;
    readonly seconds: number;
    readonly share: number;
  }[];
  readonly paths: PowerPaths;
  readonly ledger: readonly {
    readonly id: string;
    readonly title: string;
    readonly side: string;
    readonly column: string;
    readonly value_j: number;
  }[];
  readonly ledger_residual_j: number;
  readonly turned_over_j: number;
  readonly closure_relative: number;
  readonly trace: TraceQuality;
  readonly limits: readonly { readonly id: string; readonly meaning: string; readonly seconds: number }[];
  readonly moments: readonly Moment[];
}

/** Change of the energy in the RC pair, J. */
const polarisationChange = (run: Simulation): number =>
  polarisationEnergy(run.p, run.s) - run.stored.polarisation;

function ledgerPart(run: Simulation) {
  const values = readLedger(run.p, run.s, run.b, run.stored);
  return {
    ledger: LEDGER_LINES.map((line, index) => ({
      id: line.id,
      title: line.title,
      side: line.side,
      column: ledgerColumn(line.id),
      value_j: at(values, index),
    })),
    ledger_residual_j: ledgerResidual(values),
    turned_over_j: turnedOver(run.b),
    closure_relative: ledgerClosure(values, turnedOver(run.b)),
  };
}

/** Seconds that each entry of a list of ids takes, from one index a row. */
function regimePart(run: Simulation, regime: Uint8Array) {
  const seconds = new Float64Array(REGIMES.length);
  const time = run.log.view("time");
  for (let i = 1; i < run.log.rows; i += 1) {
    const index = at(regime, i);
    seconds[index] = at(seconds, index) + at(time, i) - at(time, i - 1);
  }
  const whole = Math.max(1e-9, run.time);
  return REGIMES.map((rule, index) => ({
    id: rule.id,
    title: rule.title,
    seconds: at(seconds, index),
    share: at(seconds, index) / whole,
  })).filter((entry) => entry.seconds > 0);
}

function limitPart(run: Simulation) {
  const time = run.log.view("time");
  const bits = run.log.limits;
  return LIMITS.map(([id, meaning], index) => {
    let seconds = 0;
    for (let i = 1; i < run.log.rows; i += 1) {
      if ((at(bits, i) & (2 ** index)) !== 0) seconds += at(time, i) - at(time, i - 1);
    }
    return { id, meaning, seconds };
  }).filter((entry) => entry.seconds > 0);
}

/**
 * Summary of a finished (or stopped) run.
 * @param cycle what was driven; its words go into the summary
 * @param regime the regimes of the log's rows, if they are already known
 */
export function summarize(
  run: Simulation,
  vehicle: Vehicle,
  cycle: CycleTrace,
  strategy: string,
  regime?: Uint8Array,
): RunSummary {
  const { b, log, s } = run;
  const fuelEnergy = b.runningFuel + b.startFuel;
  const used = consumption(vehicle.fuel, fuelEnergy, b.travelled);
  const found = regime ?? regimes(log, run.p);
  return {
    format: "trishaft-run",
    format_version: 1,
    vehicle: { id: vehicle.id, name: vehicle.name },
    cycle: { id: cycle.id, title: cycle.title, source: cycle.source, treatment: cycle.treatment },
    strategy,
    settings: run.settings,
    duration_s: run.time,
    distance_m: b.travelled,
    fuel: {
      energy_j: fuelEnergy,
      of_which_starts_j: b.startFuel,
      litres: used.litres,
      l_per_100km: used.litresPer100Km,
      mpg_us: used.mpg,
      co2_g_per_km: used.co2PerKm,
    },
    battery: {
      soc_start: run.p.socStart,
      soc_end: s.soc,
      net_j: b.source,
      net_terminal_j: b.source - b.ohmic - b.polarisation - polarisationChange(run),
      throughput_j: b.batteryThroughput,
      net_kwh_per_100km: kwhPer100Km(b.source, b.travelled),
    },
    recovered: {
      asked_at_wheels_j: b.brakingAsked,
      at_machine_shaft_j: b.brakingShaft,
      into_battery_j: b.recovered,
      friction_brakes_j: b.brakingFriction,
      share: b.recovered / b.brakingAsked,
    },
    engine: {
      starts: run.c.starts,
      seconds_on: b.engineSeconds,
      work_j: b.engineWork,
      mean_efficiency: b.engineWork / fuelEnergy,
    },
    regimes: regimePart(run, found),
    paths: powerPaths(log, run.p),
    ...ledgerPart(run),
    trace: traceQuality(log),
    limits: limitPart(run),
    moments: moments(log, found),
  };
}
