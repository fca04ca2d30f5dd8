import { ampHoursToCoulombs } from "../../shared/units.ts";
import type { RunSettings } from "../options.ts";
import type { Vehicle } from "../parameters/schema.ts";
import { REFERENCE_AIR_DENSITY, SUN_CONTROL_SHARE } from "../settings.ts";
import { openCircuit } from "./battery.ts";
import { engineTables } from "./engine.ts";
import { basicRatio } from "./gear-set.ts";
import { bodies, massMatrix } from "./mass-matrix.ts";
import { GRAVITY, roadLoad } from "./road.ts";

/** A checked vehicle and run options, turned into flat numbers and tables: all that the time loop reads. */
export type Prepared = ReturnType<typeof prepare>;

function gearNumbers(vehicle: Vehicle, payload: number) {
  const { gearSet, engine, outputMachine, finalDrive, body } = vehicle;
  const k = basicRatio(gearSet);
  const list = bodies(vehicle, payload);
  const m = massMatrix(list);
  const carrier = list.find((b) => b.name === "engine and carrier")?.inertia ?? engine.inertia;
  const planetRatio = gearSet.ringTeeth / gearSet.planetTeeth;
  const metresPerRing = body.wheelRadius / finalDrive.ratio;
  return {
    k,
    k1: 1 + k,
    perK1: 1 / (1 + k),
    meshLoss: 1 - gearSet.basicEfficiency,
    driveLoss: 1 - finalDrive.efficiency,
    reductionLoss: (1 - outputMachine.reductionEfficiency) * outputMachine.reduction,
    reduction: outputMachine.reduction,
    metresPerRing,
    perMetresPerRing: 1 / metresPerRing,
    massCc: m.cc,
    massCr: m.cr,
    massRr: m.rr,
    inverseCc: m.inverseCc,
    inverseCr: m.inverseCr,
    inverseRr: m.inverseRr,
    carrierInertia: carrier,
    /** 1/(kg·m²) of the carrier with the sun geared to it, the ring held in its motion */
    perCarrierInertia: 1 / (carrier + (1 + k) * (1 + k) * vehicle.sunMachine.inertia),
    sunInertia: vehicle.sunMachine.inertia,
    planetInertia: gearSet.planets * gearSet.planetInertia,
    planetRowC: 1 - planetRatio,
    planetRowR: planetRatio,
    /** ring and output machine, at the ring */
    ringSideInertia:
      gearSet.ringInertia + outputMachine.inertia * outputMachine.reduction * outputMachine.reduction,
    /** wheels and vehicle, at the ring */
    wheelSideInertia:
      body.wheelInertia / (finalDrive.ratio * finalDrive.ratio) +
      (body.mass + payload) * metresPerRing * metresPerRing,
  };
}

function roadNumbers(vehicle: Vehicle, settings: RunSettings) {
  const { body } = vehicle;
  const mass = body.mass + settings.payload;
  const load = roadLoad(body, mass, settings.airDensity, REFERENCE_AIR_DENSITY);
  return {
    mass,
    weight: mass * GRAVITY,
    rolling: load.rolling,
    dragB: load.dragB,
    dragC: load.dragC,
    headWind: settings.headWind,
    gripAll: body.tyreFriction * mass * GRAVITY,
    gripDriven: body.tyreFriction * mass * GRAVITY * body.drivenAxleLoadShare,
    axleBrakingShare: body.drivenAxleBrakingShare,
    brakeMost: body.frictionBrakeForce,
    fadeEnd: vehicle.control.fadeEnd,
    fadePerSpeed: 1 / Math.max(1e-6, vehicle.control.fadeStart - vehicle.control.fadeEnd),
  };
}

function engineNumbers(vehicle: Vehicle, h: number) {
  const e = vehicle.engine;
  const { map, full, line, motored, top } = engineTables(e);
  const sun = vehicle.sunMachine;
  const fullLeast = Math.min(...full.values);
  // The sun machine at a tenth above its greatest speed, which no run reaches.
  const sunLeast = Math.min(sun.peakTorque, sun.peakPower / (1.1 * sun.maxSpeed));
  return {
    /** for strategies that look ahead through the engine's own formulas, outside the loop */
    engine: e,
    idleSpeed: e.idleSpeed,
    engineTop: e.maxSpeed,
    friction0: e.friction0,
    friction1: e.friction1,
    friction2: e.friction2,
    breakaway: e.breakaway,
    efficiency: e.indicatedEfficiency,
    perBestSpeed: 1 / e.bestSpeed,
    speedFall: e.speedFall,
    loadKnee: e.loadKnee,
    loadFall: e.loadFall,
    /** share of the way to its target that the indicated torque goes in a step, at its end and in the mean */
    lag: 1 - Math.exp(-h / e.torqueLag),
    lagMean: 1 - ((1 - Math.exp(-h / e.torqueLag)) * e.torqueLag) / h,
    fullLoadMost: Math.max(...e.fullLoadTorque),
    fullLoad: full.values,
    fullPerStep: full.perStep,
    fullLast: full.last,
    map,
    line,
    motored,
    enginePower: top.power,
    enginePowerSpeed: top.speed,
    oneWayClutch: e.oneWayClutch,
    /** brake torque that no limit binds at any speed, N·m: the loop looks no further below it */
    easyTorque: Math.min(fullLeast, SUN_CONTROL_SHARE * (1 + basicRatio(vehicle.gearSet)) * sunLeast),
    easyLoad: e.loadKnee * fullLeast,
  };
}

function electricNumbers(vehicle: Vehicle, h: number) {
  const { sunMachine: s, outputMachine: o, battery: b } = vehicle;
  const charge = ampHoursToCoulombs(b.capacityAh);
  const table = openCircuit(b);
  const perCapacitance = b.polarisationResistance / b.polarisationTime;
  const a = h / (2 * b.polarisationTime);
  return {
    sunPeakTorque: s.peakTorque,
    sunPeakPower: s.peakPower,
    sunTop: s.maxSpeed,
    sun0: s.loss0,
    sun1: s.loss1,
    sun2: s.loss2,
    sun3: s.loss3,
    sun4: s.loss4,
    outPeakTorque: o.peakTorque,
    outPeakPower: o.peakPower,
    outTop: o.maxSpeed,
    out0: o.loss0,
    out1: o.loss1,
    out2: o.loss2,
    out3: o.loss3,
    out4: o.loss4,
    charge,
    perCharge: 1 / charge,
    openCircuit: table.values,
    socSteps: table.last,
    /** dVoc/dQ of one table step, per volt: steps over the whole charge */
    stepsPerCharge: table.last / charge,
    resistanceDischarge: b.resistanceDischarge,
    resistanceCharge: b.resistanceCharge,
    rcFactor: a,
    rcInverse: 1 / (1 + a),
    rcPerCapacitance: perCapacitance,
    rcConductance: b.polarisationResistance > 0 ? 1 / b.polarisationResistance : 0,
    /** (h/2C1)/(1 + a), the resistance that the RC pair adds within a step */
    rcResistance: (h * perCapacitance) / (2 * (1 + a)),
    packLeast: b.cells * b.cellVoltageMin,
    packMost: b.cells * b.cellVoltageMax,
    currentMostOut: b.maxDischargeCurrent,
    currentMostIn: b.maxChargeCurrent,
    socFloor: b.socFloor,
    socCeiling: b.socCeiling,
  };
}

/**
 * Prepares the numbers of the time loop, once a run. The vehicle must be checked (readVehicle).
 * @param settings checked run options
 */
export function prepare(vehicle: Vehicle, settings: RunSettings) {
  const h = settings.step;
  return Object.freeze({
    h,
    halfH: h / 2,
    perH: 1 / h,
    stepsPerTick: settings.stepsPerTick,
    ...gearNumbers(vehicle, settings.payload),
    ...roadNumbers(vehicle, settings),
    ...engineNumbers(vehicle, h),
    ...electricNumbers(vehicle, h),
    auxiliaryPower: settings.auxiliaryPower,
    /** exact over a step: the speed error falls by e^(−h/τ) */
    speedGain: (1 - Math.exp(-h / vehicle.control.speedControlTime)) / h,
    control: Object.freeze({ ...vehicle.control }),
    thermal: Object.freeze({
      warm: vehicle.engine.warmTemperature,
      noStopBelow: vehicle.engine.noStopBelow,
      coldFriction: vehicle.engine.coldFriction,
      perCapacity: 1 / vehicle.engine.heatCapacity,
      share: vehicle.engine.coolantHeatShare,
      loss: vehicle.engine.heatLoss,
      air: settings.airTemperature,
      start: settings.coldStart ? settings.airTemperature : vehicle.engine.warmTemperature,
    }),
    startFuel: vehicle.engine.startFuel,
    socStart: settings.startSoc,
    socTarget: vehicle.battery.socTarget,
  });
}
