import { z } from "zod";
import { column, quantity, whole } from "./quantity.ts";

interface MachineDefaults {
  readonly torque: number;
  readonly power: number;
  readonly speed: number;
  readonly inertia: number;
  readonly loss: readonly [number, number, number, number, number];
}

const machineFields = (d: MachineDefaults) => ({
  peakTorque: quantity("greatest torque, both signs", "N m", [5, 3000], d.torque),
  peakPower: quantity("greatest shaft power, both signs", "W", [2000, 500000], d.power),
  maxSpeed: quantity("greatest speed, both signs", "rad/s", [200, 3000], d.speed),
  inertia: quantity("inertia of the rotor", "kg m2", [0.0005, 1], d.inertia),
  loss0: quantity("loss c0, constant", "W", [0, 2000], d.loss[0]),
  loss1: quantity("loss c1, per torque squared", "W/(N m)2", [0, 20], d.loss[1]),
  loss2: quantity("loss c2, per speed", "W s/rad", [0, 20], d.loss[2]),
  loss3: quantity("loss c3, per speed cubed", "W s3/rad3", [0, 1e-4], d.loss[3]),
  loss4: quantity("loss c4, per shaft power", "1", [0, 0.2], d.loss[4]),
});

/** The electric machine on the sun, with its inverter. loss = c0 + c1 T² + c2|ω| + c3|ω|³ + c4|T ω|. */
export const sunMachineSchema = z.strictObject(
  machineFields({
    torque: 42,
    power: 38000,
    speed: 1100,
    inertia: 0.02,
    loss: [40, 0.27, 0.25, 1e-6, 0.012],
  }),
);

/** The electric machine on the output, with its inverter and its reduction to the ring. */
export const outputMachineSchema = z.strictObject({
  ...machineFields({
    torque: 190,
    power: 62000,
    speed: 1450,
    inertia: 0.035,
    loss: [50, 0.055, 0.22, 3e-7, 0.015],
  }),
  reduction: quantity("machine turns for one ring turn", "1", [1, 8], 2.5),
  reductionEfficiency: quantity("efficiency of the reduction", "1", [0.85, 1], 0.985),
});

/** The traction battery as one pack of equal cells in series. */
export const batterySchema = z.strictObject({
  cells: whole("cells in series", "cells", [10, 400], 54),
  capacityAh: quantity("capacity of the pack", "Ah", [1, 400], 6),
  cellSoc: column(
    "state of charge of the open-circuit points, from 0 to 1",
    "1",
    [0, 1],
    [0, 0.1, 0.2, 0.35, 0.5, 0.65, 0.8, 0.9, 1],
  ),
  cellVoltage: column(
    "open-circuit voltage of a cell at these points",
    "V",
    [1, 5],
    [3.2, 3.5, 3.58, 3.65, 3.7, 3.8, 3.93, 4.02, 4.15],
  ),
  cellVoltageMin: quantity("least terminal voltage of a cell", "V", [0.5, 4], 2.7),
  cellVoltageMax: quantity("greatest terminal voltage of a cell", "V", [1.5, 5], 4.3),
  resistanceDischarge: quantity("ohmic resistance of the pack on discharge", "Ohm", [0.001, 5], 0.12),
  resistanceCharge: quantity("ohmic resistance of the pack on charge", "Ohm", [0.001, 5], 0.12),
  polarisationResistance: quantity("resistance R1 of the RC pair", "Ohm", [0, 5], 0.03),
  polarisationTime: quantity("time constant R1 C1 of the RC pair", "s", [0.5, 500], 20),
  maxDischargeCurrent: quantity("greatest discharge current", "A", [5, 2000], 130),
  maxChargeCurrent: quantity("greatest charge current", "A", [5, 2000], 130),
  socFloor: quantity("state of charge below which nothing is discharged", "1", [0, 0.9], 0.35),
  socCeiling: quantity("state of charge above which nothing is charged", "1", [0.1, 1], 0.8),
  socTarget: quantity("state of charge that a charge-sustaining strategy keeps", "1", [0.05, 0.95], 0.58),
  socStart: quantity("state of charge at the start unless a run says otherwise", "1", [0, 1], 0.58),
});
