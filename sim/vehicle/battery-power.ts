import { openCircuit } from "../drivetrain/battery.ts";
import { lookUp } from "../drivetrain/table.ts";
import type { Vehicle } from "../parameters/schema.ts";

/** Greatest terminal powers of the rested battery at a charge, W, both ≥ 0; the taper of the window left out. */
export interface BatteryPowers {
  readonly discharge: number;
  readonly charge: number;
}

/**
 * Greatest discharge and charge power within the limits of current and cell voltage.
 * @param soc state of charge, 0–1
 */
export function batteryPowers(b: Vehicle["battery"], soc: number): BatteryPowers {
  const open = lookUp(openCircuit(b), soc);
  const toLeast = (open - b.cells * b.cellVoltageMin) / b.resistanceDischarge;
  const toMost = (b.cells * b.cellVoltageMax - open) / b.resistanceCharge;
  const out = Math.max(0, Math.min(b.maxDischargeCurrent, toLeast));
  const into = Math.max(0, Math.min(b.maxChargeCurrent, toMost));
  return {
    discharge: (open - b.resistanceDischarge * out) * out,
    charge: (open + b.resistanceCharge * into) * into,
  };
}
