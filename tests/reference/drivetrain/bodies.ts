import { inverse, Matrix } from "ml-matrix";
import { at } from "../../../shared/at.ts";
import type { Vehicle } from "../../../sim/parameters/schema.ts";

/** Torques on each body from outside the gears, N·m; the last is a force on the vehicle, N. */
export interface OutsideTorques {
  readonly sun: number;
  readonly carrier: number;
  readonly ring: number;
  readonly machine: number;
  readonly vehicle: number;
}

/** What the constraint forces say. */
export interface Motion {
  /** accelerations, rad/s² */
  readonly sun: number;
  readonly carrier: number;
  readonly ring: number;
  readonly planet: number;
  /** m/s² */
  readonly vehicle: number;
  /** torque of the meshes on the sun side, N·m: what the sun loses to the planets */
  readonly mesh: number;
  /** torque through the final drive, at the ring, N·m */
  readonly drive: number;
}

const BODIES = 7;

/**
 * The drivetrain as seven bodies tied by five constraint forces, written from tooth counts and ratios alone, without
 * the reduced mass matrix: an independent statement of the same mechanics. Bodies in order: sun, carrier, planets'
 * spin, ring, output machine, wheels, vehicle.
 */
export class TiedBodies {
  private readonly solution: Matrix;
  private readonly sunTeeth: number;
  /** @param payload kg */
  constructor(vehicle: Vehicle, payload = 0) {
    const { gearSet: g, engine, sunMachine, outputMachine, body, finalDrive } = vehicle;
    const arm = (g.toothModule * (g.sunTeeth + g.planetTeeth)) / 2;
    const inertias = [
      sunMachine.inertia,
      engine.inertia + g.carrierInertia + g.planets * g.planetMass * arm * arm,
      g.planets * g.planetInertia,
      g.ringInertia,
      outputMachine.inertia,
      body.wheelInertia,
      body.mass + payload,
    ];
    const ties = [
      // No slip of sun on planet and of planet in ring, seen from the carrier.
      [g.sunTeeth, -(g.sunTeeth + g.planetTeeth), g.planetTeeth, 0, 0, 0, 0],
      [0, g.planetTeeth - g.ringTeeth, -g.planetTeeth, g.ringTeeth, 0, 0, 0],
      [0, 0, 0, -outputMachine.reduction, 1, 0, 0],
      [0, 0, 0, 1, 0, -finalDrive.ratio, 0],
      [0, 0, 0, 0, 0, -body.wheelRadius, 1],
    ];
    const matrix = Matrix.zeros(BODIES + ties.length, BODIES + ties.length);
    inertias.forEach((inertia, i) => {
      matrix.set(i, i, inertia);
    });
    ties.forEach((tie, row) => {
      tie.forEach((value, i) => {
        matrix.set(BODIES + row, i, value);
        matrix.set(i, BODIES + row, -value);
      });
    });
    this.solution = inverse(matrix);
    this.sunTeeth = g.sunTeeth;
  }

  /** Accelerations and tie forces for torques from outside. */
  motion(t: OutsideTorques): Motion {
    const outside = Matrix.columnVector([
      t.sun,
      t.carrier,
      0,
      t.ring,
      t.machine,
      0,
      t.vehicle,
      0,
      0,
      0,
      0,
      0,
    ]);
    const x = this.solution.mmul(outside).to1DArray();
    return {
      sun: at(x, 0),
      carrier: at(x, 1),
      planet: at(x, 2),
      ring: at(x, 3),
      vehicle: at(x, 6),
      mesh: -this.sunTeeth * at(x, 7),
      drive: -at(x, 10),
    };
  }
}
