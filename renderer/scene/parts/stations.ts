/** Where everything stands along the axis: z, positive toward the eye, which is the engine's side. */
export const Z = {
  ringBack: 0,
  ringFront: 27,
  bellBack: -7,
  carrierPlateBack: 1,
  carrierPlateFront: 4.6,
  planetBack: 5.6,
  planetFront: 22.6,
  frontPlateBack: 23.8,
  frontPlateFront: 27.4,
  sunFront: 24.4,
  sunStubEnd: 41,
  carrierStubEnd: 49,
  sunMachine: { back: 62, front: 102 },
  flywheel: { back: 128, front: 142 },
  crankEnd: 178,
  reduction: { back: -38, front: -24 },
  finalPinion: { back: -62, front: -46 },
  outputMachine: { back: -132, front: -88 },
  ringShaftEnd: -66,
  axleFront: 182,
  axleBack: -168,
} as const;

/** How far parts move along the axis when drawn fully apart. Rings of the same shaft move on their own. */
export const APART = {
  ring: -70,
  carrier: -28,
  planets: 14,
  frontPlate: 64,
  sun: 112,
  sunStator: 140,
  sunRotor: 192,
  engine: 224,
  outputGears: -98,
  outputStator: -132,
  outputRotor: -182,
} as const;
