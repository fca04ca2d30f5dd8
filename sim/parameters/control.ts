import { z } from "zod";
import { quantity, text } from "./quantity.ts";

/** Thresholds and gains of the vehicle's control that a person may want to change. */
export const controlSchema = z.strictObject({
  startPower: quantity("rules: wheel and auxiliary power at which the engine starts", "W", [0, 200000], 7000),
  stopPower: quantity("rules: power below which the engine stops", "W", [0, 200000], 3500),
  stopDelay: quantity("rules: time that the power must stay low before the engine stops", "s", [0, 30], 1.5),
  minOnTime: quantity("least time the engine stays on", "s", [0, 120], 4),
  minOffTime: quantity("least time the engine stays off", "s", [0, 120], 1),
  socGain: quantity("rules: engine power added per unit of charge below the target", "W", [0, 2e6], 60000),
  socLow: quantity("charge below the target by this much starts the engine", "1", [0.005, 0.5], 0.08),
  socHigh: quantity("charge above the target by this much ends charging", "1", [0.005, 0.5], 0.08),
  leastEnginePower: quantity(
    "rules: least power asked of the running engine while driving",
    "W",
    [0, 200000],
    5000,
  ),
  thermostatPower: quantity("thermostat: engine power while on", "W", [1000, 300000], 16000),
  thermostatBand: quantity("thermostat: charge either side of the target", "1", [0.002, 0.4], 0.02),
  equivalenceFactor: quantity(
    "equivalent consumption: fuel energy that battery energy is priced at",
    "1",
    [0.5, 8],
    2.7,
  ),
  equivalenceGain: quantity(
    "equivalent consumption: rise of the price per unit of charge below the target",
    "1",
    [0, 100],
    8,
  ),
  electricTopSpeed: quantity("greatest road speed driven with the engine at rest", "m/s", [1, 70], 36),
  crankReserve: quantity("battery power kept for a start", "W", [0, 60000], 6000),
  fadeStart: quantity("road speed below which regeneration fades out", "m/s", [0, 10], 2.5),
  fadeEnd: quantity("road speed below which there is no regeneration", "m/s", [0, 9], 0.7),
  enginePowerRise: quantity("greatest rise of the engine power asked", "W/s", [1000, 500000], 25000),
  engineSpeedRate: quantity("greatest change of the engine speed asked", "rad/s2", [20, 2000], 250),
  speedControlTime: quantity("time constant of the engine speed control", "s", [0.02, 2], 0.12),
});

/** Loads and the fuel. */
export const auxiliarySchema = z.strictObject({
  power: quantity("auxiliary electric load", "W", [0, 10000], 320),
});

/** One fuel: heat, density and carbon belong together. */
export const fuelSchema = z.strictObject({
  name: text("name of the fuel, 1 to 80 characters", /^.{1,80}$/s, "petrol E0, test grade"),
  lowerHeat: quantity("lower heating value", "J/kg", [2e7, 6e7], 42.98e6),
  density: quantity("density", "kg/m3", [500, 1000], 745),
  carbonShare: quantity("carbon mass share", "1", [0.5, 0.95], 0.866),
});
