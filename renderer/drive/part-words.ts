import { planetSpinOnCarrier } from "../../sim/drivetrain/gear-set.ts";
import type { Vehicle } from "../../sim/parameters/schema.ts";
import { partSpeed, SHAFT_OF } from "../bench/parts.ts";
import type { PartId } from "../scene/contract.ts";
import { kilowatts, num, shaftSpeed, shaftUnitName, type Units } from "../state/format.ts";
import type { HideableId } from "../state/predict.ts";
import type { Now } from "../state/run.ts";
import { t } from "../texts/catalogue.ts";

const HIDES: Readonly<Partial<Record<PartId, HideableId>>> = {
  sun: "sun-speed",
  "sun-machine": "sun-speed",
  carrier: "carrier-speed",
  engine: "carrier-speed",
  ring: "ring-speed",
  "output-machine": "ring-speed",
  axle: "road-speed",
};

/** The numbers of a picked part at an instant of a drive, in one line; "?" while they are asked for. */
export function roadPartWords(
  part: PartId,
  v: Vehicle,
  now: Now,
  units: Units,
  hidden: ReadonlySet<HideableId>,
): string {
  const asked = HIDES[part];
  if (asked && hidden.has(asked)) return "?";
  const say = (speed: number): string => `${shaftSpeed(units, speed)} ${shaftUnitName(units)}`;
  const words = [say(partSpeed(part, v, now.speeds))];
  const shaft = SHAFT_OF[part];
  if (part === "planets") {
    words.push(t.gear.onPin(say(planetSpinOnCarrier(v.gearSet, now.speeds.sun, now.speeds.carrier))));
  }
  if (part === "sun-machine") {
    words.push(`${num(now.at.sunMachineTorque, 1)} N·m`, `${kilowatts(-now.flows.sunElectric)} kW`);
  } else if (part === "output-machine") {
    words.push(`${num(now.at.outputMachineTorque, 1)} N·m`, `${kilowatts(now.flows.outputElectric)} kW`);
  } else if (part === "engine") {
    words.push(`${num(now.at.engineTorque, 1)} N·m`, `${kilowatts(now.flows.engine)} kW`);
  } else if (shaft) words.push(`${num(now.torques[shaft], 1)} N·m`);
  return words.join(", ");
}
