import { torqueLimit } from "../drivetrain/machine.ts";
import type { Vehicle } from "../parameters/schema.ts";
import { batteryPowers } from "../vehicle/battery-power.ts";
import type { BenchPoint } from "./bench.ts";

/** What stands against the setting of the bench. */
export type BenchLimitId =
  | "full-load"
  | "no-firing"
  | "motored-friction"
  | "sun-torque"
  | "output-torque"
  | "battery-discharge"
  | "battery-charge"
  | "below-idle";

/** One limit that is met or passed. */
export interface BenchLimit {
  readonly id: BenchLimitId;
  /** the limit, SI */
  readonly limit: number;
  /** what is asked or needed, SI */
  readonly value: number;
}

/** Rounding that does not count as passing a limit. */
const SLACK = 1e-6;

/** Limits of torque and power that a setting of the bench meets, the gravest first. Speeds have their own. */
export function benchLimits(
  v: Vehicle,
  at: Pick<BenchPoint, "speeds" | "torques" | "engine" | "output" | "flows">,
  asked: { readonly engineTorque: number; readonly outputTorque: number | null },
): readonly BenchLimit[] {
  const found: BenchLimit[] = [];
  const add = (met: boolean, id: BenchLimitId, limit: number, value: number): void => {
    if (met) found.push({ id, limit, value });
  };
  const { engine, output, flows } = at;
  const sun = torqueLimit(v.sunMachine, at.speeds.sun);
  const battery = batteryPowers(v.battery, v.battery.socTarget);
  const fires = engine.most > 0;
  const over = asked.engineTorque > engine.most + SLACK;
  add(Math.abs(at.torques.sun) > sun + SLACK, "sun-torque", sun, Math.abs(at.torques.sun));
  add(over && fires, "full-load", engine.most, asked.engineTorque);
  add(over && !fires, "no-firing", 0, asked.engineTorque);
  add(asked.engineTorque < engine.least - SLACK, "motored-friction", engine.least, asked.engineTorque);
  const machine = Math.abs(asked.outputTorque ?? 0);
  add(machine > output.most + SLACK, "output-torque", output.most, machine);
  add(flows.battery > battery.discharge, "battery-discharge", battery.discharge, flows.battery);
  add(-flows.battery > battery.charge, "battery-charge", battery.charge, -flows.battery);
  const { carrier } = at.speeds;
  // One per cent: idle is a whole number in rad/s, and people set rev/min.
  const below = carrier > 0 && carrier < v.engine.idleSpeed * 0.99;
  add(below, "below-idle", v.engine.idleSpeed, carrier);
  return found;
}
