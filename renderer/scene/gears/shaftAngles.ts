import type { SetTeeth } from "./assembly.ts";

/** Absolute angles since the zero position, rad, positive counter-clockwise seen from the front; not wrapped. */
export interface ShaftAngles {
  readonly sun: number;
  readonly carrier: number;
  readonly ring: number;
  /** Turn of every planet, seen from the housing. */
  readonly planet: number;
}

type Teeth = Omit<SetTeeth, "planets">;

/**
 * Carrier and planets from sun and ring: φs + k φr = (1 + k) φc with k = Nr/Ns (Willis), and
 * φp = (1 − Nr/Np) φc + (Nr/Np) φr. The same relations hold for speeds; integrated from the same zero they hold
 * for angles.
 */
export function shaftAngles(sun: number, ring: number, teeth: Teeth): ShaftAngles {
  const carrier = (teeth.sunTeeth * sun + teeth.ringTeeth * ring) / (teeth.sunTeeth + teeth.ringTeeth);
  return { sun, carrier, ring, planet: planetAngle(carrier, ring, teeth) };
}

/** Sun and planets from carrier and ring, the two coordinates the engine integrates. Same relations. */
export function shaftAnglesFromCarrier(carrier: number, ring: number, teeth: Teeth): ShaftAngles {
  const sun = carrier + (teeth.ringTeeth / teeth.sunTeeth) * (carrier - ring);
  return { sun, carrier, ring, planet: planetAngle(carrier, ring, teeth) };
}

/** φp = φc + (Nr/Np)(φr − φc): planet and ring turn the same way seen from the carrier. */
const planetAngle = (carrier: number, ring: number, teeth: Teeth): number =>
  carrier + (teeth.ringTeeth / teeth.planetTeeth) * (ring - carrier);
