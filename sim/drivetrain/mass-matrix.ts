import { Matrix } from "ml-matrix";
import type { Vehicle } from "../parameters/schema.ts";
import { basicRatio } from "./gear-set.ts";

/** One rigid body of the drivetrain: its speed is row · (ωc, ωr). */
export interface Body {
  readonly name: string;
  /** kg·m², or kg for the vehicle's mass (whose row has metres). */
  readonly inertia: number;
  readonly row: readonly [number, number];
}

/**
 * The bodies and their rows of the kinematic matrix B over q = (ωc, ωr).
 * @param payload extra mass, kg
 */
export function bodies(vehicle: Vehicle, payload: number): readonly Body[] {
  const { gearSet, engine, sunMachine, outputMachine, body, finalDrive } = vehicle;
  const k = basicRatio(gearSet);
  const planetRatio = gearSet.ringTeeth / gearSet.planetTeeth;
  const centreDistance = (gearSet.toothModule * (gearSet.sunTeeth + gearSet.planetTeeth)) / 2;
  const orbital = gearSet.planets * gearSet.planetMass * centreDistance * centreDistance;
  return [
    { name: "engine and carrier", inertia: engine.inertia + gearSet.carrierInertia + orbital, row: [1, 0] },
    { name: "sun and sun machine", inertia: sunMachine.inertia, row: [1 + k, -k] },
    {
      name: "planets' spin",
      inertia: gearSet.planets * gearSet.planetInertia,
      row: [1 - planetRatio, planetRatio],
    },
    { name: "ring", inertia: gearSet.ringInertia, row: [0, 1] },
    { name: "output machine", inertia: outputMachine.inertia, row: [0, outputMachine.reduction] },
    { name: "wheels", inertia: body.wheelInertia, row: [0, 1 / finalDrive.ratio] },
    { name: "vehicle", inertia: body.mass + payload, row: [0, body.wheelRadius / finalDrive.ratio] },
  ];
}

/** Symmetric 2 × 2 mass matrix over (ωc, ωr) and its inverse, kg·m² and 1/(kg·m²). */
export interface MassMatrix {
  readonly cc: number;
  readonly cr: number;
  readonly rr: number;
  readonly inverseCc: number;
  readonly inverseCr: number;
  readonly inverseRr: number;
}

/** M = Bᵀ J B and M⁻¹ of a list of bodies. */
export function massMatrix(list: readonly Body[]): MassMatrix {
  const b = new Matrix(list.map((body) => [...body.row]));
  const j = Matrix.diag(list.map((body) => body.inertia));
  const m = b.transpose().mmul(j).mmul(b);
  const det = m.get(0, 0) * m.get(1, 1) - m.get(0, 1) * m.get(1, 0);
  return {
    cc: m.get(0, 0),
    cr: m.get(0, 1),
    rr: m.get(1, 1),
    inverseCc: m.get(1, 1) / det,
    inverseCr: -m.get(0, 1) / det,
    inverseRr: m.get(0, 0) / det,
  };
}
