import { at } from "../../../shared/at.ts";
import type { InputFault } from "../../../shared/errors.ts";
import type { Vehicle } from "../../parameters/schema.ts";
import { crossFault } from "../faults.ts";
import { named, UNIT, type Words, words } from "../words.ts";
import { covers, ends, firstFall } from "./lists.ts";

/** Least share of the greatest indicated efficiency that must be left at the edges of the map. */
const LEAST_LEFT = 0.3;

/** Whether the engine's curves and numbers belong together. */
export function engineFaults(vehicle: Vehicle): InputFault[] {
  const faults: InputFault[] = [];
  const e = vehicle.engine;
  const add = (path: string, what: string | Words, accepted: string | Words): void => {
    faults.push(crossFault(vehicle, `engine.${path}`, what, accepted));
  };
  if (e.breakaway < e.friction0) {
    const what = "the standing engine would turn more easily than the turning one";
    add("breakaway", what, words`at least ${named("engine.friction0", e.friction0)}`);
  }
  if (!(e.noStopBelow < e.warmTemperature)) {
    const what = "the engine would never be warm enough to be stopped";
    add("noStopBelow", what, words`below ${named("engine.warmTemperature", e.warmTemperature)}`);
  }
  const far = Math.max((e.maxSpeed - e.bestSpeed) / e.bestSpeed, (e.bestSpeed - e.idleSpeed) / e.bestSpeed);
  if (1 - e.speedFall * far * far < LEAST_LEFT) {
    const what = "the efficiency falls to nothing within the engine's speeds";
    add("speedFall", what, words`at most ${(1 - LEAST_LEFT) / (far * far)}`);
  }
  const over = 1 - e.loadKnee;
  if (1 - e.loadFall * over * over < LEAST_LEFT) {
    const what = "the efficiency falls to nothing below full load";
    add("loadFall", what, words`at most ${(1 - LEAST_LEFT) / (over * over)}`);
  }
  return [...faults, ...fullLoadFaults(vehicle)];
}

/** Whether the full-load curve is a curve over all speeds of the engine. Whatever reads the curve needs this first. */
export function fullLoadFaults(vehicle: Vehicle): InputFault[] {
  const faults: InputFault[] = [];
  const { fullLoadSpeed: speed, fullLoadTorque: torque, idleSpeed, maxSpeed } = vehicle.engine;
  const add = (path: string, what: string | Words, accepted: string | Words): void => {
    faults.push(crossFault(vehicle, `engine.${path}`, what, accepted));
  };
  if (torque.length !== speed.length) {
    const what = `${torque.length} torques for ${speed.length} speeds of the full-load curve`;
    add("fullLoadTorque", what, `${speed.length} values in`);
  }
  const fall = firstFall(speed);
  if (fall >= 0) {
    const what = `the speeds do not increase at place ${fall + 1} of the list`;
    add("fullLoadSpeed", what, words`there more than ${at(speed, fall - 1)}`);
  } else if (!covers(speed, idleSpeed, maxSpeed)) {
    const what = words`the full-load curve covers ${ends(speed).first} … ${ends(speed).last}${UNIT} only`;
    add("fullLoadSpeed", what, words`from at most ${idleSpeed} (idle) to at least ${maxSpeed}`);
  }
  const weak = torque.findIndex((value) => !(value > 0));
  if (weak >= 0) add("fullLoadTorque", `no torque at place ${weak + 1} of the list`, words`above ${0}`);
  return faults;
}
