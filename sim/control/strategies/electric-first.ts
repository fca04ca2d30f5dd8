import type { Prepared } from "../../drivetrain/prepared.ts";
import type { Strategy, StrategyAnswer, StrategyDefinition, StrategyInput } from "../strategy.ts";
import { RulesStrategy } from "./rules.ts";

/** Charge above the target, as a share, down to which the drive is electric. */
const DEPLETED_ABOVE = 0.01;
/** Share of the battery's power used before the engine helps. */
const BATTERY_SHARE = 0.9;

/** Electric until the charge has come down to the target, then as the rules. */
class ElectricFirstStrategy implements Strategy {
  private readonly sustaining: RulesStrategy;
  private depleted = false;
  private helping = false;
  constructor(private readonly p: Prepared) {
    this.sustaining = new RulesStrategy(p, false);
  }

  decide(now: StrategyInput, answer: StrategyAnswer): void {
    if (now.soc <= this.p.socTarget + DEPLETED_ABOVE) this.depleted = true;
    if (this.depleted) {
      this.sustaining.decide(now, answer);
      return;
    }
    const most = BATTERY_SHARE * now.batteryOut;
    this.helping = now.demand > (this.helping ? 0.6 * most : most);
    answer.engineOn = this.helping;
    if (!this.helping) return;
    const wanted = Math.max(this.p.control.leastEnginePower, now.demand - 0.5 * most);
    answer.enginePower = Math.min(this.p.enginePower, wanted);
  }
}

/** For larger packs: empties the battery first. */
export const electricFirst: StrategyDefinition = {
  id: "electric-first",
  title: "Electric first",
  about: "Drives on the battery until its charge has come down to the target, then sustains it by the rules.",
  regeneration: true,
  create: (p) => new ElectricFirstStrategy(p),
};
