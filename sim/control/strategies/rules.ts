import type { Prepared } from "../../drivetrain/prepared.ts";
import type { Strategy, StrategyAnswer, StrategyDefinition, StrategyInput } from "../strategy.ts";

/** Charge regained, as a share, before an engine started for low charge may stop. */
const CHARGE_HYSTERESIS = 0.02;

/**
 * Start on power or on low charge; stop below a lower power; make the demand plus a correction for the charge.
 * @param keepOn never stop the engine (the baseline "engine always on")
 */
export class RulesStrategy implements Strategy {
  private charging = false;
  private on = false;
  private lastNeeded = -1e6;
  constructor(
    private readonly p: Prepared,
    private readonly keepOn: boolean,
  ) {}

  decide(now: StrategyInput, answer: StrategyAnswer): void {
    const r = this.p.control;
    const lack = this.p.socTarget - now.soc;
    if (lack > r.socLow) this.charging = true;
    if (lack < r.socLow - CHARGE_HYSTERESIS) this.charging = false;
    if (now.demand > (this.on ? r.stopPower : r.startPower)) this.lastNeeded = now.time;
    // A short lift of the foot does not stop the engine; firm braking does.
    const patience = now.wheelPower < -r.startPower ? 0 : r.stopDelay;
    const needed = this.lastNeeded === now.time || (this.on && now.time - this.lastNeeded < patience);
    const cold = now.coolant < this.p.thermal.noStopBelow;
    this.on = this.keepOn || this.charging || needed || cold;
    answer.engineOn = this.on;
    if (!this.on) return;
    const correction = Math.min(r.socGain * r.socHigh, Math.max(-r.socGain * r.socHigh, lack * r.socGain));
    const most = Math.min(this.p.enginePower, lack < -r.socHigh ? now.demand : Number.POSITIVE_INFINITY);
    const least = now.wheelPower > 0 ? r.leastEnginePower : 0;
    answer.enginePower = Math.min(most, Math.max(least, now.demand + correction));
  }
}

/** The default. */
export const rules: StrategyDefinition = {
  id: "rules",
  title: "Rules",
  about:
    "Starts the engine on power asked or on low charge, and lets it make the demand plus a charge correction.",
  regeneration: true,
  create: (p) => new RulesStrategy(p, false),
};

/** Baseline for teaching: what braking energy is worth. */
export const noRegeneration: StrategyDefinition = {
  id: "no-regeneration",
  title: "Rules, no regeneration",
  about: "The rules, but the friction brakes do all the braking: a baseline.",
  regeneration: false,
  create: (p) => new RulesStrategy(p, false),
};

/** Baseline for teaching: what stopping the engine is worth. */
export const engineAlwaysOn: StrategyDefinition = {
  id: "engine-always-on",
  title: "Engine always on",
  about: "The rules, but the engine is never stopped: a baseline.",
  regeneration: true,
  create: (p) => new RulesStrategy(p, true),
};
