import type { Prepared } from "../drivetrain/prepared.ts";
import { lookUp } from "../drivetrain/table.ts";
import { CRANK_ACCELERATION, FIRING_SHARE, STOP_DECELERATION } from "../settings.ts";

/** What one start costs, together with the stop that goes with it. */
export interface StartCost {
  /** extra fuel, J */
  readonly fuel: number;
  /** energy from the battery, J: friction of turning the engine up and down, and the machines' losses on both ways */
  readonly energy: number;
}

/** Share of the motion's energy that is lost on the machines' and the battery's way, each direction. */
const LOST = 0.06;

/** Engine power, as a share of the greatest, whose best speed stands for that of the running engine. */
const USUAL = 0.25;

/**
 * Cost of a start. Turned up by the sun machine and later brought to rest by it, the engine gives its motion's energy
 * back, but for the losses on both ways and the friction of cranking and stopping. Mean friction is taken at half the
 * speed: up to firing speed at the crank's acceleration, down at the stop's.
 */
export function startCost(p: Prepared): StartCost {
  const friction = (speed: number): number => p.friction0 + (p.friction1 + p.friction2 * speed) * speed;
  const work = (speed: number, rate: number): number => (friction(0.5 * speed) * 0.5 * speed * speed) / rate;
  const usual = lookUp(p.line, USUAL * p.enginePower);
  const inertia = p.carrierInertia + p.k1 * p.k1 * p.sunInertia;
  const motion = 0.5 * inertia * usual * usual;
  const rubbed = work(FIRING_SHARE * p.idleSpeed, CRANK_ACCELERATION) + work(usual, STOP_DECELERATION);
  return { fuel: p.startFuel, energy: rubbed + 2 * LOST * motion };
}
