import type { Vehicle } from "../parameters/schema.ts";

/** Standard gravity, m/s² (3rd CGPM, 1901; NIST SP 330). */
export const GRAVITY = 9.80665;

/** Dry-air gas constant, J/(kg K), as in the standard atmosphere ISO 2533 (from memory). */
const AIR_GAS_CONSTANT = 287.05;

/** Air density, kg/m³, from pressure (Pa) and temperature (K). */
export const airDensity = (pressure: number, temperature: number): number =>
  pressure / (AIR_GAS_CONSTANT * temperature);

/** Sine of the road's angle from its grade (rise over run). */
export const gradeSine = (grade: number): number => grade / Math.sqrt(1 + grade * grade);

/** Cosine of the road's angle from its grade. */
export const gradeCosine = (grade: number): number => 1 / Math.sqrt(1 + grade * grade);

/** Road load as three numbers: a constant resistance on the level (N) and a drag B u + C u|u| on the air speed u. */
export interface RoadLoad {
  readonly rolling: number;
  readonly dragB: number;
  readonly dragC: number;
}

/**
 * Road load of a vehicle. A coast-down's A, B and C are taken as they are: what the driveline drags in neutral is part
 * of them, and this model's own driveline has no drag without torque (gear losses go with the load, and the machines'
 * losses at no torque are electrical), so there is nothing to subtract.
 * @param mass test mass with payload, kg
 * @param density air density, kg/m³; a coast-down's C is scaled from the reference density
 * @param referenceDensity density that the coast-down was made at, kg/m³
 */
export function roadLoad(
  body: Vehicle["body"],
  mass: number,
  density: number,
  referenceDensity: number,
): RoadLoad {
  if (body.roadLoad === "coastdown") {
    return {
      rolling: (body.coastdownA * mass) / body.mass,
      dragB: body.coastdownB,
      dragC: (body.coastdownC * density) / referenceDensity,
    };
  }
  return {
    rolling: body.rollingCoefficient * mass * GRAVITY,
    dragB: 0,
    dragC: 0.5 * density * body.dragArea,
  };
}
