import { realAt } from "../../../shared/at.ts";
import { fuelPower, fullLoadTorque } from "../../drivetrain/engine.ts";
import type { Prepared } from "../../drivetrain/prepared.ts";
import { lookUp } from "../../drivetrain/table.ts";
import { SUN_CONTROL_SHARE, SUN_SPEED_SHARE } from "../../settings.ts";
import type { Strategy, StrategyAnswer, StrategyDefinition, StrategyInput } from "../strategy.ts";

/** Engine powers looked at, from the least to the greatest, and speeds for each as multiples of the best line's. */
const POWERS = 28;
const SPEEDS = [1, 0.88, 1.12, 1.3];

/** Time over which a start must pay for itself, s: with the start fuel it gives the power to be gained. */
const START_HORIZON = 6;

/** The sun machine turns the engine up to firing speed: energy of that, as fuel, J. */
const CRANK_ENERGY = 4000;

/** Least speed at which a wheel power is turned into a force, m/s. */
const LEAST_SPEED = 0.5;

/** Engine points that a decision chooses from, in flat arrays. */
interface Points {
  readonly count: number;
  readonly power: Float64Array;
  readonly speed: Float64Array;
  readonly torque: Float64Array;
  readonly fuel: Float64Array;
}

/** Points on the best line and at speeds beside it, which cost more fuel but load the machines otherwise. */
function enginePoints(p: Prepared): Points {
  const list: { power: number; speed: number; fuel: number }[] = [];
  for (let i = 1; i <= POWERS; i += 1) {
    const power = (p.enginePower * i) / POWERS;
    for (const factor of SPEEDS) {
      const speed = Math.min(p.engineTop * 0.98, Math.max(p.idleSpeed, lookUp(p.line, power) * factor));
      if (power / speed > 0.99 * fullLoadTorque(p.engine, speed)) continue;
      list.push({ power, speed, fuel: fuelPower(p.engine, p.map, speed, power / speed) });
    }
  }
  return {
    count: list.length,
    power: Float64Array.from(list, (point) => point.power),
    speed: Float64Array.from(list, (point) => point.speed),
    torque: Float64Array.from(list, (point) => point.power / point.speed),
    fuel: Float64Array.from(list, (point) => point.fuel),
  };
}

/**
 * Least equivalent consumption: at each decision the engine point, or none, with the least fuel power + s · power taken
 * out of the battery's charge, all machine and battery losses counted, limits kept. (Pontryagin's Hamiltonian with the
 * co-state adapted on charge; Serrao, Onori and Rizzoni 2011, from memory.)
 */
class EquivalentStrategy implements Strategy {
  private readonly points: Points;
  private readonly startPower: number;
  private on = false;
  /** scratch of `battery`: power at the terminals, W, and whether any limit of the machines is passed */
  private terminal = 0;
  private feasible = true;

  constructor(private readonly p: Prepared) {
    this.points = enginePoints(p);
    this.startPower = (p.startFuel + CRANK_ENERGY) / START_HORIZON;
  }

  /** Battery power for an engine point at a ring speed and torque wanted there: both machines with their losses. */
  private electric(engineSpeed: number, engineTorque: number, ring: number, wanted: number): void {
    const p = this.p;
    const sun = p.k1 * engineSpeed - p.k * ring;
    const sunTorque = -engineTorque * p.perK1;
    const output = (wanted - p.k * p.perK1 * engineTorque) / p.reduction;
    const w = Math.abs(sun);
    const t = Math.abs(sunTorque);
    const x = p.reduction * Math.abs(ring);
    const u = Math.abs(output);
    this.feasible =
      w <= SUN_SPEED_SHARE * p.sunTop &&
      t <= SUN_CONTROL_SHARE * p.sunPeakTorque &&
      t * w <= p.sunPeakPower &&
      u <= p.outPeakTorque &&
      u * x <= p.outPeakPower;
    this.terminal =
      sunTorque * sun +
      (p.sun0 + p.sun1 * t * t + (p.sun2 + p.sun3 * w * w + p.sun4 * t) * w) +
      output * p.reduction * ring +
      (p.out0 + p.out1 * u * u + (p.out2 + p.out3 * x * x + p.out4 * u) * x) +
      p.auxiliaryPower;
  }

  decide(now: StrategyInput, answer: StrategyAnswer): void {
    const p = this.p;
    const ring = now.speed / p.metresPerRing;
    const force = now.wheelPower / Math.max(LEAST_SPEED, Math.abs(now.speed));
    const driving = now.wheelPower > 0;
    const wanted = (driving ? force / (1 - p.driveLoss) : force * p.axleBrakingShare) * p.metresPerRing;
    const place = Math.min(p.socSteps - 1, Math.max(0, Math.floor(now.soc * p.socSteps)));
    const open = realAt(p.openCircuit, place);
    const perOpen = p.resistanceDischarge / (open * open);
    const factor = p.control.equivalenceFactor + p.control.equivalenceGain * (p.socTarget - now.soc);
    this.electric(0, 0, ring, wanted);
    const able = this.feasible && this.terminal <= now.batteryOut;
    const rest = factor * (this.terminal + perOpen * this.terminal * this.terminal);
    let best = Number.POSITIVE_INFINITY;
    let chosen = -1;
    for (let i = 0; i < this.points.count; i += 1) {
      this.electric(realAt(this.points.speed, i), realAt(this.points.torque, i), ring, wanted);
      const power = this.terminal;
      if (!this.feasible || power > now.batteryOut || power < -now.batteryIn) continue;
      const cost = realAt(this.points.fuel, i) + factor * (power + perOpen * power * power);
      if (cost < best) {
        best = cost;
        chosen = i;
      }
    }
    const gain = rest - best;
    const wants = gain > (this.on ? -this.startPower : this.startPower);
    this.on = !able || (chosen >= 0 && wants);
    if (!this.on) return;
    answer.engineOn = true;
    answer.enginePower =
      chosen >= 0 ? realAt(this.points.power, chosen) : Math.min(p.enginePower, now.demand);
    answer.engineSpeed = chosen >= 0 ? realAt(this.points.speed, chosen) : 0;
  }
}

/** The price of battery energy rises as the charge falls, so that the charge is kept. */
export const equivalentAdapted: StrategyDefinition = {
  id: "equivalent-adapted",
  title: "Equivalent consumption, adapted",
  about:
    "Chooses the engine point with the least fuel plus priced battery energy; the price rises as the charge falls.",
  regeneration: true,
  create: (p) => new EquivalentStrategy(p),
};
