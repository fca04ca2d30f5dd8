import { realAt } from "../../../shared/at.ts";
import type { Prepared } from "../../drivetrain/prepared.ts";
import { QuasiStatic } from "../../drivetrain/quasi-static.ts";
import { CONTROL_PERIOD } from "../../settings.ts";
import type { StrategyAnswer, StrategyInput } from "../strategy.ts";
import { type EnginePoints, enginePoints } from "./equivalent-points.ts";

/**
 * What other points must have saved, J of fuel, before the one held is left: two of equal cost are not to take turns.
 * Half a second of a hundred watts: what is worth a change is soon taken.
 */
const LEAST_SAVING = 50;

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
  /** the point that the engine runs at, −1 while it rests */
  private held = -1;
  /** fuel, J, that other points would have saved since the one held was last the best */
  private saved = 0;
  private readonly points: EnginePoints;
  private readonly quasi: QuasiStatic;

  /**
   * @param steady keeps a point until others would have saved something. Needed where the price follows the charge:
   * each of two points moves the price so that the other one is the better. With one price a point follows from the
   * demand alone, and what the battery gives must follow from the price without steps.
   */
  constructor(
    private readonly p: Prepared,
    private readonly steady: boolean,
  ) {
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
    let holding = Number.POSITIVE_INFINITY;
    for (let i = 0; i < points.count; i += 1) {
      quasi.engine(realAt(points.speed, i), realAt(points.torque, i));
      const power = quasi.battery;
      if (!quasi.feasible || power > now.batteryOut || power < -now.batteryIn) continue;
      const cost = realAt(points.fuel, i) + factor * (power + perOpen * power * power);
      if (i === this.held) holding = cost;
      if (cost < best) {
        best = cost;
        chosen = i;
      }
    }
    this.run = best;
    this.point = this.stays(holding - best, chosen) ? this.held : chosen;
  }

  /** Whether the point held is kept: until others would have saved enough. @param saving W of fuel, infinite where it is not possible */
  private stays(saving: number, other: number): boolean {
    const { held } = this;
    this.saved = other === held ? 0 : this.saved + saving * CONTROL_PERIOD;
    return this.steady && held >= 0 && this.saved < LEAST_SAVING;
  }

  /** To be told when the engine rests: the next point is chosen afresh. */
  rested(): void {
    this.held = -1;
    this.saved = 0;
  }

  /** Answers with the best running point; the demand itself where no point is possible. */
  answerRunning(now: StrategyInput, answer: StrategyAnswer): void {
    const { points, point } = this;
    if (point !== this.held) this.saved = 0;
    this.held = point;
    answer.engineOn = true;
    answer.enginePower = point >= 0 ? realAt(points.power, point) : Math.min(this.p.enginePower, now.demand);
    answer.engineSpeed = point >= 0 ? realAt(points.speed, point) : 0;
  }
}
