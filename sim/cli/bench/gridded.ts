import { fuelPower } from "../../drivetrain/engine.ts";
import type { Vehicle } from "../../parameters/schema.ts";
import { readVehicle } from "../../vehicle/read.ts";

/** Distances of the grid, rad/s and N·m. */
const SPEED_STEP = 20;
const TORQUE_STEP = 5;

/** The same vehicle with its engine's fuel read from a grid, sampled from the formula it had. */
export function withGriddedEngine(vehicle: Vehicle): Vehicle {
  const { engine } = vehicle;
  const speed = upTo(engine.idleSpeed, engine.maxSpeed, SPEED_STEP);
  const torque = upTo(0, Math.max(...engine.fullLoadTorque), TORQUE_STEP);
  const row = (w: number): number[] => torque.map((t) => fuelPower(engine, null, w, t));
  const map = { speed, torque, fuelPower: speed.map(row) };
  return readVehicle({ ...vehicle, engine: { ...engine, map } }, "the benchmark's vehicle");
}

/** Equal steps from a start to the first at or beyond an end. */
function upTo(start: number, end: number, step: number): number[] {
  return Array.from({ length: Math.ceil((end - start) / step) + 1 }, (_, i) => start + i * step);
}
