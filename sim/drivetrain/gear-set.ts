/**
 * Kinematics and statics of the planetary gear set: sun to the sun machine, carrier to the engine, ring to the
 * output. Speeds rad/s, torques N·m on the gear set, both positive in the forward sense. k = ring teeth / sun teeth.
 * Formulas: Willis; for the torque lever see Benford and Leising, SAE 810102 (from memory).
 */

/** Tooth counts of a set with equal, unshifted modules. */
export interface Teeth {
  readonly sunTeeth: number;
  readonly planetTeeth: number;
  readonly ringTeeth: number;
  readonly planets: number;
}

/** Basic ratio k = Nr / Ns. */
export const basicRatio = (teeth: Teeth): number => teeth.ringTeeth / teeth.sunTeeth;

/** Sun speed from carrier and ring: ωs = (1 + k) ωc − k ωr. */
export const sunSpeed = (k: number, carrier: number, ring: number): number => (1 + k) * carrier - k * ring;

/** Carrier speed from sun and ring: ωc = (ωs + k ωr) / (1 + k). */
export const carrierSpeed = (k: number, sun: number, ring: number): number => (sun + k * ring) / (1 + k);

/** Ring speed from sun and carrier: ωr = ((1 + k) ωc − ωs) / k. */
export const ringSpeed = (k: number, sun: number, carrier: number): number => ((1 + k) * carrier - sun) / k;

/** A planet's speed about its own pin, seen from its carrier: −(Ns/Np)(ωs − ωc). */
export const planetSpinOnCarrier = (teeth: Teeth, sun: number, carrier: number): number =>
  (-teeth.sunTeeth / teeth.planetTeeth) * (sun - carrier);

/** A planet's absolute speed: (1 − Nr/Np) ωc + (Nr/Np) ωr. */
export const planetSpeed = (teeth: Teeth, carrier: number, ring: number): number => {
  const ratio = teeth.ringTeeth / teeth.planetTeeth;
  return (1 - ratio) * carrier + ratio * ring;
};

/** The three shaft torques on the gear set, N·m. */
export interface ShaftTorques {
  readonly sun: number;
  readonly ring: number;
  readonly carrier: number;
}

/**
 * Steady torques from the mesh torque and the loss torque (planet inertia left out):
 * Ts = Tm + Tl, Tr = k Tm, Tc = −(1 + k) Tm − Tl. They always sum to zero.
 */
export const torquesFromMesh = (k: number, mesh: number, loss: number): ShaftTorques => ({
  sun: mesh + loss,
  ring: k * mesh,
  carrier: -(1 + k) * mesh - loss,
});

/** Lossless steady torques that balance an engine torque: −Te/(1 + k) at the sun, −k Te/(1 + k) at the ring. */
export const torquesFromEngine = (k: number, engine: number): ShaftTorques =>
  torquesFromMesh(k, -engine / (1 + k), 0);

/** Speed below which the loss torque fades out, rad/s: it must pass through zero with the sliding. */
export const MESH_SMOOTHING = 3;

/**
 * Loss torque Tl of both meshes, N·m, for a mesh torque and a sun speed relative to the carrier.
 * |Tl| = (1 − η0)|Tm|, with the sign of the relative speed, so that Tl (ωs − ωc) ≥ 0.
 */
export const meshLossTorque = (basicEfficiency: number, mesh: number, relative: number): number =>
  ((1 - basicEfficiency) * Math.abs(mesh) * relative) / (Math.abs(relative) + MESH_SMOOTHING);

/** How the engine's power reaches the ring, lossless and steady. Shares of the engine power; they sum to 1. */
export interface PowerShares {
  /** k r/(1 + k): straight through the gear set. */
  readonly mechanical: number;
  /** 1 − k r/(1 + k): by way of the sun machine; negative when power circulates. */
  readonly electrical: number;
}

/** Power shares at the speed ratio r = ωr/ωc. Needs a turning engine (ωc > 0). */
export const powerShares = (k: number, carrier: number, ring: number): PowerShares => {
  const mechanical = (k * ring) / ((1 + k) * carrier);
  return { mechanical, electrical: 1 - mechanical };
};

/** The speed ratio ωr/ωc at which the sun stands still: (1 + k)/k. */
export const mechanicalPoint = (k: number): number => (1 + k) / k;
