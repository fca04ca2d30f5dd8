import { realAt } from "../../../shared/at.ts";
import type { Prepared } from "../../drivetrain/prepared.ts";
import { QuasiStatic } from "../../drivetrain/quasi-static.ts";
import { mostOut, openAt, sourceOf } from "./battery.ts";
import { Bins, type Candidates, engineCandidates, paretoBins } from "./candidates.ts";
import type { Demand } from "./demand.ts";

/** What may be done in each stage, in flat arrays; stages with the same demand share their points. */
export interface Actions {
  /** place of a stage's first point, and how many it has */
  readonly first: Int32Array;
  readonly count: Int32Array;
  /** of each point: battery power, W, rising within a stage; fuel power, W, falling; engine speed and torque */
  readonly power: Float64Array;
  readonly fuel: Float64Array;
  readonly speed: Float64Array;
  readonly torque: Float64Array;
  /** battery power with the engine at rest, W; not a number where it must run */
  readonly restPower: Float64Array;
  /** battery power that the friction brakes can take over in this stage, W, ≥ 0 */
  readonly shed: Float64Array;
  /** battery power beyond its limit that may be asked and not given, W: only where the vehicle is at its limit */
  readonly overdraw: Float64Array;
  /** wheel torque taken, N·m at the ring: the demand's but where the vehicle cannot do it */
  readonly wheelTorque: Float64Array;
  /** wheel power that cannot be given, W, ≥ 0, a stage */
  readonly unmet: Float64Array;
}

/** Engine speeds and torques looked at for a number of points. */
const SPEEDS = 30;
const TORQUES_PER_POINT = 0.7;

/** Fuel for battery energy used to choose among points of nearly the same battery power. */
const PRICE = 2.6;

/** Rounding room of a demand cut to the battery's limit, W. */
const LEEWAY = 1;

/** Rounds of halving when a demand is cut to what the vehicle can do. */
const HALVINGS = 30;

/** Builds the points of one vehicle stage by stage. */
class Builder {
  readonly quasi: QuasiStatic;
  readonly candidates: Candidates;
  private readonly powers: Float64Array;
  readonly bins: Bins;
  constructor(
    readonly p: Prepared,
    readonly demand: Demand,
    points: number,
    refine: number,
  ) {
    this.quasi = new QuasiStatic(p);
    this.candidates = engineCandidates(p, SPEEDS * refine, Math.ceil(TORQUES_PER_POINT * points));
    this.powers = new Float64Array(this.candidates.count);
    this.bins = new Bins(points);
  }

  setRoad(k: number, wheel: number): void {
    const { demand, p, quasi } = this;
    if (realAt(demand.awake, k) === 0) {
      quasi.asleep();
      return;
    }
    const ring = realAt(demand.ringSpeed, k);
    const share = realAt(demand.brakingShare, k);
    quasi.road(ring, realAt(demand.ringAcceleration, k), wheel, share, p.auxiliaryPower);
  }

  /** Battery power with the engine at rest, W; not a number where it must run. */
  rest(): number {
    this.quasi.rest();
    return this.quasi.feasible ? this.quasi.battery : Number.NaN;
  }

  /** Fills the bins for the road set. @returns number of points */
  pareto(): number {
    const { candidates, powers, quasi, bins } = this;
    for (let i = 0; i < candidates.count; i += 1) {
      quasi.engine(realAt(candidates.speed, i), realAt(candidates.torque, i));
      powers[i] = quasi.feasible ? quasi.battery : Number.NaN;
    }
    return paretoBins(candidates, powers, PRICE, bins);
  }

  /** Battery power of a candidate as `pareto` found it, W. */
  quasiPower(point: number): number {
    return realAt(this.powers, point);
  }

  /** Least battery power with which the road set can be driven, W; infinite when it cannot. */
  least(): number {
    const { candidates, quasi } = this;
    let least = this.rest();
    if (Number.isNaN(least)) least = Number.POSITIVE_INFINITY;
    for (let i = 0; i < candidates.count; i += 1) {
      quasi.engine(realAt(candidates.speed, i), realAt(candidates.torque, i));
      if (quasi.feasible && quasi.battery < least) least = quasi.battery;
    }
    return least;
  }

  /** Wheel torque cut, if need be, to what can be done with a battery power, W. */
  within(k: number, most: number): number {
    const asked = realAt(this.demand.wheelTorque, k);
    this.setRoad(k, asked);
    if (this.least() <= most) return asked;
    let low = 0;
    let high = 1;
    for (let i = 0; i < HALVINGS; i += 1) {
      const middle = 0.5 * (low + high);
      this.setRoad(k, asked * middle);
      if (this.least() <= most) low = middle;
      else high = middle;
    }
    return asked * low;
  }

  /** Battery power that the friction brakes can take over: the axle's braking and the turning parts' motion. */
  shed(k: number, wheel: number): number {
    const ring = realAt(this.demand.ringSpeed, k);
    if (!(wheel * ring < 0)) return 0;
    this.setRoad(k, wheel);
    this.quasi.engine(0, 0);
    const braked = this.quasi.battery;
    this.quasi.road(ring, 0, wheel, 0, this.p.auxiliaryPower);
    this.quasi.engine(0, 0);
    return Math.max(0, this.quasi.battery - braked);
  }
}

/**
 * The points of every stage.
 * @param points most Pareto points a stage
 * @param soc charge at which "cannot do" is judged: less is taken than the battery gives there
 * @param refine multiplies the engine speeds looked at
 */
export function stageActions(p: Prepared, demand: Demand, points: number, soc: number, refine = 1): Actions {
  const builder = new Builder(p, demand, points, refine);
  const source = sourceOf(p);
  const most = mostOut(source, soc, openAt(source, soc));
  // What the battery gives less at its least working charge than at the one judged by.
  const low = p.socFloor + source.taper;
  const leeway = Math.max(0, most - mostOut(source, low, openAt(source, low))) + LEEWAY;
  const n = demand.stages;
  const first = new Int32Array(n);
  const count = new Int32Array(n);
  const restPower = new Float64Array(n);
  const shed = new Float64Array(n);
  const unmet = new Float64Array(n);
  const overdraw = new Float64Array(n);
  const wheelTorque = Float64Array.from(demand.wheelTorque);
  const power: number[] = [];
  const fuel: number[] = [];
  const speed: number[] = [];
  const torque: number[] = [];
  const { candidates, bins } = builder;
  /** stages that stand are all alike */
  let standing = -1;
  for (let k = 0; k < n; k += 1) {
    const awake = realAt(demand.awake, k) === 1;
    const stands = awake && realAt(demand.ringSpeed, k) === 0;
    if (stands && standing >= 0) {
      first[k] = first[standing] ?? 0;
      count[k] = count[standing] ?? 0;
      restPower[k] = realAt(restPower, standing);
      continue;
    }
    if (stands) standing = k;
    const asked = realAt(wheelTorque, k);
    let wheel = asked;
    builder.setRoad(k, wheel);
    restPower[k] = builder.rest();
    let found = awake ? builder.pareto() : 0;
    const least = found > 0 ? builder.quasiPower(bins.point[0] ?? 0) : Number.POSITIVE_INFINITY;
    if (awake && !(Math.min(least, restOr(realAt(restPower, k))) <= most)) {
      wheel = builder.within(k, most);
      wheelTorque[k] = wheel;
      unmet[k] = Math.abs((asked - wheel) * realAt(demand.ringSpeed, k));
      overdraw[k] = leeway;
      builder.setRoad(k, wheel);
      restPower[k] = builder.rest();
      found = builder.pareto();
    }
    first[k] = power.length;
    count[k] = found;
    const strongest = found > 0 ? builder.quasiPower(bins.point[0] ?? 0) : 0;
    for (let i = 0; i < found; i += 1) {
      const point = bins.point[i] ?? 0;
      power.push(builder.quasiPower(point));
      fuel.push(realAt(candidates.fuel, point));
      speed.push(realAt(candidates.speed, point));
      torque.push(realAt(candidates.torque, point));
    }
    // At its limit the vehicle also gives what a full battery cannot take: a little more is then unmet.
    if (awake) shed[k] = realAt(unmet, k) > 0 ? Math.max(0, -strongest) : builder.shed(k, wheel);
  }
  return {
    first,
    count,
    power: Float64Array.from(power),
    fuel: Float64Array.from(fuel),
    speed: Float64Array.from(speed),
    torque: Float64Array.from(torque),
    restPower,
    shed,
    overdraw,
    wheelTorque,
    unmet,
  };
}

const restOr = (power: number): number => (Number.isNaN(power) ? Number.POSITIVE_INFINITY : power);
