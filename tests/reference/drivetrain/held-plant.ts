import {
  burn,
  charge,
  drawCurrent,
  move,
  openBattery,
  release,
  settle,
} from "../../../sim/drivetrain/plant.ts";
import { type Prepared, prepare } from "../../../sim/drivetrain/prepared.ts";
import { PlantState } from "../../../sim/drivetrain/state.ts";
import { type RunOptions, runSettings } from "../../../sim/options.ts";
import { type Vehicle, type VehicleInput, vehicleSchema } from "../../../sim/parameters/schema.ts";

/** The demo compact with some parameters changed, also outside what the file check would accept. */
export const compactWith = (change: (compact: Vehicle) => Partial<Vehicle>): Vehicle => {
  const compact = vehicleSchema.parse({});
  return { ...compact, ...change(compact) };
};

/** No loss in gears, final drive and reduction; no friction in the engine: closed forms hold. */
export const withoutLosses = (vehicle: Vehicle): Vehicle => ({
  ...vehicle,
  gearSet: { ...vehicle.gearSet, basicEfficiency: 1 },
  finalDrive: { ...vehicle.finalDrive, efficiency: 1 },
  outputMachine: { ...vehicle.outputMachine, reductionEfficiency: 1 },
  engine: { ...vehicle.engine, friction0: 0, friction1: 0, friction2: 0, breakaway: 0 },
});

/** Parses what differs from the demo compact. */
export const vehicleOf = (input: VehicleInput): Vehicle => vehicleSchema.parse(input);

/** The plant alone, under torques that the caller sets and that are held, without any control. */
export class HeldPlant {
  readonly p: Prepared;
  readonly s = new PlantState();
  steps = 0;
  /** m */
  distance = 0;

  constructor(vehicle: Vehicle, options: RunOptions = {}) {
    const defaults = { startSoc: vehicle.battery.socStart, auxiliaryPower: 0 };
    this.p = prepare(vehicle, runSettings(options, defaults));
    this.s.soc = this.p.socStart;
    this.s.rollingForce = this.p.rolling;
  }

  /** Road speed, m/s. */
  get speed(): number {
    return this.s.ringSpeed * this.p.metresPerRing;
  }

  /** kg, as the ring feels them at the tyres with the engine at rest */
  get effectiveMass(): number {
    return this.p.massRr / (this.p.metresPerRing * this.p.metresPerRing);
  }

  /** One step. */
  step(): void {
    const { p, s } = this;
    release(p, s);
    s.ringBound = (s.brakeForce + s.rollingForce) * p.metresPerRing;
    move(p, s);
    openBattery(p, s);
    drawCurrent(p, s);
    burn(p, s);
    charge(p, s);
    this.distance += p.h * s.ringMean * p.metresPerRing;
    settle(p, s);
    this.steps += 1;
  }

  /** Steps until a time, s; `before` may set torques at the start of each step. */
  runTo(time: number, before: (s: PlantState) => void = () => {}): void {
    const end = Math.round(time * this.p.perH);
    while (this.steps < end) {
      before(this.s);
      this.step();
    }
  }
}
