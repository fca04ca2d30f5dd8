import type { Teeth } from "../../sim/drivetrain/gear-set.ts";
import type { SceneAngles, SceneModel } from "./contract.ts";
import { shaftAnglesFromCarrier } from "./gears/shaftAngles.ts";
import { type TeethPair, teethForRatio } from "./parts/pair.ts";

/** Turns of all bodies since the zero position, rad, positive counter-clockwise from the front, unwrapped. */
export interface BodyAngles {
  readonly sun: number;
  readonly carrier: number;
  readonly ring: number;
  /** Planets about their own pins, seen from the housing. */
  readonly planet: number;
  /** Planets about their own pins, seen from the carrier. */
  readonly planetOnCarrier: number;
  readonly outputMachine: number;
  readonly axle: number;
}

const TURN = 2 * Math.PI;

/** The teeth of all gears that turn the bodies. */
export interface GearTrain {
  readonly teeth: Teeth;
  /** null: the output machine sits on the ring's shaft */
  readonly reduction: TeethPair | null;
  readonly final: TeethPair;
}

/** Teeth for a model, chosen once. */
export const gearTrain = (model: SceneModel): GearTrain => ({
  teeth: model.teeth,
  reduction: hasReduction(model) ? teethForRatio(model.outputReduction) : null,
  final: teethForRatio(model.finalDrive),
});

/**
 * Everything that follows from carrier and ring. A reduction by one gear pair turns the machine against the ring, as
 * any pair of external gears does; without a pair it turns with the ring. The axle turns against the ring likewise.
 */
export function bodyAngles({ teeth, reduction, final }: GearTrain, angles: SceneAngles): BodyAngles {
  const shafts = shaftAnglesFromCarrier(angles.carrier, angles.ring, teeth);
  return {
    ...shafts,
    planetOnCarrier: shafts.planet - shafts.carrier,
    outputMachine: reduction === null ? angles.ring : (-angles.ring * reduction.wheel) / reduction.pinion,
    axle: (-angles.ring * final.pinion) / final.wheel,
  };
}

/** Whether the output machine has a gear pair of its own. */
export const hasReduction = (model: Pick<SceneModel, "outputReduction">): boolean =>
  Math.abs(model.outputReduction - 1) > 1e-9;

/** An angle brought to −π … π before it goes into single precision, where large ones lose their teeth. */
export const wrapped = (angle: number): number => angle - TURN * Math.round(angle / TURN);

/** Turn of the whole set in the zero position, so that the paint marks start at 12 o'clock between two planets. */
export const zeroTurn = (teeth: Pick<Teeth, "planets">): number => Math.PI / 2 - Math.PI / teeth.planets;
