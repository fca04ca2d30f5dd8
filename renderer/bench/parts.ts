import type { BenchPoint } from "../../sim/bench/bench.ts";
import type { Shaft, ShaftValues } from "../../sim/bench/shafts.ts";
import { planetSpeed, planetSpinOnCarrier } from "../../sim/drivetrain/gear-set.ts";
import type { Vehicle } from "../../sim/parameters/schema.ts";
import type { PartId } from "../scene/contract.ts";
import { kilowatts, num, shaftSpeed, shaftUnitName, type Units } from "../state/format.ts";
import { t } from "../texts/catalogue.ts";

/** All parts, from the sun outward and on to the wheels. */
export const PARTS: readonly PartId[] = [
  "sun",
  "planets",
  "carrier",
  "ring",
  "sun-machine",
  "output-machine",
  "reduction",
  "engine",
  "final-drive",
  "axle",
];

/** The shaft that a part turns with; null for parts that turn otherwise. */
export const SHAFT_OF: Readonly<Record<PartId, Shaft | null>> = {
  sun: "sun",
  "sun-machine": "sun",
  carrier: "carrier",
  engine: "carrier",
  ring: "ring",
  planets: null,
  "output-machine": null,
  reduction: null,
  "final-drive": null,
  axle: null,
};

/** Speed of a part, rad/s. */
export function partSpeed(part: PartId, v: Vehicle, speeds: ShaftValues): number {
  const shaft = SHAFT_OF[part];
  if (shaft) return speeds[shaft];
  if (part === "planets") return planetSpeed(v.gearSet, speeds.carrier, speeds.ring);
  return part === "axle" || part === "final-drive"
    ? speeds.ring / v.finalDrive.ratio
    : speeds.ring * v.outputMachine.reduction;
}

/** The numbers of a part in one line. */
export function partWords(part: PartId, v: Vehicle, point: BenchPoint, units: Units): string {
  const { gearSet } = v;
  const teeth: Readonly<Partial<Record<PartId, number>>> = {
    sun: gearSet.sunTeeth,
    planets: gearSet.planetTeeth,
    ring: gearSet.ringTeeth,
  };
  const say = (speed: number): string => `${shaftSpeed(units, speed)} ${shaftUnitName(units)}`;
  const words = [say(partSpeed(part, v, point.speeds))];
  const count = teeth[part];
  if (count !== undefined) words.unshift(t.gear.teeth(count));
  const shaft = SHAFT_OF[part];
  if (part === "planets")
    words.push(t.gear.onPin(say(planetSpinOnCarrier(gearSet, point.speeds.sun, point.speeds.carrier))));
  if (shaft) words.push(`${num(point.torques[shaft], 1)} N·m`, `${kilowatts(point.powers[shaft])} kW`);
  if (part === "output-machine")
    words.push(`${num(point.output.torque, 1)} N·m`, `${kilowatts(point.flows.outputMachine)} kW`);
  return words.join(", ");
}
