import { at } from "../../../shared/at.ts";
import type { InputFault } from "../../../shared/errors.ts";
import { openCircuitTable } from "../../drivetrain/battery.ts";
import { frictionTorque } from "../../drivetrain/engine.ts";
import { basicRatio } from "../../drivetrain/gear-set.ts";
import { machineElectric } from "../../drivetrain/machine.ts";
import { lookUp } from "../../drivetrain/table.ts";
import type { Vehicle } from "../../parameters/schema.ts";
import { FIRING_SHARE, SOC_FORCED_START } from "../../settings.ts";
import { batteryPowers } from "../battery-power.ts";
import { crossFault, round } from "../faults.ts";
import { named, type Words, words } from "../words.ts";
import { ends, firstFall } from "./lists.ts";
import { crankTorque } from "./machines.ts";

type Add = (path: string, what: string | Words, accepted: string | Words) => void;

/** Whether the battery's curve, window and limits belong together. Voltages and powers need a right curve. */
export function batteryFaults(vehicle: Vehicle): InputFault[] {
  const faults: InputFault[] = [];
  const add: Add = (path, what, accepted) => {
    faults.push(crossFault(vehicle, path, what, accepted));
  };
  checkCurve(vehicle.battery, add);
  checkWindow(vehicle.battery, add);
  if (faults.length > 0) return faults;
  checkVoltages(vehicle.battery, add);
  if (faults.length > 0) return faults;
  checkPowers(vehicle, add);
  return faults;
}

function checkCurve(b: Vehicle["battery"], add: Add): void {
  if (b.cellVoltage.length !== b.cellSoc.length) {
    const what = `${b.cellVoltage.length} voltages for ${b.cellSoc.length} states of charge`;
    add("battery.cellVoltage", what, `${b.cellSoc.length} values in`);
  }
  const fall = firstFall(b.cellSoc);
  if (fall >= 0) {
    const what = `the charge does not increase at place ${fall + 1} of the list`;
    add("battery.cellSoc", what, words`there more than ${at(b.cellSoc, fall - 1)}`);
  } else if (ends(b.cellSoc).first !== 0 || ends(b.cellSoc).last !== 1) {
    add(
      "battery.cellSoc",
      "the curve does not go from empty to full",
      words`first value ${0}, last value ${1}`,
    );
  }
  const drop = firstFall(b.cellVoltage, true);
  if (drop >= 0) {
    const what = `the voltage falls with rising charge at place ${drop + 1} of the list`;
    add("battery.cellVoltage", what, words`there at least ${at(b.cellVoltage, drop - 1)}`);
  }
}

function checkWindow(b: Vehicle["battery"], add: Add): void {
  const ceiling = named("battery.socCeiling", b.socCeiling);
  const window = words`between ${named("battery.socFloor", b.socFloor)} and ${ceiling}`;
  if (!(b.socFloor < b.socCeiling)) {
    add("battery.socFloor", "the charge window is empty", words`below ${ceiling}`);
    return;
  }
  if (!(b.socTarget > b.socFloor && b.socTarget < b.socCeiling)) {
    add("battery.socTarget", "the target is outside the charge window", window);
  }
  if (!(b.socStart >= b.socFloor && b.socStart <= b.socCeiling)) {
    add("battery.socStart", "the start is outside the charge window", window);
  }
}

function checkVoltages(b: Vehicle["battery"], add: Add): void {
  const table = openCircuitTable(b);
  const low = lookUp(table, b.socFloor) / b.cells;
  const high = lookUp(table, b.socCeiling) / b.cells;
  if (!(b.cellVoltageMin < low)) {
    const what = "an unloaded cell at the charge floor is already below its least voltage";
    add("battery.cellVoltageMin", what, words`below ${low}`);
  }
  if (!(b.cellVoltageMax > high)) {
    const what = "an unloaded cell at the charge ceiling is already above its greatest voltage";
    add("battery.cellVoltageMax", what, words`above ${high}`);
  }
  // At half the open-circuit voltage a source gives its greatest power; below it, more current gives less.
  if (b.cellVoltageMin < high / 2) {
    const what =
      "the least voltage lies below half the open-circuit voltage, where more current gives less power";
    add("battery.cellVoltageMin", what, words`at least ${high / 2}`);
  }
}

function checkPowers(vehicle: Vehicle, add: Add): void {
  const { battery: b, control, engine, sunMachine, auxiliary } = vehicle;
  const usual = batteryPowers(b, b.socTarget).discharge;
  if (control.crankReserve > usual) {
    const what =
      "the engine would never be stopped: the battery cannot hold this reserve at its target charge";
    add("control.crankReserve", what, words`at most ${usual}`);
  }
  const speed = FIRING_SHARE * engine.idleSpeed;
  const k1 = 1 + basicRatio(vehicle.gearSet);
  const torque = Math.max(crankTorque(vehicle), frictionTorque(engine, speed)) / k1;
  const needed = machineElectric(sunMachine, torque, k1 * speed) + auxiliary.power;
  const low = Math.min(b.socTarget, b.socFloor + SOC_FORCED_START);
  const given = batteryPowers(b, low).discharge;
  if (needed > given) {
    const what = `the battery gives ${round(given)} W when nearly empty, cranking needs ${round(needed)} W`;
    const least = (b.maxDischargeCurrent * needed) / given;
    add("battery.maxDischargeCurrent", what, words`about ${least} or more, if voltage and resistance allow,`);
  }
}
