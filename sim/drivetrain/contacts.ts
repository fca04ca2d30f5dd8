import type { Prepared } from "./prepared.ts";
import type { PlantState } from "./state.ts";

/**
 * Friction and stops, solved exactly. Each contact's reaction lies between two bounds and, inside them, brings its
 * shaft to rest at the step's end; at a bound the shaft moves (a box-constrained complementarity problem in two
 * unknowns; with a positive definite mass matrix its solution is unique).
 *
 * Bounds. Ring: brake and rolling resistance, either sign at rest, only against the motion while it moves. Carrier:
 * engine friction against the motion (breakaway at rest) below, no bound above: the engine never turns backward, and
 * a one-way clutch uses the same stop.
 */

/** Slack on a sign test, rad/s or N·m: rounding only. */
const SLACK = 1e-10;

function accept(s: PlantState, carrierEnd: number, ringEnd: number, carrier: number, ring: number): void {
  s.carrierEnd = carrierEnd;
  s.ringEnd = ringEnd;
  s.carrierReaction = carrier;
  s.ringReaction = ring;
}

/** Carrier slides at its lower bound or (`held`) is at rest; the ring slides under a given reaction. */
function tryRingSliding(p: Prepared, s: PlantState, held: boolean, ring: number, sign: number): boolean {
  let carrier = -s.frictionBound;
  if (held) {
    carrier =
      -(s.carrierSpeed * p.perH + p.inverseCc * s.freeCarrier + p.inverseCr * (s.freeRing + ring)) /
      p.inverseCc;
    if (carrier < -s.frictionBound - SLACK) return false;
  }
  const qc = s.freeCarrier + carrier;
  const qr = s.freeRing + ring;
  const carrierEnd = held ? 0 : s.carrierSpeed + p.h * (p.inverseCc * qc + p.inverseCr * qr);
  const ringEnd = s.ringSpeed + p.h * (p.inverseCr * qc + p.inverseRr * qr);
  if (carrierEnd < -SLACK || ringEnd * sign < -SLACK) return false;
  accept(s, Math.max(0, carrierEnd), ringEnd, carrier, ring);
  s.carrierHeld = held ? 1 : 0;
  s.ringHeld = 0;
  return true;
}

/** The ring is at rest at the end of the step, its reaction between two bounds. */
function tryRingHeld(p: Prepared, s: PlantState, held: boolean, low: number, high: number): boolean {
  let carrier = -s.frictionBound;
  let ring: number;
  let carrierEnd = 0;
  if (held) {
    carrier = -(p.massCc * s.carrierSpeed + p.massCr * s.ringSpeed) * p.perH - s.freeCarrier;
    ring = -(p.massCr * s.carrierSpeed + p.massRr * s.ringSpeed) * p.perH - s.freeRing;
    if (carrier < -s.frictionBound - SLACK) return false;
  } else {
    const qc = s.freeCarrier + carrier;
    ring = -(s.ringSpeed * p.perH + p.inverseCr * qc) / p.inverseRr - s.freeRing;
    carrierEnd = s.carrierSpeed + p.h * (p.inverseCc * qc + p.inverseCr * (s.freeRing + ring));
    if (carrierEnd < -SLACK) return false;
  }
  const slack = SLACK * (1 + Math.abs(low) + Math.abs(high) + Math.abs(s.freeRing));
  if (ring < low - slack || ring > high + slack) return false;
  accept(s, Math.max(0, carrierEnd), 0, carrier, ring);
  s.carrierHeld = held ? 1 : 0;
  s.ringHeld = 1;
  return true;
}

/**
 * Solves both contacts for the step: reads the free torques and bounds from the state, writes end speeds, reactions
 * and which contact holds. Tries the modes in the order of their frequency.
 */
export function solveContacts(p: Prepared, s: PlantState): void {
  const bound = s.ringBound;
  const w = s.ringSpeed;
  const low = w >= 0 ? -bound : 0;
  const high = w <= 0 ? bound : 0;
  const first = s.carrierSpeed === 0;
  for (let round = 0; round < 2; round += 1) {
    const held = (round === 0) === first;
    if (w !== 0) {
      const sign = w > 0 ? 1 : -1;
      if (tryRingSliding(p, s, held, w > 0 ? low : high, sign)) return;
    }
    if (tryRingHeld(p, s, held, low, high)) return;
    if (tryRingSliding(p, s, held, low, 1)) return;
    if (tryRingSliding(p, s, held, high, -1)) return;
  }
  // Only rounding can bring us here: both at rest is then right to within it.
  accept(s, 0, 0, 0, 0);
  s.carrierHeld = 1;
  s.ringHeld = 1;
}
