import type { Prepared } from "../../drivetrain/prepared.ts";
import type { Strategy, StrategyAnswer, StrategyDefinition, StrategyInput } from "../strategy.ts";

/** Engine at one power between two states of charge; more only when the battery cannot give the rest. */
class ThermostatStrategy implements Strategy {
  private on = false;
  constructor(private readonly p: Prepared) {}

  decide(now: StrategyInput, answer: StrategyAnswer): void {
    const { thermostatPower, thermostatBand } = this.p.control;
    if (now.soc <= this.p.socTarget - thermostatBand) this.on = true;
    else if (now.soc >= this.p.socTarget + thermostatBand) this.on = false;
    const short = now.demand > now.batteryOut;
    answer.engineOn = this.on || short;
    if (answer.engineOn)
      answer.enginePower = Math.min(
        this.p.enginePower,
        Math.max(thermostatPower, now.demand - 0.9 * now.batteryOut),
      );
  }
}

/** Two states of charge, one power. */
export const thermostat: StrategyDefinition = {
  id: "thermostat",
  title: "Thermostat",
  about:
    "Runs the engine at one power until the charge is high enough, then rests it until the charge is low.",
  regeneration: true,
  create: (p) => new ThermostatStrategy(p),
};
