import { EquivalentChoice } from "../../control/strategies/equivalent-choice.ts";
import type { Strategy, StrategyAnswer, StrategyDefinition, StrategyInput } from "../../control/strategy.ts";
import type { Prepared } from "../../drivetrain/prepared.ts";
import type { Optimum } from "./optimum.ts";
import { Policy } from "./path.ts";

/** How long before its stage the engine is started, s: cranking and the rise of its torque take about as long. */
const LEAD = 0.4;

/** Prices of battery energy that are believed, where the values' slope at an edge is none. */
const LEAST_FACTOR = 1.5;
const MOST_FACTOR = 4;

/**
 * The optimum's policy in the forward model: whether the engine runs is decided once a stage, from the values at the
 * charge that the battery really has; at which point, ten times a second, by the values' slope (their co-state) as the
 * price of battery energy.
 */
class ReplayStrategy implements Strategy {
  private readonly choice: EquivalentChoice;
  private readonly policy: Policy;
  private stage = -1;
  private on = false;
  private factor = 2.6;
  constructor(
    p: Prepared,
    private readonly optimum: Optimum,
  ) {
    this.choice = new EquivalentChoice(p);
    this.policy = new Policy(optimum.values);
  }

  decide(now: StrategyInput, answer: StrategyAnswer): void {
    const { choice, optimum } = this;
    const { stage, stages } = optimum.demand;
    const k = Math.min(stages - 1, Math.floor((now.time + LEAD) / stage));
    if (k !== this.stage) {
      this.stage = k;
      this.decideStage(k, now.soc);
    }
    choice.consider(now, this.factor);
    if (this.on || !choice.able) choice.answerRunning(now, answer);
  }

  private decideStage(k: number, soc: number): void {
    const { policy } = this;
    policy.decide(k, soc, this.on);
    // Off the values' grid: below its edge only the engine helps.
    this.on = Number.isFinite(policy.best) ? policy.point >= 0 : soc < this.optimum.startSoc;
    const factor = policy.factor(k + 1, soc, this.on);
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
