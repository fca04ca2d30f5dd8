import { GEAR_SMOOTHING, SUN_CONTROL_SHARE, SUN_SPEED_SHARE } from "../settings.ts";
import { MESH_SMOOTHING } from "./gear-set.ts";
import type { Prepared } from "./prepared.ts";

/**
 * The drivetrain at one steady point: what the battery must give when the wheels ask for a torque and the engine runs
 * at a speed and torque, or rests. The plant's own formulas (plant.ts, actuation.ts) with the carrier's acceleration
 * left out; every loss, every limit of engine, machines and gear set. One object is reused: `road` sets the wheels'
 * side, `engine` or `rest` the engine's, and the results stand in its fields. Nothing is allocated.
 */
export class QuasiStatic {
  /** W at the battery's terminals, positive on discharge */
  battery = 0;
  /** false when a machine's torque, power or speed limit is passed */
  feasible = true;
  sunSpeed = 0;
  sunTorque = 0;
  outputTorque = 0;
  // Losses, W.
  sunLoss = 0;
  outputLoss = 0;
  mesh = 0;
  reduction = 0;
  finalDrive = 0;
  /** power in the friction brakes, W, ≥ 0 */
  brake = 0;
  /** power into the motion of ring, output machine and sun, W */
  rotating = 0;

  private ring = 0;
  private auxiliary = 0;
  private gearFade = 0;
  /** torque that ring and output machine must give before the gear set's share, N·m at the ring */
  private ringNeed = 0;
  /** ring torque that the friction brakes may take over, N·m, ≥ 0 */
  private mayBrake = 0;
  private axleBrake = 0;
  private motion = 0;
  private ringInertiaTorque = 0;
  private awake = 1;

  constructor(private readonly p: Prepared) {}

  /**
   * The wheels' side of the point.
   * @param ring ring speed, rad/s
   * @param acceleration of the ring, rad/s²
   * @param wheel torque at the wheels with the vehicle's inertia and road load in it, N·m at the ring; against the
   * motion it is braking
   * @param share of the braking that the driven axle may carry, 0–1
   * @param auxiliary W
   */
  road(ring: number, acceleration: number, wheel: number, share: number, auxiliary: number): void {
    const p = this.p;
    const braking = wheel * ring < 0;
    const axle = braking ? wheel * share : wheel;
    this.ring = ring;
    this.auxiliary = auxiliary;
    this.awake = 1;
    this.gearFade = ring / (Math.abs(ring) + GEAR_SMOOTHING);
    const loss = p.driveLoss * Math.abs(axle) * this.gearFade;
    this.finalDrive = loss * ring;
    this.ringInertiaTorque = p.ringSideInertia * acceleration;
    // The sun turns with the ring: its motion's energy over the ring's speed alone, so that a drive from rest to rest
    // takes none. What the engine's speed adds belongs to the starts.
    this.motion = p.sunInertia * p.k * p.k * acceleration * ring;
    this.ringNeed = axle + loss + this.ringInertiaTorque;
    this.mayBrake = braking ? Math.abs(this.ringNeed) : 0;
    this.axleBrake = braking ? (axle - wheel) * ring : 0;
  }

  /** The vehicle switched off: it stands and nothing draws power. */
  asleep(): void {
    this.road(0, 0, 0, 0, 0);
    this.awake = 0;
  }

  /** The engine at rest. */
  rest(): void {
    this.engine(0, 0);
    const { p } = this;
    if (Math.abs(this.ring) * p.metresPerRing > p.control.electricTopSpeed) this.feasible = false;
  }

  /**
   * The engine at a speed (rad/s) and brake torque (N·m). Mesh torque from the carrier's balance:
   * T_e = −(1 + k) T_m − λ|T_m|, with λ the meshes' loss faded through zero sliding.
   */
  engine(speed: number, torque: number): void {
    const p = this.p;
    const ring = this.ring;
    const relative = p.k * (speed - ring);
    const lambda = (p.meshLoss * relative) / (Math.abs(relative) + MESH_SMOOTHING);
    const mesh = -torque / (p.k1 - (torque >= 0 ? lambda : -lambda));
    const meshLossTorque = lambda * Math.abs(mesh);
    this.mesh = meshLossTorque * relative;
    const sun = p.k1 * speed - p.k * ring;
    const sunTorque = mesh + meshLossTorque;
    this.output(this.ringNeed + p.k * mesh);
    const w = Math.abs(sun);
    const t = Math.abs(sunTorque);
    if (w > SUN_SPEED_SHARE * p.sunTop || t > SUN_CONTROL_SHARE * p.sunPeakTorque || t * w > p.sunPeakPower) {
      this.feasible = false;
    }
    this.sunSpeed = sun;
    this.sunTorque = sunTorque;
    this.sunLoss = this.awake * (p.sun0 + p.sun1 * t * t + (p.sun2 + p.sun3 * w * w + p.sun4 * t) * w);
    this.rotating = this.ringInertiaTorque * ring + this.motion;
    this.battery =
      sunTorque * sun +
      this.sunLoss +
      this.outputTorque * p.reduction * ring +
      this.outputLoss +
      this.motion +
      this.auxiliary;
  }

  /** Output machine for a torque needed at the ring; when braking, the friction brakes take over beyond its limit. */
  private output(need: number): void {
    const p = this.p;
    const loss = p.reductionLoss * this.gearFade;
    const perTorque = need > 0 ? p.reduction - loss : p.reduction + loss;
    let torque = need / perTorque;
    const x = p.reduction * Math.abs(this.ring);
    const most = p.outPeakTorque * x > p.outPeakPower ? p.outPeakPower / x : p.outPeakTorque;
    this.feasible = x < p.outTop;
    this.brake = this.axleBrake;
    const size = Math.abs(torque);
    if (size > most) {
      const over = (size - most) * perTorque;
      const against = torque * this.ring < 0;
      if (against && over <= this.mayBrake) {
        torque = torque > 0 ? most : -most;
        this.brake += over * Math.abs(this.ring);
      } else {
        this.feasible = false;
      }
    }
    const u = Math.abs(torque);
    this.outputTorque = torque;
    this.reduction = loss * u * this.ring;
    this.outputLoss = this.awake * (p.out0 + p.out1 * u * u + (p.out2 + p.out3 * x * x + p.out4 * u) * x);
  }
}
