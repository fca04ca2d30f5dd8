import { realAt } from "../../../shared/at.ts";
import { EquivalentChoice } from "../../control/strategies/equivalent-choice.ts";
import {
  type Strategy,
  type StrategyAnswer,
  type StrategyDefinition,
  StrategyInput,
} from "../../control/strategy.ts";
import type { Prepared } from "../../drivetrain/prepared.ts";
import type { Optimum } from "./optimum.ts";
import { Policy } from "./path.ts";

/** How long before its stage a start is begun, s: cranking takes some 0.3 s, half of the rise of power as much again. */
const LEAD = 0.6;

/**
 * How far ahead the engine looks at the cycle, s: it is steered by the mean of the demand there and the demand now, so
 * that its power, which rises at a limited rate, comes when it is needed and not when the battery is at its limit.
 */
const AHEAD = 1;

/** Prices of battery energy that are believed; the values' slope at the edge of the last stages is none. */
const LEAST_FACTOR = 1.5;
const MOST_FACTOR = 4;

/**
 * The optimum's policy in the forward model: whether the engine runs is decided once a stage, from the values at the
 * charge that the battery really has; at which point, ten times a second, by the values' slope (their co-state) as the
 * price of battery energy. What the forward engine needs time for is begun before: starts, and the rise of its power.
 */
class ReplayStrategy implements Strategy {
  private readonly choice: EquivalentChoice;
  private readonly policy: Policy;
  private readonly between = new StrategyInput();
  private stage = -1;
  private on = false;
  /** what the stage last decided wants: a start at once, a stop when the stage begins, s */
  private wanted = false;
  private stopAt = Number.POSITIVE_INFINITY;
  private factor = 2.6;
  constructor(
    private readonly p: Prepared,
    private readonly optimum: Optimum,
  ) {
    this.choice = new EquivalentChoice(p, false);
    this.policy = new Policy(optimum.values);
  }

  decide(now: StrategyInput, answer: StrategyAnswer): void {
    const { choice, between, optimum } = this;
    const { stage, stages } = optimum.demand;
    const k = Math.min(stages - 1, Math.floor((now.time + LEAD) / stage));
    if (k !== this.stage) {
      this.stage = k;
      // An engine that still turns after its time does so because it must.
      this.decideStage(k, now.soc, this.wanted || (now.engineOn === 1 && now.time >= this.stopAt));
    }
    this.switchEngine(now);
    this.lookAhead(now);
    choice.consider(between, this.factor);
    choice.answerRunning(between, answer);
    // The point is answered also where the engine is not wanted: it may have to run its least time.
    answer.engineOn = this.on || !choice.able;
  }

  private switchEngine(now: StrategyInput): void {
    const { stage, stages } = this.optimum.demand;
    const left = stage * stages - now.time;
    const running = this.on || now.engineOn === 1;
    // A start that could not last its least time is not made: the charge is left a little short instead.
    if (this.wanted && (running || left > this.p.control.minOnTime)) this.on = true;
    if (now.time >= this.stopAt) this.on = false;
  }

  /** Fills in the demand half way between now and what the cycle asks a little later. */
  private lookAhead(now: StrategyInput): void {
    const { between, p } = this;
    const { demand, actions } = this.optimum;
    const place = Math.min(demand.stages - 1, Math.max(0, (now.time + AHEAD) / demand.stage - 0.5));
    const i = Math.max(0, Math.min(demand.stages - 2, Math.floor(place)));
    const mean = (list: Float64Array): number => {
      const from = realAt(list, i);
      return demand.stages > 1 ? from + (realAt(list, i + 1) - from) * (place - i) : from;
    };
    const ring = mean(demand.ringSpeed);
    const power = mean(actions.wheelTorque) * ring;
    between.speed = 0.5 * (now.speed + ring * p.metresPerRing);
    between.wheelPower = 0.5 * (now.wheelPower + power);
    between.demand = now.demand + Math.max(0, 0.5 * (power - now.wheelPower));
    between.soc = now.soc;
    between.batteryOut = now.batteryOut;
    between.batteryIn = now.batteryIn;
  }

  private decideStage(k: number, soc: number, running: boolean): void {
    const { policy } = this;
    policy.decide(k, soc, running);
    // Off the values' grid: below its edge only the engine helps.
    this.wanted = Number.isFinite(policy.best) ? policy.point >= 0 : soc < this.optimum.startSoc;
    if (this.wanted) this.stopAt = Number.POSITIVE_INFINITY;
    else this.stopAt = Math.min(this.stopAt, k * this.optimum.demand.stage);
    const factor = policy.factor(k + 1, soc, this.wanted);
    if (factor >= LEAST_FACTOR && factor <= MOST_FACTOR) this.factor = factor;
  }
}

/**
 * A strategy that follows an optimum in the forward model. It knows the cycle, so that it is no strategy for the road.
 * @param optimum of the vehicle and cycle that it will drive
 */
export const replayOf = (optimum: Optimum): StrategyDefinition => ({
  id: "optimum",
  title: "Optimum, replayed",
  about:
    "Follows the least fuel found by dynamic programming, which knows the whole cycle beforehand: a bound.",
  regeneration: true,
  create: (p) => new ReplayStrategy(p, optimum),
});
