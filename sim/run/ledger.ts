import type { Prepared } from "../drivetrain/prepared.ts";
import type { PlantState } from "../drivetrain/state.ts";
import type { Books } from "./books.ts";

/**
 * The energy ledger: sources on one side, losses, loads and stored energy on the other. Every line comes from its own
 * formula, none is the remainder: only so does closing prove anything.
 */
export const LEDGER_LINES = [
  { id: "running_fuel", side: "in", title: "fuel, running" },
  { id: "start_fuel", side: "in", title: "fuel, starts" },
  { id: "engine_heat", side: "loss", title: "engine heat" },
  { id: "engine_friction", side: "loss", title: "engine friction, firing" },
  { id: "engine_motoring", side: "loss", title: "engine friction, motored" },
  { id: "sun_machine_loss", side: "loss", title: "sun machine and inverter" },
  { id: "output_machine_loss", side: "loss", title: "output machine and inverter" },
  { id: "mesh_loss", side: "loss", title: "gear set meshes" },
  { id: "final_drive_loss", side: "loss", title: "final drive" },
  { id: "reduction_loss", side: "loss", title: "output machine's reduction" },
  { id: "contact_loss", side: "loss", title: "shafts brought to rest" },
  { id: "ohmic_loss", side: "loss", title: "battery, ohmic" },
  { id: "polarisation_loss", side: "loss", title: "battery, RC pair" },
  { id: "auxiliary", side: "loss", title: "auxiliaries" },
  { id: "rolling", side: "loss", title: "rolling" },
  { id: "air", side: "loss", title: "air" },
  { id: "friction_brake", side: "loss", title: "friction brakes" },
  { id: "kinetic_change", side: "stored", title: "kinetic energy, change" },
  { id: "potential_change", side: "stored", title: "height energy, change" },
  { id: "battery_change", side: "stored", title: "battery charge, change" },
  { id: "polarisation_change", side: "stored", title: "RC pair, change" },
] as const;

/** Name of a ledger line. */
export type LedgerId = (typeof LEDGER_LINES)[number]["id"];

/** Kinetic energy of all bodies, J: ½ qᵀ M q. */
export const kineticEnergy = (p: Prepared, s: PlantState): number =>
  0.5 * p.massCc * s.carrierSpeed * s.carrierSpeed +
  p.massCr * s.carrierSpeed * s.ringSpeed +
  0.5 * p.massRr * s.ringSpeed * s.ringSpeed;

/** Energy of the RC pair, J: ½ C1 U²; zero without a pair. */
export const polarisationEnergy = (p: Prepared, s: PlantState): number =>
  p.rcPerCapacitance > 0 ? (0.5 * s.rcVoltage * s.rcVoltage) / p.rcPerCapacitance : 0;

/** Stored energies at the start of a run, to count changes from. */
export interface StoredAtStart {
  readonly kinetic: number;
  readonly polarisation: number;
}

/** Writes the ledger, J, into a row from a place on, in the order of LEDGER_LINES. */
export function fillLedger(
  row: Float64Array,
  from: number,
  p: Prepared,
  s: PlantState,
  b: Books,
  start: StoredAtStart,
): void {
  row[from + 0] = b.runningFuel;
  row[from + 1] = b.startFuel;
  row[from + 2] = b.engineHeat;
  row[from + 3] = b.engineFriction;
  row[from + 4] = b.engineMotoring;
  row[from + 5] = b.sunMachine;
  row[from + 6] = b.outputMachine;
  row[from + 7] = b.mesh;
  row[from + 8] = b.finalDrive;
  row[from + 9] = b.reduction;
  row[from + 10] = b.contacts;
  row[from + 11] = b.ohmic;
  row[from + 12] = b.polarisation;
  row[from + 13] = b.auxiliary;
  row[from + 14] = b.rolling;
  row[from + 15] = b.air;
  row[from + 16] = b.brake;
  row[from + 17] = kineticEnergy(p, s) - start.kinetic;
  row[from + 18] = p.weight * b.height;
  row[from + 19] = -b.source;
  row[from + 20] = polarisationEnergy(p, s) - start.polarisation;
}

/** The ledger at this moment, J, in the order of LEDGER_LINES. */
export function readLedger(p: Prepared, s: PlantState, b: Books, start: StoredAtStart): Float64Array {
  const row = new Float64Array(LEDGER_LINES.length);
  fillLedger(row, 0, p, s, b, start);
  return row;
}

/** What is left over when all lines are added up with their signs, J: sources − losses − stored. */
export function ledgerResidual(values: ArrayLike<number>): number {
  let sum = 0;
  LEDGER_LINES.forEach((line, index) => {
    const value = values[index] ?? Number.NaN;
    sum += line.side === "in" ? value : -value;
  });
  return sum;
}

/** Least energy the closure is measured against, J. */
const LEAST_SCALE = 1000;

/** Residual over the energy turned over (at least 1 kJ). */
export const ledgerClosure = (values: ArrayLike<number>, turnedOver: number): number =>
  Math.abs(ledgerResidual(values)) / Math.max(LEAST_SCALE, turnedOver);
