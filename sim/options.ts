import { InputError, type InputFault } from "../shared/errors.ts";
import { CONTROL_PERIOD, REFERENCE_AIR_DENSITY } from "./settings.ts";

/** What a run may change without changing the vehicle. All optional for the caller. */
export interface RunOptions {
  /** Time step, s; a whole number of them fits into the 0.1 s of the control. Default 0.01. */
  readonly step?: number;
  /** State of charge at the start, 0–1; default the vehicle's. */
  readonly startSoc?: number;
  /** Extra mass, kg. */
  readonly payload?: number;
  /** Air density, kg/m³. Default 1.189: the reference of UN GTR No. 15 (293 K, 100 kPa; from memory). */
  readonly airDensity?: number;
  /** Air and starting temperature, K. Default 293.15. */
  readonly airTemperature?: number;
  /** Head wind along the road, m/s; negative blows from behind. */
  readonly headWind?: number;
  /** Auxiliary electric load, W; default the vehicle's. */
  readonly auxiliaryPower?: number;
  /** Start with a cold engine. */
  readonly coldStart?: boolean;
  /** Rows a second in the log: "control" is 10 Hz, "step" logs every step. */
  readonly logEvery?: "control" | "step";
}

/** Options with every field filled in and checked. */
export interface RunSettings {
  readonly step: number;
  readonly stepsPerTick: number;
  readonly startSoc: number;
  readonly payload: number;
  readonly airDensity: number;
  readonly airTemperature: number;
  readonly headWind: number;
  readonly auxiliaryPower: number;
  readonly coldStart: boolean;
  readonly logEvery: "control" | "step";
}

/** K: air and start when a run says nothing else. */
export const STANDARD_AIR_TEMPERATURE = 293.15;

/** Least and most of each option, and its unit. */
export const OPTION_RANGES = {
  step: [0.0005, 0.1, "s"],
  startSoc: [0, 1, "share of full charge"],
  payload: [0, 5000, "kg"],
  airDensity: [0.3, 1.6, "kg/m³"],
  airTemperature: [223.15, 333.15, "K"],
  headWind: [-40, 40, "m/s"],
  auxiliaryPower: [0, 20000, "W"],
} as const;

/**
 * Fills in and checks run options.
 * @param defaults what the vehicle says about start charge and auxiliaries
 * @throws InputError naming each option out of its range
 */
export function runSettings(
  options: RunOptions,
  defaults: { readonly startSoc: number; readonly auxiliaryPower: number },
): RunSettings {
  const filled = {
    step: options.step ?? 0.01,
    startSoc: options.startSoc ?? defaults.startSoc,
    payload: options.payload ?? 0,
    airDensity: options.airDensity ?? REFERENCE_AIR_DENSITY,
    airTemperature: options.airTemperature ?? STANDARD_AIR_TEMPERATURE,
    headWind: options.headWind ?? 0,
    auxiliaryPower: options.auxiliaryPower ?? defaults.auxiliaryPower,
  };
  const faults: InputFault[] = [];
  for (const [name, [least, most, unit]] of Object.entries(OPTION_RANGES)) {
    const value = filled[name as keyof typeof filled];
    if (!(value >= least && value <= most)) {
      faults.push({
        what: "out of range",
        where: `run option ${name}`,
        value: String(value),
        accepted: `${least} … ${most} ${unit}`,
      });
    }
  }
  const steps = Math.round(CONTROL_PERIOD / filled.step);
  if (faults.length === 0 && Math.abs(steps * filled.step - CONTROL_PERIOD) > 1e-9) {
    faults.push({
      what: "the step does not fit into the control's 0.1 s",
      where: "run option step",
      value: String(filled.step),
      accepted: "0.1 s divided by a whole number, such as 0.01, 0.005 or 0.02",
    });
  }
  if (faults.length > 0) throw new InputError(faults);
  return {
    ...filled,
    step: CONTROL_PERIOD / steps,
    stepsPerTick: steps,
    coldStart: options.coldStart ?? false,
    logEvery: options.logEvery ?? "control",
  };
}
