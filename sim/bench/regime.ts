import { engineTables, fuelPower } from "../drivetrain/engine.ts";
import type { Vehicle } from "../parameters/schema.ts";
import { BANDS, REGIMES, type RegimeRow, regimeOf } from "../run/regimes.ts";
import { FIRING_SHARE } from "../settings.ts";
import type { BenchPoint } from "./bench.ts";
import { roadOfRing } from "./shafts.ts";

type Bare = Pick<BenchPoint, "speeds" | "torques" | "powers" | "engine" | "output" | "flows">;

/** 0 off, 1 cranking, 2 running, 3 stopping: read off speed and torque, for the bench has no ignition. */
function engineMode(v: Vehicle, { speeds, engine, powers }: Bare): number {
  if (speeds.carrier <= 0) return 0;
  const fires = speeds.carrier >= FIRING_SHARE * v.engine.idleSpeed;
  const turnedBySun = engine.torque < 0 && powers.sun > 0;
  if (turnedBySun && Math.abs(roadOfRing(v, speeds.ring)) < BANDS.rest) return 1;
  if (fires) return 2;
  return powers.sun < 0 ? 3 : 1;
}

/** The regime of a bench point: the run's own decision list on a row made of the point. */
export function benchRegime(v: Vehicle, at: Bare): string {
  const { speeds, flows } = at;
  const { map } = engineTables(v.engine);
  const speed = roadOfRing(v, speeds.ring);
  const perRing = v.finalDrive.ratio / v.body.wheelRadius;
  const row: RegimeRow = {
    speed,
    grade: 0,
    engineMode: engineMode(v, at),
    engineSpeed: speeds.carrier,
    engineTorque: at.engine.torque,
    fuelPower: fuelPower(v.engine, map, speeds.carrier, at.engine.torque),
    sunSpeed: speeds.sun,
    sunElectric: at.powers.sun,
    ringSpeed: speeds.ring,
    outputShaft: flows.outputMachine,
    outputElectric: flows.outputMachine,
    batteryPower: flows.battery,
    auxiliary: 0,
    wheelForceAsk: (at.output.torque * v.outputMachine.reduction - at.torques.ring) * perRing,
    brakeForce: 0,
    axleShare: 1,
  };
  return REGIMES[regimeOf(row)]?.id ?? "coasting";
}
