import { realAt } from "../../../shared/at.ts";
import { startCost } from "../../control/start-cost.ts";
import type { Prepared } from "../../drivetrain/prepared.ts";
import { QuasiStatic } from "../../drivetrain/quasi-static.ts";
import { currentFor, mostIn, mostOut, openAt, sourceOf } from "./battery.ts";
import { fuelAt } from "./candidates.ts";
import type { Decisions } from "./decisions.ts";
import type { Demand } from "./demand.ts";

/** Where the energy of a quasi-static drive goes, J; names as in the run's ledger where they mean the same. */
export interface Lines {
  runningFuel: number;
  startFuel: number;
  /** fuel less brake work of the engine: heat and friction together */
  engineLoss: number;
  sunMachine: number;
  outputMachine: number;
  mesh: number;
  finalDrive: number;
  reduction: number;
  /** battery energy of starts and stops */
  startEnergy: number;
  ohmic: number;
  auxiliary: number;
  brake: number;
  /** net work at the wheels: road load, height and the vehicle's motion */
  wheels: number;
  /** motion of the drivetrain's rotating parts */
  rotating: number;
  /** taken out of the open-circuit source */
  source: number;
}

/** A stage in which decisions pass a limit: by how much, W at the battery's terminals or at the shaft. */
export interface Beyond {
  readonly time: number;
  readonly what: "battery-discharge" | "battery-charge" | "machine";
  readonly power: number;
}

/** A demand driven by given decisions, quasi-statically. */
export interface Evaluation {
  readonly fuelEnergy: number;
  readonly starts: number;
  /** stages + 1 */
  readonly soc: Float64Array;
  /** terminal power a stage, W, without the starts */
  readonly battery: Float64Array;
  readonly lines: Lines;
  readonly beyond: readonly Beyond[];
}

const noLines = (): Lines => ({
  runningFuel: 0,
  startFuel: 0,
  engineLoss: 0,
  sunMachine: 0,
  outputMachine: 0,
  mesh: 0,
  finalDrive: 0,
  reduction: 0,
  startEnergy: 0,
  ohmic: 0,
  auxiliary: 0,
  brake: 0,
  wheels: 0,
  rotating: 0,
  source: 0,
});

/**
 * Drives a demand by given decisions with the optimum's own formulas: the same losses, battery and start cost. Charging
 * beyond the battery's limit goes into the friction brakes as far as the vehicle brakes; any other passing of a limit is
 * listed, and the energy is counted as it is.
 * @param wheelTorque the demand's, or what the vehicle can do of it (`Actions.wheelTorque`)
 */
export function evaluate(
  p: Prepared,
  demand: Demand,
  decisions: Decisions,
  startSoc: number,
  wheelTorque: Float64Array = demand.wheelTorque,
): Evaluation {
  const source = sourceOf(p);
  const quasi = new QuasiStatic(p);
  const cost = startCost(p);
  const lines = noLines();
  const beyond: Beyond[] = [];
  const { stages, stage } = demand;
  const soc = new Float64Array(stages + 1);
  const battery = new Float64Array(stages);
  soc[0] = startSoc;
  let x = startSoc;
  let on = false;
  let starts = 0;
  const startCharge = cost.energy / (openAt(source, startSoc) * source.charge);
  for (let k = 0; k < stages; k += 1) {
    const runs = realAt(decisions.on, k) === 1;
    if (runs && !on) {
      starts += 1;
      lines.startFuel += cost.fuel;
      lines.startEnergy += startCharge * openAt(source, x) * source.charge;
      lines.source += startCharge * openAt(source, x) * source.charge;
      x -= startCharge;
    }
    on = runs;
    const ring = realAt(demand.ringSpeed, k);
    const wheel = realAt(wheelTorque, k);
    const awake = realAt(demand.awake, k) === 1;
    const share = decisions.regeneration ? realAt(demand.brakingShare, k) : 0;
    const point = (carried: number): void => {
      if (awake) quasi.road(ring, realAt(demand.ringAcceleration, k), wheel, carried, p.auxiliaryPower);
      else quasi.asleep();
      if (runs) quasi.engine(realAt(decisions.speed, k), realAt(decisions.torque, k));
      else quasi.rest();
    };
    point(share);
    const open = openAt(source, x);
    const into = -mostIn(source, x, open);
    if (quasi.battery < into && wheel * ring < 0) {
      // The friction brakes take over: the share of the axle that just fills the battery's limit.
      let low = 0;
      let high = share;
      for (let i = 0; i < 40; i += 1) {
        const middle = 0.5 * (low + high);
        point(middle);
        if (quasi.battery < into) high = middle;
        else low = middle;
      }
      point(low);
    }
    // Beyond that they hold back what turns with the wheels.
    const held = wheel * ring < 0 ? Math.max(0, into - quasi.battery) : 0;
    const power = quasi.battery + held;
    const out = mostOut(source, x, open);
    const time = k * stage;
    if (!quasi.feasible) beyond.push({ time, what: "machine", power: 0 });
    if (power > out) beyond.push({ time, what: "battery-discharge", power: power - out });
    if (power < into - 1e-6) beyond.push({ time, what: "battery-charge", power: into - power });
    const current = currentFor(source, open, power);
    const fuel = runs ? fuelAt(p, realAt(decisions.speed, k), realAt(decisions.torque, k)) : 0;
    lines.runningFuel += stage * fuel;
    if (runs) {
      lines.engineLoss += stage * (fuel - realAt(decisions.speed, k) * realAt(decisions.torque, k));
    }
    lines.sunMachine += stage * quasi.sunLoss;
    lines.outputMachine += stage * quasi.outputLoss;
    lines.mesh += stage * quasi.mesh;
    lines.finalDrive += stage * quasi.finalDrive;
    lines.reduction += stage * quasi.reduction;
    lines.ohmic += stage * (open * current - power);
    lines.auxiliary += awake ? stage * p.auxiliaryPower : 0;
    lines.brake += stage * (quasi.brake + held);
    lines.wheels += stage * wheel * ring;
    lines.rotating += stage * quasi.rotating;
    lines.source += stage * open * current;
    battery[k] = power;
    x -= (current * stage) / source.charge;
    soc[k + 1] = x;
  }
  return { fuelEnergy: lines.runningFuel + lines.startFuel, starts, soc, battery, lines, beyond };
}
