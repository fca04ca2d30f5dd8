import { externalGearOutline, type OutlineOptions } from "../gears/externalOutline.ts";
import type { Outline } from "../gears/outline.ts";
import type { Body } from "../shape/body.ts";
import { circle, evenly, offset, shaped } from "../shape/loop.ts";
import { type Station, sweep } from "../shape/sweep.ts";
import type { Tone } from "../tones.ts";

/** Light at the bottom of a tooth gap. */
export const GROOVE = 0.42;

/** Corner cut off the tooth ends, modules. */
const TOOTH_CHAMFER = 0.22;

/** An external gear as a turned part with teeth. */
export interface Gear {
  readonly outline: Outline;
  readonly module: number;
  /** Radius at the bottom of the teeth. */
  readonly root: number;
  readonly bore: number;
  /** Radius of the boss round the bore; the face between boss and rim is turned a little deeper. */
  readonly boss: number;
  readonly back: number;
  readonly front: number;
  readonly tone: Tone;
}

/** The gear's body: chamfered teeth, a rim line, and a recessed web where there is room for one. */
export function gearBody(gear: Gear): Body {
  const { module, root, bore, boss, back, front, tone } = gear;
  const teeth = shaped(gear.outline, false, GROOVE);
  const cut = TOOTH_CHAMFER * module;
  const rim = root - 0.75 * module;
  const depth = Math.min(1.1, 0.08 * (front - back));
  const web: Station[] =
    rim - boss > 2.5
      ? [
          { loop: circle(rim), z: front, weight: 0.7 },
          { loop: circle(rim - 0.5, 0.93), z: front - depth, weight: 0 },
          { loop: circle(boss + 0.5, 0.93), z: front - depth, weight: 0 },
          { loop: circle(boss), z: front, weight: 0.7 },
        ]
      : [];
  return sweep(
    [
      { loop: evenly(offset(teeth, -cut), 1), z: back, weight: 1 },
      { loop: teeth, z: back + cut, weight: 0 },
      { loop: teeth, z: front - cut, weight: 0 },
      { loop: evenly(offset(teeth, -cut), 1), z: front, weight: 1 },
      ...web,
      { loop: circle(bore), z: front },
      { loop: circle(bore, 0.4), z: back },
    ],
    { tone },
  );
}

/**
 * Points a tooth gets: fewer the more teeth there are, because they are smaller on the sheet.
 * @param all teeth of all gears of the set, every planet counted
 */
export const toothFineness = (all: number): Required<Pick<OutlineOptions, "flankPoints" | "arcPieces">> => ({
  flankPoints: all > 900 ? 2 : all > 420 ? 3 : all > 300 ? 5 : 6,
  arcPieces: 2,
});

/** A plain wheel with a full web, for the gear pairs outside the set. */
export function wheelBody(
  teeth: number,
  given: { module: number; bore: number; back: number; front: number; tone: Tone },
): Body {
  const { module, bore, back, front, tone } = given;
  const outline = externalGearOutline(teeth, { module, flankPoints: 4, arcPieces: 2 });
  const root = (module * (teeth - 2.5)) / 2;
  const boss = Math.min(bore + 3.5, root - 0.75 * module);
  return gearBody({ outline, module, root, bore, boss, back, front, tone });
}
