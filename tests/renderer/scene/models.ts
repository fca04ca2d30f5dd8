import type { SceneModel } from "../../../renderer/scene/contract.ts";

/** A model with the compact's ratios and other teeth. */
export const withTeeth = (
  sunTeeth: number,
  planetTeeth: number,
  ringTeeth: number,
  planets: number,
): SceneModel => ({
  teeth: { sunTeeth, planetTeeth, ringTeeth, planets },
  outputReduction: 2.5,
  finalDrive: 3.3,
});

/** The demo compact. */
export const compact = withTeeth(40, 30, 100, 4);

/** Models that are drawn most. */
export const presets: readonly (readonly [string, SceneModel])[] = [
  ["40/30/100", compact],
  ["40/32/104", withTeeth(40, 32, 104, 4)],
  ["30/22/74", withTeeth(30, 22, 74, 4)],
  ["42/33/108, three planets", { ...withTeeth(42, 33, 108, 3), outputReduction: 2.6, finalDrive: 3.1 }],
  ["38/32/102", { ...withTeeth(38, 32, 102, 4), finalDrive: 3.9 }],
];
