import { at } from "../../../shared/at.ts";
import type { InputFault } from "../../../shared/errors.ts";
import { fullLoadTorque } from "../../drivetrain/engine.ts";
import type { Vehicle } from "../../parameters/schema.ts";
import { crossFault } from "../faults.ts";
import { UNIT, type Words, words } from "../words.ts";
import { fullLoadFaults } from "./engine.ts";
import { covers, ends, firstFall } from "./lists.ts";

/** Brake efficiency that no piston engine of a car reaches: above it the map's units are wrong. */
export const MOST_EFFICIENCY = 0.5;

/** Share of the greatest full-load torque up to which the first column may lie; fuel below it follows the friction. */
const FIRST_COLUMN = 0.25;

type Add = (path: string, what: string | Words, accepted: string | Words) => void;

/** Whether the engine map, if there is one, is complete and possible. Later checks need the axes to be right. */
export function engineMapFaults(vehicle: Vehicle): InputFault[] {
  if (!vehicle.engine.map) return [];
  const faults: InputFault[] = [];
  const add: Add = (path, what, accepted) => {
    faults.push(crossFault(vehicle, `engine.map.${path}`, what, accepted));
  };
  checkAxes(vehicle.engine.map, add);
  if (faults.length > 0 || fullLoadFaults(vehicle).length > 0) return faults;
  checkReach(vehicle.engine, vehicle.engine.map, add);
  checkRows(vehicle.engine.map, add);
  return faults;
}

type EngineMap = NonNullable<Vehicle["engine"]["map"]>;

function checkAxes(map: EngineMap, add: Add): void {
  for (const axis of ["speed", "torque"] as const) {
    const fall = firstFall(map[axis]);
    if (fall < 0) continue;
    const what = `the axis does not rise at place ${fall + 1} of the list`;
    add(axis, what, words`there more than ${at(map[axis], fall - 1)}`);
  }
  if (map.fuelPower.length !== map.speed.length) {
    const what = `${map.fuelPower.length} rows for ${map.speed.length} speeds`;
    add("fuelPower", what, `${map.speed.length} rows in`);
  }
  const row = map.fuelPower.findIndex((values) => values.length !== map.torque.length);
  if (row < 0) return;
  const what = `row ${row + 1} has ${at(map.fuelPower, row).length} values for ${map.torque.length} torques`;
  add("fuelPower", what, `${map.torque.length} values in every row, in`);
}

function checkReach(engine: Vehicle["engine"], map: EngineMap, add: Add): void {
  const speed = ends(map.speed);
  if (!covers(map.speed, engine.idleSpeed, engine.maxSpeed)) {
    const what = words`the map covers ${speed.first} … ${speed.last}${UNIT} only`;
    add("speed", what, words`from at most ${engine.idleSpeed} (idle) to at least ${engine.maxSpeed}`);
  }
  const grid = [engine.idleSpeed, ...map.speed, ...engine.fullLoadSpeed, engine.maxSpeed];
  const inside = grid.filter((w) => w >= engine.idleSpeed && w <= engine.maxSpeed);
  const most = Math.max(...inside.map((w) => fullLoadTorque(engine, w)));
  const torque = ends(map.torque);
  if (torque.last < most || torque.first > FIRST_COLUMN * most) {
    const what = words`the map covers ${torque.first} … ${torque.last}${UNIT} only`;
    const least = FIRST_COLUMN * most;
    add("torque", what, words`from at most ${least} (a quarter of full load) to at least ${most}`);
  }
}

function checkRows(map: EngineMap, add: Add): void {
  map.fuelPower.forEach((row, i) => {
    const speed = at(map.speed, i);
    const fall = speed > 0 ? firstFall(row) : firstFall(row, true);
    if (fall >= 0) {
      const place = `row ${i + 1}, column ${fall + 1}`;
      const what = `fuel power does not rise with torque in ${place}`;
      add("fuelPower", what, words`there more than ${at(row, fall - 1)}`);
    }
    const free = row.findIndex((fuel, j) => at(map.torque, j) * speed > MOST_EFFICIENCY * fuel);
    if (free < 0) return;
    const work = at(map.torque, free) * speed;
    const what = `the brake efficiency in row ${i + 1}, column ${free + 1} is above ${MOST_EFFICIENCY}`;
    add("fuelPower", what, words`there at least ${work / MOST_EFFICIENCY}`);
  });
}
