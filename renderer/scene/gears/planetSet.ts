import { centreCheck, type SetTeeth, spacingCheck } from "./assembly.ts";
import { internalDiameters } from "./dimensions.ts";
import { externalGearOutline, type OutlineOptions } from "./externalOutline.ts";
import { ringTipDiameter } from "./internalMesh.ts";
import { internalGearOutline } from "./internalOutline.ts";
import type { Outline } from "./outline.ts";
import { needTeeth } from "./proportions.ts";

/** Where one planet sits and how it is turned in the zero position. */
export interface PlanetPlace {
  /** Direction of its axis from the set's axis when the carrier stands at 0, rad, 0 … 2π. */
  readonly position: number;
  /** Turn of its outline (tooth 0 on the x axis) in the zero position, rad, 0 … one pitch. */
  readonly phase: number;
}

/** A planetary gear set in its zero position: sun, carrier and ring at angle 0. Angles counter-clockwise from the front. */
export interface PlanetSet {
  /** Distance of the planets' axes from the set's axis, unit of the module. */
  readonly centreDistance: number;
  /** Turn of the sun's outline: 0, a tooth on the x axis. */
  readonly sunPhase: number;
  /** Turn of the ring's outline: 0 with an even number of planet teeth, half a pitch with an odd one. */
  readonly ringPhase: number;
  readonly planets: readonly PlanetPlace[];
}

/**
 * Places the planets so that in both meshes a tooth stands in the middle of a space.
 *
 * Count teeth along each pitch circle from its tooth 0. At the sun mesh, in direction θ, the two counts run
 * against each other, so they must add to a half: Ns θ/2π + Np (θ + π − φ)/2π = ½, which gives φ. At the ring
 * mesh they run together and must differ by a half: that holds when (Ns + Nr) θ/2π is whole (equal spacing) and
 * Nr ψ/2π = Np/2 up to whole teeth, which gives the ring's phase ψ.
 * @param module pitch diameter per tooth, > 0
 * @throws RangeError for tooth numbers that cannot be put together (A1 centre distance, A2 equal spacing)
 */
export function planetSet(set: SetTeeth, module = 1): PlanetSet {
  const { sunTeeth, planetTeeth, ringTeeth, planets } = set;
  for (const teeth of [sunTeeth, planetTeeth, ringTeeth]) needTeeth(teeth);
  needTeeth(planets, 1);
  const centre = centreCheck(set);
  if (!centre.pass) {
    throw new RangeError(
      `ring has ${ringTeeth} teeth, ${centre.wanted} would mesh; profile shift is not covered`,
    );
  }
  const spacing = spacingCheck(set);
  if (!spacing.pass) {
    throw new RangeError(`${planets} planets do not fit equally spaced: (Ns + Nr)/n is ${spacing.value}`);
  }
  return {
    centreDistance: (module * (sunTeeth + planetTeeth)) / 2,
    sunPhase: 0,
    ringPhase: planetTeeth % 2 === 0 ? 0 : Math.PI / ringTeeth,
    planets: Array.from({ length: planets }, (_, index) => {
      // Whole numbers over a common denominator keep every phase exact to the last bits.
      const numerator = 2 * index * (sunTeeth + planetTeeth) + planets * (planetTeeth - 1);
      const pitches = (numerator % (2 * planets)) / (2 * planets);
      return { position: (2 * Math.PI * index) / planets, phase: (2 * Math.PI * pitches) / planetTeeth };
    }),
  };
}

/** Outlines of the three wheels of a set, each in its own frame with tooth 0 on the x axis. */
export interface SetOutlines {
  readonly sun: Outline;
  readonly planet: Outline;
  readonly ring: Outline;
  /** By how much the ring's teeth were shortened to clear the planets' base points, unit of the module; mostly 0. */
  readonly ringShortening: number;
}

/** The outlines that go with {@link planetSet}. */
export function setOutlines(
  set: Omit<SetTeeth, "planets">,
  options: Omit<OutlineOptions, "tipDiameter"> = {},
): SetOutlines {
  const tipDiameter = ringTipDiameter(set.planetTeeth, set.ringTeeth, options);
  return {
    sun: externalGearOutline(set.sunTeeth, options),
    planet: externalGearOutline(set.planetTeeth, options),
    ring: internalGearOutline(set.ringTeeth, { ...options, tipDiameter }),
    ringShortening: (tipDiameter - internalDiameters(set.ringTeeth, options).tip) / 2,
  };
}
