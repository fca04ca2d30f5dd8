import type { Prepared } from "../../drivetrain/prepared.ts";
import { startCost } from "../start-cost.ts";
import type { Strategy, StrategyAnswer, StrategyDefinition, StrategyInput } from "../strategy.ts";
import { EquivalentChoice } from "./equivalent-choice.ts";

/**
 * Time over which a start must pay for itself, s: with the cost of a start it gives the power that running must save
 * before the engine is started, and that resting must save before it is stopped. About as long as the engine usually
 * runs between two stops in town.
 */
const START_HORIZON = 6;

/** Least equivalent consumption at a price of battery energy that is fixed, or rises as the charge falls. */
class EquivalentStrategy implements Strategy {
  private readonly choice: EquivalentChoice;
  private readonly startFuel: number;
  private readonly startEnergy: number;
  private on = false;

  /** @param factor fuel for battery energy at the target charge @param gain its rise per unit of charge below */
  constructor(
    private readonly p: Prepared,
    private readonly factor: number,
    private readonly gain: number,
  ) {
    this.choice = new EquivalentChoice(p, gain > 0);
    const cost = startCost(p);
    this.startFuel = cost.fuel / START_HORIZON;
    this.startEnergy = cost.energy / START_HORIZON;
  }

  decide(now: StrategyInput, answer: StrategyAnswer): void {
    const { choice } = this;
    const factor = Math.max(0, this.factor + this.gain * (this.p.socTarget - now.soc));
    choice.consider(now, factor);
    const start = this.startFuel + factor * this.startEnergy;
    const saves = choice.rest - choice.run;
    this.on = !choice.able || saves > (this.on ? -start : start);
    if (this.on) choice.answerRunning(now, answer);
    else choice.rested();
  }
}

const fixed = (factor: number | null): StrategyDefinition => ({
  id: "equivalent",
  title: "Equivalent consumption, fixed",
  about:
    "Chooses the engine point with the least fuel plus battery energy at one price; a price that balances the charge can be found.",
  regeneration: true,
  create: (p) => new EquivalentStrategy(p, factor ?? p.control.equivalenceFactor, 0),
  withFactor: fixed,
});

/** One price of battery energy for the whole drive: the vehicle's, unless another is given with `withFactor`. */
export const equivalent: StrategyDefinition = fixed(null);

/** The price of battery energy rises as the charge falls, so that the charge is kept. */
export const equivalentAdapted: StrategyDefinition = {
  id: "equivalent-adapted",
  title: "Equivalent consumption, adapted",
  about:
    "Chooses the engine point with the least fuel plus priced battery energy; the price rises as the charge falls.",
  regeneration: true,
  create: (p) => new EquivalentStrategy(p, p.control.equivalenceFactor, p.control.equivalenceGain),
};
