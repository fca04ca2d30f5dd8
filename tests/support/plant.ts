import { burn, charge, drawCurrent, move, openBattery, release, settle } from "../../sim/drivetrain/plant.ts";
import { type Prepared, prepare } from "../../sim/drivetrain/prepared.ts";
import { PlantState } from "../../sim/drivetrain/state.ts";
import { runSettings } from "../../sim/options.ts";
import { type VehicleInput, vehicleSchema } from "../../sim/parameters/schema.ts";

/** The bare plant of a vehicle, without any control: torques are set by the caller and held. */
export class BarePlant {
  readonly p: Prepared;
  readonly s = new PlantState();
  time = 0;

  /** @param input what differs from the demo compact */
  constructor(input: VehicleInput, step = 0.01, airDensity = 1.2) {
    const vehicle = vehicleSchema.parse(input);
    this.p = prepare(vehicle, runSettings({ step, airDensity }, { startSoc: 0.6, auxiliaryPower: 0 }));
    this.s.soc = 0.6;
    this.s.currentOut = 1e6;
    this.s.currentIn = 1e6;
    this.s.rollingForce = this.p.rolling;
  }

  /** Road speed, m/s. */
  get speed(): number {
    return this.s.ringSpeed * this.p.metresPerRing;
  }

  /** Steps until a time, s; `before` may set torques at the start of each step. */
  runTo(time: number, before: (s: PlantState) => void = () => {}): void {
    const { p, s } = this;
    const steps = Math.round((time - this.time) / p.h);
    for (let i = 0; i < steps; i += 1) {
      before(s);
      release(p, s);
      s.ringBound = (s.brakeForce + s.rollingForce) * p.metresPerRing;
      move(p, s);
      openBattery(p, s);
      drawCurrent(p, s);
      burn(p, s);
      charge(p, s);
      settle(p, s);
    }
    this.time += steps * p.h;
  }
}
