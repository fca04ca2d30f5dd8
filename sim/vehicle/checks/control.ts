import type { InputFault } from "../../../shared/errors.ts";
import { greatestPower } from "../../drivetrain/engine.ts";
import type { Vehicle } from "../../parameters/schema.ts";
import { crossFault } from "../faults.ts";
import { named, type Words, words } from "../words.ts";
import { fullLoadFaults } from "./engine.ts";

/** Whether the control's thresholds are in order. */
export function controlFaults(vehicle: Vehicle): InputFault[] {
  const faults: InputFault[] = [];
  const c = vehicle.control;
  const add = (path: string, what: string | Words, accepted: string | Words): void => {
    faults.push(crossFault(vehicle, `control.${path}`, what, accepted));
  };
  if (!(c.fadeEnd < c.fadeStart)) {
    const what = "regeneration would end before it begins to fade";
    add("fadeEnd", what, words`below ${named("control.fadeStart", c.fadeStart)}`);
  }
  if (!(c.stopPower < c.startPower)) {
    const what = "the engine would stop at a power at which it starts";
    add("stopPower", what, words`below ${named("control.startPower", c.startPower)}`);
  }
  if (fullLoadFaults(vehicle).length > 0) return faults;
  const most = greatestPower(vehicle.engine).power;
  for (const name of ["leastEnginePower", "thermostatPower"] as const) {
    if (c[name] <= most) continue;
    add(name, "more than the engine's greatest power", words`at most ${most}`);
  }
  return faults;
}
