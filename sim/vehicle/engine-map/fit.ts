import { InputError, type InputFault } from "../../../shared/errors.ts";
import type { Vehicle } from "../../parameters/schema.ts";
import { declarationAt } from "../declarations.ts";
import { round } from "../faults.ts";
import { readVehicle } from "../read.ts";
import { told } from "../words.ts";
import { type AxisUnit, SPEED_UNITS, TORQUE_UNITS } from "./measures.ts";
import type { EngineMapParameters, MapReading } from "./reading.ts";

/** A vehicle with another map, or why it cannot have it. */
export interface FittedMap {
  readonly vehicle: Vehicle | null;
  readonly faults: readonly InputFault[];
}

/**
 * Puts a map that was read into a vehicle: it must reach over all speeds and loads of the engine.
 * @param name of the file, for messages
 * @returns the vehicle with the map, or faults told in the file's units; those of the reading where it has no map
 */
export function withEngineMap(vehicle: Vehicle, reading: MapReading, name: string): FittedMap {
  const { map } = reading;
  if (!map) return { vehicle: null, faults: reading.faults };
  try {
    return { vehicle: readVehicle({ ...vehicle, engine: { ...vehicle.engine, map } }, ""), faults: [] };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return { vehicle: null, faults: error.faults.map((fault) => inFileUnits(fault, map, reading, name)) };
  }
}

/** A fault of the vehicle's check as the file would tell it. */
function inFileUnits(
  fault: InputFault,
  map: EngineMapParameters,
  { roles }: MapReading,
  name: string,
): InputFault {
  const axis = fault.where.endsWith(".speed") ? "speed" : fault.where.endsWith(".torque") ? "torque" : null;
  const units: readonly AxisUnit[] = axis === "speed" ? SPEED_UNITS : TORQUE_UNITS;
  const unit = axis && units.find(({ id }) => id === roles[axis].unit);
  if (!axis || !unit || !fault.pieces) return { ...fault, where: `${name}: ${fault.where}` };
  const number = (value: number): string => round(unit.fromSi(value));
  const how = {
    number,
    unit: ` ${unit.id}`,
    named: (path: string, value: string) => `“${declarationAt(path)?.meta.meaning ?? path}” = ${value}`,
  };
  const values = map[axis];
  return {
    what: told(fault.pieces.what, how),
    where: `${name}, ${axis}s`,
    value: `${number(values[0] ?? 0)} … ${number(values.at(-1) ?? 0)} ${unit.id}`,
    accepted: told(fault.pieces.accepted, how),
  };
}
