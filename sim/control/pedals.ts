import type { Prepared } from "../drivetrain/prepared.ts";
import { GRAVITY } from "../drivetrain/road.ts";
import type { PlantState } from "../drivetrain/state.ts";
import { HOLD_DECELERATION, STANDSTILL_SPEED } from "../settings.ts";
import { askForce, type Driver, setGrade } from "./driver.ts";
import type { ControlState } from "./state.ts";

/** Where the selector stands. */
export type Gear = "park" | "reverse" | "neutral" | "forward";

/** Deceleration with both pedals up, as a share of gravity, and the speed up to which it fades in, m/s. */
const LIFT_SHARE = 0.04;
const LIFT_SPEED = 4;
/** Share of the forward force used backward, and the speed beyond which none is given, m/s. */
const REVERSE_SHARE = 0.5;
const REVERSE_TOP = 9;

/** Greatest force, N, that engine and battery together could bring to the wheels at a speed, m/s. */
export function greatestForce(p: Prepared, s: PlantState, speed: number, electricOnly: boolean): number {
  const v = Math.abs(speed);
  const battery = s.currentOut * (s.sourceVoltage > 0 ? s.sourceVoltage : p.packLeast);
  const power = battery + (electricOnly ? 0 : p.enginePower);
  const engineShare = electricOnly ? 0 : (p.k / p.k1) * p.fullLoadMost;
  const torque = p.reduction * p.outPeakTorque + engineShare;
  return Math.min(p.gripDriven * s.gradeCosine, torque / p.metresPerRing, power / Math.max(v, 0.1));
}

/** Pedals and selector given from outside: driving by hand, full throttle. */
export class PedalDriver implements Driver {
  /** 0–1 each */
  accelerator = 0;
  brake = 0;
  gear: Gear = "forward";
  /** rise over run */
  grade = 0;
  /** 1 keeps the engine off as far as the supervisor allows */
  electricOnly = 0;
  /** target speed shown in the log: the speed driven */
  private driven = 0;

  look(_time: number, c: ControlState): void {
    c.target = this.driven;
    c.grade = this.grade;
  }

  decide(_time: number, p: Prepared, s: PlantState, c: ControlState): void {
    setGrade(p, s, this.grade);
    const speed = s.ringSpeed * p.metresPerRing;
    this.driven = speed;
    c.electricOnly = this.electricOnly;
    c.holdForce = 0;
    c.direction = this.gear === "reverse" ? -1 : 1;
    const standing = Math.abs(speed) < STANDSTILL_SPEED;
    const pressed = this.brake > 0 || this.gear === "park";
    if (standing && pressed) {
      const share = this.gear === "park" ? 1 : this.brake;
      c.wheelForceAsk = 0;
      c.braking = 0;
      c.holdForce = Math.min(
        p.brakeMost,
        Math.max(share * p.mass * GRAVITY, p.mass * HOLD_DECELERATION * share),
      );
      return;
    }
    askForce(p, c, s, this.force(p, s, speed));
  }

  /** Force asked, N: the brake pedal wins over the accelerator. */
  private force(p: Prepared, s: PlantState, speed: number): number {
    const way = speed >= 0 ? 1 : -1;
    if (this.brake > 0) return -way * Math.min(1, this.brake) * p.gripAll * s.gradeCosine;
    if (this.gear === "neutral" || this.gear === "park") return 0;
    const sign = this.gear === "reverse" ? -1 : 1;
    const pressed = Math.min(1, Math.max(0, this.accelerator));
    if (pressed === 0) return -way * LIFT_SHARE * p.weight * Math.min(1, Math.abs(speed) / LIFT_SPEED);
    const most = greatestForce(p, s, speed, this.electricOnly === 1);
    if (sign < 0 && speed < -REVERSE_TOP) return 0;
    return sign * pressed * most * (sign < 0 ? REVERSE_SHARE : 1);
  }
}
