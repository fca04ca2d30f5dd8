import type { InputFault } from "../../../shared/errors.ts";
import { GRAVITY } from "../../drivetrain/road.ts";
import type { Vehicle } from "../../parameters/schema.ts";
import { crossFault, round } from "../faults.ts";
import { words } from "../words.ts";

/** Rolling resistance on the level, N. */
const rollingForce = ({ body }: Vehicle): number =>
  body.roadLoad === "coastdown" ? body.coastdownA : body.rollingCoefficient * body.mass * GRAVITY;

/** Greatest wheel force of the output machine alone, N, losses left out. */
export const electricWheelForce = ({ outputMachine: m, finalDrive, body }: Vehicle): number =>
  (m.peakTorque * m.reduction * finalDrive.ratio) / body.wheelRadius;

/** Whether the vehicle can pull away and stand. */
export function bodyFaults(vehicle: Vehicle): InputFault[] {
  const faults: InputFault[] = [];
  const rolling = rollingForce(vehicle);
  const pull = electricWheelForce(vehicle);
  if (pull <= rolling) {
    const what = `the output machine cannot pull away on the level: ${round(pull)} N against ${round(rolling)} N`;
    const per = vehicle.outputMachine.peakTorque / pull;
    faults.push(crossFault(vehicle, "outputMachine.peakTorque", what, words`above ${rolling * per}`));
  }
  return faults;
}
