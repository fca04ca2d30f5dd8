import { realAt } from "../../../shared/at.ts";
import type { Prepared } from "../../drivetrain/prepared.ts";
import { QuasiStatic } from "../../drivetrain/quasi-static.ts";
import type { StrategyAnswer, StrategyInput } from "../strategy.ts";
import { type EnginePoints, enginePoints } from "./equivalent-points.ts";

/** Least speed at which a wheel power is turned into a force, m/s. */
const LEAST_SPEED = 0.5;

/**
 * The choice of least equivalent consumption at one instant: the engine point with the least fuel power + s · power
 * taken out of the battery's charge, all machine, gear and battery losses counted, limits kept; and what resting would
 * cost. (Pontryagin's Hamiltonian with s as its co-state; Serrao, Onori and Rizzoni, J. Dyn. Syst. Meas. Control 133(3),
 * 2011, from memory.) Results stand in its fields; nothing is allocated.
 */
export class EquivalentChoice {
  /** cost of resting and of the best running point, W of fuel; the latter infinite when no point is possible */
  rest = 0;
  run = 0;
  /** true when the battery and the output machine can drive alone */
  able = true;
  private point = -1;
  private readonly points: EnginePoints;
  private readonly quasi: QuasiStatic;

  constructor(private readonly p: Prepared) {
    this.points = enginePoints(p);
    this.quasi = new QuasiStatic(p);
  }

  /** Sets the wheels' side of the point. */
  private road(now: StrategyInput): void {
    const p = this.p;
    const way = Math.abs(now.speed);
    const wheel = (now.wheelPower / Math.max(LEAST_SPEED, way)) * (now.speed < 0 ? -1 : 1) * p.metresPerRing;
    const fade = Math.min(1, Math.max(0, (way - p.fadeEnd) * p.fadePerSpeed));
    this.quasi.road(now.speed / p.metresPerRing, 0, wheel, p.axleBrakingShare * fade, p.auxiliaryPower);
  }

  /** @param factor s, fuel for battery energy */
  consider(now: StrategyInput, factor: number): void {
    const { p, quasi, points } = this;
    this.road(now);
    const place = Math.min(p.socSteps - 1, Math.max(0, Math.floor(now.soc * p.socSteps)));
    const open = realAt(p.openCircuit, place);
    const perOpen = p.resistanceDischarge / (open * open);
    quasi.rest();
    this.able = quasi.feasible && quasi.battery <= now.batteryOut;
    // What the battery cannot take goes into the friction brakes.
    const resting = Math.max(quasi.battery, -now.batteryIn);
    this.rest = factor * (resting + perOpen * resting * resting);
    let best = Number.POSITIVE_INFINITY;
    let chosen = -1;
    for (let i = 0; i < points.count; i += 1) {
      quasi.engine(realAt(points.speed, i), realAt(points.torque, i));
      const power = quasi.battery;
      if (!quasi.feasible || power > now.batteryOut || power < -now.batteryIn) continue;
      const cost = realAt(points.fuel, i) + factor * (power + perOpen * power * power);
      if (cost < best) {
        best = cost;
        chosen = i;
      }
    }
    this.run = best;
    this.point = chosen;
  }

  /** Answers with the best running point; the demand itself where no point is possible. */
  answerRunning(now: StrategyInput, answer: StrategyAnswer): void {
    const { points, point } = this;
    answer.engineOn = true;
    answer.enginePower = point >= 0 ? realAt(points.power, point) : Math.min(this.p.enginePower, now.demand);
    answer.engineSpeed = point >= 0 ? realAt(points.speed, point) : 0;
  }
}
