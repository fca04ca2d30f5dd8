import { realAt } from "../../shared/at.ts";
import type { CycleTrace } from "../../shared/cycle.ts";
import type { Prepared } from "../drivetrain/prepared.ts";
import { gradeSine } from "../drivetrain/road.ts";
import type { PlantState } from "../drivetrain/state.ts";
import { LIMIT_BIT } from "../limits.ts";
import {
  CONTROL_PERIOD,
  DRIVER_INTEGRAL,
  DRIVER_PATIENCE,
  DRIVER_PREVIEW,
  HOLD_DECELERATION,
  STANDSTILL_SPEED,
} from "../settings.ts";
import type { ControlState } from "./state.ts";

const TYRE_GRIP = LIMIT_BIT["tyre-grip"];

/** Reads a cycle at rising times; the place is kept and only moves forward. Results stand in its fields. */
export class TraceReader {
  /** m/s and rise over run at the time last asked for */
  speed = 0;
  grade = 0;
  private from = 0;
  private until = -1;
  private index = -1;
  private speedLow = 0;
  private speedSlope = 0;
  private gradeLow = 0;
  private gradeSlope = 0;
  /** @param trace the cycle to read */
  constructor(private readonly trace: CycleTrace) {}

  /** Moves to a time, s, not before the last one; before the first and after the last sample their values hold. */
  moveTo(time: number): void {
    if (time >= this.until) this.seek(time);
    const past = time - this.from;
    this.speed = this.speedLow + this.speedSlope * past;
    this.grade = this.gradeLow + this.gradeSlope * past;
  }

  private seek(time: number): void {
    const { time: times, speed, grade } = this.trace;
    const last = times.length - 1;
    while (this.index < last && realAt(times, this.index + 1) <= time) this.index += 1;
    const i = Math.max(0, this.index);
    this.from = realAt(times, i);
    this.speedLow = realAt(speed, i);
    this.gradeLow = realAt(grade, i);
    this.speedSlope = 0;
    this.gradeSlope = 0;
    this.until = Number.POSITIVE_INFINITY;
    if (i === last) return;
    this.until = realAt(times, i + 1);
    const width = this.until - this.from;
    this.speedSlope = (realAt(speed, i + 1) - this.speedLow) / width;
    this.gradeSlope = (realAt(grade, i + 1) - this.gradeLow) / width;
  }
}

/** Who drives: decides force and hold at the start of each control period. Results go into the control state. */
export interface Driver {
  /** Fills in grade and whether the vehicle is switched off, then force, braking and hold. @param time s */
  decide(time: number, p: Prepared, s: PlantState, c: ControlState): void;
  /** Fills in the target speed and grade that are logged at a time, s. */
  look(time: number, c: ControlState): void;
}

/** Driver's share of drag and rolling at a speed, N, with the sign of the motion. */
function resistance(p: Prepared, s: PlantState, speed: number, going: number): number {
  const air = speed + p.headWind;
  return s.rollingForce * going + (p.dragB + p.dragC * Math.abs(air)) * air + s.gradeForce;
}

/** Effective mass at the wheels with the engine at rest, kg. */
export const effectiveMass = (p: Prepared): number => p.massRr / (p.metresPerRing * p.metresPerRing);

/** Asks for a force, N, and says whether it is braking; used by every driver. */
export function askForce(p: Prepared, c: ControlState, s: PlantState, force: number): void {
  const speed = s.ringSpeed * p.metresPerRing;
  const way = speed > 1e-9 ? 1 : speed < -1e-9 ? -1 : c.direction;
  c.wheelForceAsk = force;
  c.braking = force * way < 0 ? 1 : 0;
}

/** The driver who follows a cycle: feed-forward with preview, feedback, holds at rest, drives backward. */
export class CycleDriver implements Driver {
  private readonly ahead: TraceReader;
  private readonly here: TraceReader;
  private readonly logged: TraceReader;
  /** @param trace the cycle to follow */
  constructor(private readonly trace: CycleTrace) {
    this.ahead = new TraceReader(trace);
    this.here = new TraceReader(trace);
    this.logged = new TraceReader(trace);
  }

  look(time: number, c: ControlState): void {
    this.logged.moveTo(time);
    c.target = this.logged.speed;
    c.grade = this.logged.grade;
  }

  private asleep(time: number): boolean {
    for (const soak of this.trace.soaks) if (time >= soak.start && time < soak.end) return true;
    return false;
  }

  decide(time: number, p: Prepared, s: PlantState, c: ControlState): void {
    this.here.moveTo(time);
    this.ahead.moveTo(time + DRIVER_PREVIEW);
    setGrade(p, s, this.here.grade);
    c.asleep = this.asleep(time) ? 1 : 0;
    const speed = s.ringSpeed * p.metresPerRing;
    const now = this.here.speed;
    const next = this.ahead.speed;
    if (next !== 0) c.direction = next > 0 ? 1 : -1;
    else if (now !== 0) c.direction = now > 0 ? 1 : -1;
    c.holdForce = 0;
    if (now === 0 && next === 0 && Math.abs(speed) < STANDSTILL_SPEED) {
      c.driverIntegral = 0;
      c.wheelForceAsk = 0;
      c.braking = 0;
      c.holdForce = Math.min(p.brakeMost, p.mass * HOLD_DECELERATION + Math.abs(s.gradeForce));
      return;
    }
    const error = now - speed;
    if (Math.abs(error) < DRIVER_PATIENCE) c.driverIntegral += error * CONTROL_PERIOD * DRIVER_INTEGRAL;
    const acceleration = (next - speed) / DRIVER_PREVIEW + c.driverIntegral;
    const force = effectiveMass(p) * acceleration + resistance(p, s, speed, c.direction);
    const grip = (force * c.direction > 0 ? p.gripDriven : p.gripAll) * s.gradeCosine;
    if (Math.abs(force) > grip) s.limits |= TYRE_GRIP;
    askForce(p, c, s, Math.min(grip, Math.max(-grip, force)));
  }
}

/** Sets the road under the vehicle for a period: weight along it and rolling resistance. */
export function setGrade(p: Prepared, s: PlantState, grade: number): void {
  const sine = gradeSine(grade);
  s.gradeSine = sine;
  s.gradeForce = p.weight * sine;
  s.gradeCosine = Math.sqrt(1 - sine * sine);
  s.rollingForce = p.rolling * s.gradeCosine;
}
