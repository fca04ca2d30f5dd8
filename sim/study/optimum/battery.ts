import { realAt } from "../../../shared/at.ts";
import type { Prepared } from "../../drivetrain/prepared.ts";
import { SOC_TAPER, STANDBY_SHARE } from "../../settings.ts";

/**
 * The battery of the optimum: open-circuit voltage over charge behind an ohmic resistance. The RC pair is left out, so
 * that a bound stays a bound: it costs a run a little more.
 */
export interface Source {
  /** open-circuit voltage at socSteps + 1 equal steps of charge, V */
  readonly openCircuit: Float64Array;
  readonly socSteps: number;
  /** Ohm */
  readonly resistanceDischarge: number;
  readonly resistanceCharge: number;
  /** whole charge, C */
  readonly charge: number;
  /** terminal voltages, V, and currents, A, that bound the power */
  readonly packLeast: number;
  readonly packMost: number;
  readonly currentMostOut: number;
  readonly currentMostIn: number;
  /** W that the battery gives even at its floor */
  readonly standby: number;
  readonly socFloor: number;
  readonly socCeiling: number;
  /** charge over which currents taper to nothing at the ends */
  readonly taper: number;
}

/** The vehicle's own battery. */
export const sourceOf = (p: Prepared): Source => ({
  openCircuit: p.openCircuit,
  socSteps: p.socSteps,
  resistanceDischarge: p.resistanceDischarge,
  resistanceCharge: p.resistanceCharge,
  charge: p.charge,
  packLeast: p.packLeast,
  packMost: p.packMost,
  currentMostOut: p.currentMostOut,
  currentMostIn: p.currentMostIn,
  standby: STANDBY_SHARE * (p.auxiliaryPower + p.sun0 + p.out0),
  socFloor: p.socFloor,
  socCeiling: p.socCeiling,
  taper: SOC_TAPER,
});

/** Open-circuit voltage at a charge, V. */
export function openAt(source: Source, soc: number): number {
  const place = soc * source.socSteps;
  let i = Math.floor(place);
  if (i < 0) i = 0;
  if (i >= source.socSteps) i = source.socSteps - 1;
  const low = realAt(source.openCircuit, i);
  return low + (realAt(source.openCircuit, i + 1) - low) * (place - i);
}

/** Greatest power out of the battery at a charge, W: the rule of `Simulation.allowCurrents`, its RC pair at rest. */
export function mostOut(source: Source, soc: number, open: number): number {
  const above = Math.min(1, Math.max(0, (soc - source.socFloor) / source.taper));
  const allowed = Math.max(source.standby / open, source.currentMostOut * above);
  const r = source.resistanceDischarge;
  const current = Math.min(allowed, (open - source.packLeast) / Math.max(1e-9, r));
  return (open - r * current) * Math.max(0, current);
}

/** Greatest power into the battery at a charge, W, ≥ 0. */
export function mostIn(source: Source, soc: number, open: number): number {
  const below = Math.min(1, Math.max(0, (source.socCeiling - soc) / source.taper));
  const r = source.resistanceCharge;
  const current = Math.min(source.currentMostIn * below, (source.packMost - open) / Math.max(1e-9, r));
  return (open + r * current) * Math.max(0, current);
}

/** Current for a terminal power, A, positive on discharge: the small root of P = V I − R I². */
export function currentFor(source: Source, open: number, power: number): number {
  const r = power >= 0 ? source.resistanceDischarge : source.resistanceCharge;
  return (2 * power) / (open + Math.sqrt(open * open - 4 * r * power));
}
