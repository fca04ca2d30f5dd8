import { frictionTorque, fullLoadTorque } from "../drivetrain/engine.ts";
import { basicRatio, type PowerShares, powerShares, torquesFromEngine } from "../drivetrain/gear-set.ts";
import { torqueLimit } from "../drivetrain/machine.ts";
import type { Vehicle } from "../parameters/schema.ts";
import { FIRING_SHARE } from "../settings.ts";
import { type BenchLimit, benchLimits } from "./limits.ts";
import { benchRegime } from "./regime.ts";
import { eachShaft, type ShaftValues } from "./shafts.ts";

/** What the bench is set to. */
export interface BenchInput {
  /** rad/s; they satisfy Willis' equation */
  readonly speeds: ShaftValues;
  /** torque asked of the engine, N·m; negative: motored */
  readonly engineTorque: number;
  /** torque of the output machine on its own shaft, N·m; null: it uses what the sun machine makes, the battery rests */
  readonly outputTorque: number | null;
}

/** Powers along the paths, W, positive the way they run when the engine drives the road. */
export interface BenchFlows {
  /** engine to gear set */
  readonly engine: number;
  /** gear set to sun machine to DC link: positive when it generates */
  readonly sun: number;
  /** gear set straight to the ring */
  readonly ring: number;
  /** battery to DC link: positive on discharge */
  readonly battery: number;
  /** DC link to output machine to ring: positive when it drives */
  readonly outputMachine: number;
  /** ring to the output */
  readonly output: number;
}

/** Steady, lossless state of the bench. */
export interface BenchPoint {
  readonly k: number;
  readonly speeds: ShaftValues;
  /** on the gear set, N·m */
  readonly torques: ShaftValues;
  /** into the gear set, W */
  readonly powers: ShaftValues;
  /** torque that the engine gives at its speed, N·m, and what it could */
  readonly engine: { readonly torque: number; readonly least: number; readonly most: number };
  /** output machine on its own shaft: N·m, rad/s, N·m */
  readonly output: { readonly torque: number; readonly speed: number; readonly most: number };
  readonly flows: BenchFlows;
  /** shares of the engine's power; null unless the turning engine pulls */
  readonly shares: PowerShares | null;
  /** id of a regime of sim/run/regimes.ts */
  readonly regime: string;
  readonly limits: readonly BenchLimit[];
}

const clamp = (value: number, least: number, most: number): number => Math.min(most, Math.max(least, value));

/** Torques that the engine can give at a speed, N·m: motored friction to full load; none where it does not fire. */
export function engineTorqueRange(
  { engine }: Vehicle,
  speed: number,
): { readonly least: number; readonly most: number } {
  return {
    least: speed > 0 ? -frictionTorque(engine, speed) : 0,
    most: speed >= FIRING_SHARE * engine.idleSpeed ? fullLoadTorque(engine, speed) : 0,
  };
}

/** Powers of the paths with an engine torque and an output machine torque, lossless: each node adds up. */
function flowsOf(powers: ShaftValues, outputMachine: number): BenchFlows {
  const sun = 0 - powers.sun;
  const ring = 0 - powers.ring;
  return {
    engine: powers.carrier,
    sun,
    ring,
    battery: outputMachine - sun,
    outputMachine,
    output: ring + outputMachine,
  };
}

function outputTorqueOf(v: Vehicle, asked: number | null, speed: number, generated: number): number {
  const most = torqueLimit(v.outputMachine, speed);
  if (asked !== null) return clamp(asked, -most, most);
  return speed === 0 ? 0 : clamp(generated / speed, -most, most);
}

/**
 * Torques, powers, regime and limits of the bench: steady, losses left out, so that an engine torque Te puts
 * −Te/(1 + k) on the sun and −k Te/(1 + k) on the ring at any speed.
 */
export function benchAt(v: Vehicle, { speeds, engineTorque, outputTorque }: BenchInput): BenchPoint {
  const k = basicRatio(v.gearSet);
  const range = engineTorqueRange(v, speeds.carrier);
  const acting = clamp(engineTorque, range.least, range.most);
  const torques = torquesFromEngine(k, acting);
  const powers = eachShaft((shaft) => torques[shaft] * speeds[shaft]);
  const speed = speeds.ring * v.outputMachine.reduction;
  const torque = outputTorqueOf(v, outputTorque, speed, -powers.sun);
  const bare = {
    k,
    speeds,
    torques,
    powers,
    engine: { torque: acting, ...range },
    output: { torque, speed, most: torqueLimit(v.outputMachine, speed) },
    flows: flowsOf(powers, torque * speed),
    shares: acting > 0 && speeds.carrier > 0 ? powerShares(k, speeds.carrier, speeds.ring) : null,
  };
  return {
    ...bare,
    regime: benchRegime(v, bare),
    limits: benchLimits(v, bare, { engineTorque, outputTorque }),
  };
}
