import { z } from "zod";
import { column, flag, givenColumn, givenGrid, quantity } from "./quantity.ts";

/** Grid of a measured engine: fuel power over speed and brake torque, rows by speed. */
export const engineMapSchema = z.strictObject({
  speed: givenColumn("engine map: speeds of the rows, increasing", "rad/s", [0, 1500]),
  torque: givenColumn("engine map: brake torques of the columns, increasing", "N m", [-200, 3000]),
  fuelPower: givenGrid(
    "engine map: fuel power, a row for each speed, a column for each torque",
    "W",
    [0, 3e6],
  ),
});

const rpm = (value: number): number => Math.round(((value * Math.PI) / 30) * 1e4) / 1e4;

/** The combustion engine on the carrier. Friction is the motored torque of the warm engine. */
export const engineSchema = z.strictObject({
  displacement: quantity("swept volume", "m3", [0.0003, 0.01], 0.0016),
  inertia: quantity("inertia of crank train, flywheel and damper", "kg m2", [0.02, 2], 0.14),
  idleSpeed: quantity("idle speed", "rad/s", [50, 160], 105),
  maxSpeed: quantity("greatest speed", "rad/s", [200, 1000], rpm(5000)),
  fullLoadSpeed: column(
    "speeds of the full-load curve, increasing",
    "rad/s",
    [0, 1100],
    [1000, 1500, 2000, 3000, 4000, 5000].map(rpm),
  ),
  fullLoadTorque: column("brake torque at full load", "N m", [0, 2000], [98, 110, 118, 127, 131, 126]),
  friction0: quantity("friction torque, constant part", "N m", [0, 100], 10.5),
  friction1: quantity("friction torque per speed", "N m s", [0, 0.5], 0.011),
  friction2: quantity("friction torque per speed squared", "N m s2", [0, 0.001], 3.8e-5),
  breakaway: quantity("torque that starts the standing engine turning", "N m", [0, 200], 18),
  indicatedEfficiency: quantity("greatest indicated efficiency", "1", [0.2, 0.52], 0.44),
  bestSpeed: quantity("speed of the greatest indicated efficiency", "rad/s", [80, 600], 235),
  speedFall: quantity("loss of efficiency at zero and at twice the best speed", "1", [0, 0.8], 0.1),
  loadKnee: quantity("load (torque over full load) above which efficiency falls", "1", [0.3, 1], 0.85),
  loadFall: quantity("fall of efficiency per load squared above the knee", "1", [0, 20], 5.5),
  map: engineMapSchema.optional(),
  torqueLag: quantity("time constant of the indicated torque", "s", [0.02, 1], 0.12),
  startFuel: quantity("extra fuel energy for one start", "J", [0, 100000], 6000),
  oneWayClutch: flag("a one-way clutch holds the standing engine, so that the sun machine can push", false),
  warmTemperature: quantity("coolant temperature of the warm engine", "K", [320, 400], 363.15),
  noStopBelow: quantity("coolant temperature below which the engine is not stopped", "K", [250, 380], 323.15),
  coldFriction: quantity("friction of the engine at 293 K over the warm one", "1", [1, 4], 1.9),
  heatCapacity: quantity("heat capacity of coolant and metal that warm up", "J/K", [5000, 500000], 60000),
  coolantHeatShare: quantity("share of the engine's heat that goes into the coolant", "1", [0.1, 0.7], 0.35),
  heatLoss: quantity("heat lost to the air per kelvin, thermostat shut", "W/K", [0, 200], 15),
});
