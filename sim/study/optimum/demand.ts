import { realAt } from "../../../shared/at.ts";
import type { CycleTrace } from "../../../shared/cycle.ts";
import { InputError } from "../../../shared/errors.ts";
import type { Prepared } from "../../drivetrain/prepared.ts";
import { gradeSine } from "../../drivetrain/road.ts";
import { LEDGER_LINES, type LedgerId } from "../../run/ledger.ts";
import type { LogReader } from "../../run/log.ts";

/**
 * What the wheels ask for, stage by stage, whoever makes it: means over equal stages. The vehicle's own inertia and the
 * road load are in the torque; the drivetrain's is not.
 */
export interface Demand {
  /** length of a stage, s */
  readonly stage: number;
  readonly stages: number;
  /** rad/s, mean of the stage */
  readonly ringSpeed: Float64Array;
  /** rad/s² */
  readonly ringAcceleration: Float64Array;
  /** N·m at the ring, behind the final drive: wheel work of the stage over the ring's turning */
  readonly wheelTorque: Float64Array;
  /** share of the braking that the driven axle may carry, 0–1 */
  readonly brakingShare: Float64Array;
  /** 0 where the vehicle is switched off, else 1 */
  readonly awake: Float64Array;
  /** m travelled, without sign */
  readonly distance: number;
  /** wheel work in traction and in braking, J, both ≥ 0 */
  readonly traction: number;
  readonly braking: number;
}

/** Mean speed below which a stage counts as standing, m/s. */
const STANDING = 0.02;

/** Most stages that are taken on. */
const MOST_STAGES = 200_000;

/** Number of stages nearest to a length that divide a duration. */
function stagesOf(duration: number, stage: number): number {
  const count = Math.max(1, Math.round(duration / stage));
  if (stage > 0 && count <= MOST_STAGES) return count;
  throw new InputError({
    what: "out of range",
    where: "optimum stage",
    value: String(stage),
    accepted: `a length in s that gives at most ${MOST_STAGES} stages`,
  });
}

/** Gathers stages: distance, speeds at the ends, road work, and whether awake. */
class Gatherer {
  readonly ringSpeed: Float64Array;
  readonly ringAcceleration: Float64Array;
  readonly wheelTorque: Float64Array;
  readonly brakingShare: Float64Array;
  readonly awake: Float64Array;
  private distance = 0;
  private traction = 0;
  private braking = 0;
  private done = 0;

  constructor(
    private readonly p: Prepared,
    private readonly stage: number,
    private readonly stages: number,
  ) {
    this.ringSpeed = new Float64Array(stages);
    this.ringAcceleration = new Float64Array(stages);
    this.wheelTorque = new Float64Array(stages);
    this.brakingShare = new Float64Array(stages);
    this.awake = new Float64Array(stages).fill(1);
  }

  /** @param way m, signed @param from and @param to m/s at the ends @param work of the road, J */
  add(way: number, from: number, to: number, work: number, travelled: number): void {
    const { p, stage, done } = this;
    const toRing = 1 / p.metresPerRing;
    this.done += 1;
    this.distance += travelled;
    const mean = way / stage;
    if (Math.abs(mean) < STANDING) return;
    const kinetic = 0.5 * p.wheelSideInertia * toRing * toRing * (to * to - from * from);
    const energy = work + kinetic;
    const ring = mean * toRing;
    const torque = energy / (ring * stage);
    this.ringSpeed[done] = ring;
    this.ringAcceleration[done] = ((to - from) * toRing) / stage;
    this.wheelTorque[done] = torque;
    this.brakingShare[done] = axleShare(p, Math.abs(mean), Math.abs(torque) * toRing);
    if (energy > 0) this.traction += energy;
    else this.braking -= energy;
  }

  sleep(): void {
    this.awake[this.done - 1] = 0;
  }

  finish(): Demand {
    const { stage, stages, ringSpeed, ringAcceleration, wheelTorque, brakingShare, awake } = this;
    const { distance, traction, braking } = this;
    return {
      stage,
      stages,
      ringSpeed,
      ringAcceleration,
      wheelTorque,
      brakingShare,
      awake,
      distance,
      traction,
      braking,
    };
  }
}

/** Share of a braking force (N) that the driven axle may carry at a speed: fades out at low speed; within its grip. */
function axleShare(p: Prepared, speed: number, force: number): number {
  const fade = Math.min(1, Math.max(0, (speed - p.fadeEnd) * p.fadePerSpeed));
  const share = p.axleBrakingShare * fade;
  return share * force > p.gripDriven ? p.gripDriven / force : share;
}

/** Road power at a speed and grade, W: rolling, air and climb (sim/drivetrain/road.ts). */
function roadPower(p: Prepared, speed: number, grade: number): number {
  const sine = gradeSine(grade);
  const air = speed + p.headWind;
  const rolling = p.rolling * Math.sqrt(1 - sine * sine) * (speed > 0 ? 1 : speed < 0 ? -1 : 0);
  return (rolling + (p.dragB + p.dragC * Math.abs(air)) * air + p.weight * sine) * speed;
}

/**
 * The demand of a cycle followed exactly.
 * @param stage wished length of a stage, s; the nearest length that divides the cycle is taken
 */
export function cycleDemand(p: Prepared, cycle: CycleTrace, stage = 1): Demand {
  const { time, speed, grade, soaks } = cycle;
  const duration = realAt(time, time.length - 1);
  const stages = stagesOf(duration, stage);
  const length = duration / stages;
  const gatherer = new Gatherer(p, length, stages);
  let i = 0;
  const between = (list: Float64Array, t: number): number => {
    const from = realAt(time, i);
    const share = (t - from) / (realAt(time, i + 1) - from);
    return realAt(list, i) + (realAt(list, i + 1) - realAt(list, i)) * share;
  };
  for (let k = 0; k < stages; k += 1) {
    const end = k === stages - 1 ? duration : (k + 1) * length;
    let t = k * length;
    let [way, travelled, work] = [0, 0, 0];
    const first = between(speed, t);
    let v0 = first;
    let g0 = between(grade, t);
    for (;;) {
      const until = Math.min(end, realAt(time, i + 1));
      const v1 = between(speed, until);
      const g1 = between(grade, until);
      const h = until - t;
      // Simpson's rule is exact for the cube of a speed that is linear in time.
      const middle = roadPower(p, 0.5 * (v0 + v1), 0.5 * (g0 + g1));
      work += (h / 6) * (roadPower(p, v0, g0) + 4 * middle + roadPower(p, v1, g1));
      way += 0.5 * h * (v0 + v1);
      travelled += 0.5 * h * Math.abs(v0 + v1);
      t = until;
      v0 = v1;
      g0 = g1;
      if (until >= end) break;
      i += 1;
    }
    gatherer.add(way, first, v0, work, travelled);
    const middle = (k + 0.5) * length;
    if (soaks.some((soak) => middle >= soak.start && middle < soak.end)) gatherer.sleep();
    while (i < time.length - 2 && realAt(time, i + 1) <= end) i += 1;
  }
  return gatherer.finish();
}

const line = (id: LedgerId): number => LEDGER_LINES.findIndex((entry) => entry.id === id);

/**
 * The demand that a run actually drove: road work from its ledger, speeds and way from its log.
 * @param stage wished length of a stage, s
 */
export function drivenDemand(p: Prepared, log: LogReader, stage = 1): Demand {
  const time = log.view("time");
  const speed = log.view("speed");
  const way = log.view("distance");
  const auxiliary = log.view("auxiliary");
  const roads = (["rolling", "air", "potential_change"] as const).map((id) => log.ledgerLine(line(id)));
  const duration = realAt(time, log.rows - 1);
  const stages = stagesOf(duration, stage);
  const length = duration / stages;
  const gatherer = new Gatherer(p, length, stages);
  let row = 1;
  let share = 0;
  const here = (list: Float64Array): number =>
    realAt(list, row - 1) + (realAt(list, row) - realAt(list, row - 1)) * share;
  const look = () => ({
    way: here(way),
    speed: here(speed),
    work: roads.reduce((sum, r) => sum + here(r), 0),
  });
  let before = look();
  for (let k = 0; k < stages; k += 1) {
    const end = Math.min(duration, (k + 1) * length);
    while (row < log.rows - 1 && realAt(time, row) < end - 1e-6) row += 1;
    share = (end - realAt(time, row - 1)) / (realAt(time, row) - realAt(time, row - 1));
    const after = look();
    const gone = after.way - before.way;
    gatherer.add(gone, before.speed, after.speed, after.work - before.work, Math.abs(gone));
    if (p.auxiliaryPower > 0 && realAt(auxiliary, row) === 0) gatherer.sleep();
    before = after;
  }
  return gatherer.finish();
}
