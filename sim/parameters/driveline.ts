import { z } from "zod";
import { choice, quantity, whole } from "./quantity.ts";

/** The planetary gear set: sun to the sun machine, carrier to the engine, ring to the output. */
export const gearSetSchema = z.strictObject({
  sunTeeth: whole("teeth of the sun", "teeth", [12, 200], 40),
  planetTeeth: whole("teeth of one planet", "teeth", [12, 200], 30),
  ringTeeth: whole("teeth of the ring (internal)", "teeth", [36, 600], 100),
  planets: whole("number of planets, equally spaced", "planets", [2, 8], 4),
  toothModule: quantity("tooth module", "m", [0.0005, 0.005], 0.00125),
  basicEfficiency: quantity("efficiency of both meshes with the carrier held", "1", [0.9, 1], 0.985),
  carrierInertia: quantity("inertia of the carrier plate, planets left out", "kg m2", [0, 0.5], 0.004),
  planetMass: quantity("mass of one planet", "kg", [0, 5], 0.12),
  planetInertia: quantity("inertia of one planet about its own pin", "kg m2", [0, 0.01], 2.5e-5),
  ringInertia: quantity("inertia of the ring and what turns with it", "kg m2", [0.001, 1], 0.02),
});

/** The final drive from the ring to the driven axle. */
export const finalDriveSchema = z.strictObject({
  ratio: quantity("ring turns for one wheel turn", "1", [1, 12], 3.3),
  efficiency: quantity("efficiency of the final drive", "1", [0.85, 1], 0.975),
});

/** Mass, resistance, tyres and brakes. */
export const bodySchema = z.strictObject({
  mass: quantity("test mass, driver included, payload not", "kg", [300, 12000], 1530),
  roadLoad: choice("road load from rolling and drag (formula) or from coast-down A, B, C (coastdown)", [
    "formula",
    "coastdown",
  ]),
  dragArea: quantity("drag coefficient times frontal area", "m2", [0.1, 10], 0.64),
  rollingCoefficient: quantity("rolling resistance over normal force", "1", [0.003, 0.05], 0.0095),
  coastdownA: quantity("coast-down A: force at standstill", "N", [0, 2000], 142),
  coastdownB: quantity("coast-down B: force per speed", "N s/m", [0, 100], 0),
  coastdownC: quantity("coast-down C: force per speed squared", "N s2/m2", [0.05, 10], 0.381),
  wheelRadius: quantity("rolling radius of the driven wheels", "m", [0.2, 0.6], 0.305),
  wheelInertia: quantity("inertia of all wheels with brakes and shafts, together", "kg m2", [0.1, 60], 3.2),
  tyreFriction: quantity("greatest tyre force over normal force", "1", [0.1, 1.5], 0.9),
  drivenAxleLoadShare: quantity("share of the weight on the driven axle", "1", [0.2, 1], 0.6),
  drivenAxleBrakingShare: quantity(
    "greatest share of a braking demand that the driven axle may carry",
    "1",
    [0, 1],
    0.8,
  ),
  frictionBrakeForce: quantity(
    "greatest friction-brake force at the tyres, all wheels",
    "N",
    [1000, 200000],
    16000,
  ),
});
