import { type BodyAngles, hasReduction, zeroTurn } from "../angles.ts";
import type { SceneModel } from "../contract.ts";
import type { Outline } from "../gears/outline.ts";
import { planetSet, setOutlines } from "../gears/planetSet.ts";
import {
  carrierBackBody,
  carrierMark,
  carrierShaftBody,
  frontPlateBody,
  type PinDirections,
} from "../parts/carrier.ts";
import {
  axleBody,
  axleMark,
  type Driveline,
  drivelineOf,
  finalWheelBody,
  outputShaftBody,
  reductionPinionBody,
  reductionWheelBody,
} from "../parts/driveline.ts";
import { engineBody, engineMark } from "../parts/engine.ts";
import { type Machine, rotorBody, rotorMark, statorBody } from "../parts/machine.ts";
import { type SetMeasures, setMeasures } from "../parts/measures.ts";
import { planetBody, planetMark } from "../parts/planet.ts";
import { ringBody, ringFloor, ringMark } from "../parts/ring.ts";
import { type APART, Z } from "../parts/stations.ts";
import { sunBody, sunMark, sunShaftBody } from "../parts/sun.ts";
import { toothFineness } from "../parts/toothed.ts";
import type { Body } from "../shape/body.ts";
import { sweep } from "../shape/sweep.ts";
import { CUT, type Piece } from "./pieces.ts";

/** One rigid body of the scene: what it is built from, where it stands and what turns it. */
export interface BodySpec {
  readonly name: string;
  readonly pieces: readonly Piece[];
  /** Which shaft's angle turns it; null: it stands. */
  readonly turns: keyof BodyAngles | null;
  readonly apart: keyof typeof APART;
  readonly x: number;
  readonly y: number;
  /** In which extent it is shown. */
  readonly shown: "both" | "gear set" | "drivetrain";
}

/** Everything that is built for a model, before it goes into buffers. */
export interface SceneBodies {
  readonly measures: SetMeasures;
  readonly driveline: Driveline;
  readonly sunMachine: Machine;
  readonly outputMachine: Machine;
  /** The gear set. */
  readonly set: readonly BodySpec[];
  /** Everything else, built when it is first shown. */
  readonly train: () => readonly BodySpec[];
  /** One planet round its own axis, and the marks of the last one. */
  readonly planet: readonly Piece[];
  /** Places of the planets on the carrier: direction of the pin and turn of the outline, rad. */
  readonly planets: readonly { readonly position: number; readonly phase: number }[];
  /** The ring's toothed line in the zero position. */
  readonly ringOutline: Outline;
  /** Floor of the cut in the ring, at z 0. */
  readonly floor: Piece;
}

/** Builds all bodies for a model. */
export function sceneBodies(model: SceneModel): SceneBodies {
  const { teeth } = model;
  const measures = setMeasures(teeth);
  const driveline = drivelineOf(model, measures);
  const zero = zeroTurn(teeth);
  const set = planetSet(teeth, measures.module);
  const all = teeth.sunTeeth + teeth.planetTeeth * teeth.planets + teeth.ringTeeth;
  const outlines = setOutlines(teeth, { module: measures.module, ...toothFineness(all) });
  const ringOutline = turned(outlines.ring, set.ringPhase + zero);
  const planets = set.planets.map(({ position, phase }) => ({
    position: position + zero,
    phase: phase + zero,
  }));
  const pins = planets.map(({ position }) => position);
  const [sunMachine, outputMachine] = machines(model, measures, driveline);
  return {
    measures,
    driveline,
    sunMachine,
    outputMachine,
    planets,
    ringOutline,
    planet: [{ body: planetBody(outlines.planet, measures), part: "planets" }],
    floor: { body: floorBody(ringOutline, measures), part: "ring", cut: CUT.ringFloor },
    set: setSpecs(measures, pins, turned(outlines.sun, set.sunPhase + zero), ringOutline),
    train: () => trainSpecs(model, { measures, driveline, sunMachine, outputMachine }),
  };
}

/** The paint mark of the last planet: toward the outside of the set in the zero position. */
export const lastPlanetMark = ({ measures, planets }: SceneBodies): Piece => {
  const last = planets.at(-1);
  return {
    body: planetMark(measures, last === undefined ? 0 : Math.PI / 2 - last.phase),
    part: "planets",
    mark: true,
  };
};

function machines(model: SceneModel, m: SetMeasures, line: Driveline): readonly [Machine, Machine] {
  const sun: Machine = {
    ...Z.sunMachine,
    bore: 36,
    outer: 58,
    slots: 36,
    poles: 8,
    shaft: m.sunShaft,
    tone: "sun",
  };
  const shaft = hasReduction(model) ? Math.min(9, line.shaft + 1) : line.shaft;
  return [sun, { ...sun, ...Z.outputMachine, bore: 38, outer: 62, slots: 42, shaft, tone: "ring" }];
}

function floorBody(ring: Outline, m: SetMeasures): Body {
  const [outer, inner] = ringFloor(ring, m);
  // Only the upper side and its lines are seen; the lower one closes the section.
  return sweep(
    [
      { loop: outer, z: 0, weight: 1.3 },
      { loop: inner, z: 0, weight: 1.1 },
    ],
    { tone: "ring" },
  );
}

const centred = { x: 0, y: 0 };

function setSpecs(m: SetMeasures, pins: PinDirections, sun: Outline, ring: Outline): BodySpec[] {
  const both = { ...centred, shown: "both" as const };
  return [
    {
      ...both,
      name: "ring",
      turns: "ring",
      apart: "ring",
      pieces: [
        { body: ringBody(ring, m), part: "ring", cut: CUT.ring },
        { body: ringMark(m), part: "ring", cut: CUT.ring, mark: true },
      ],
    },
    {
      ...both,
      name: "carrier",
      turns: "carrier",
      apart: "carrier",
      pieces: [{ body: carrierBackBody(m, pins), part: "carrier" }],
    },
    {
      ...both,
      name: "front plate",
      turns: "carrier",
      apart: "frontPlate",
      pieces: [
        { body: frontPlateBody(m, pins), part: "carrier" },
        { body: carrierMark(m), part: "carrier", mark: true },
      ],
    },
    {
      ...both,
      name: "sun",
      turns: "sun",
      apart: "sun",
      pieces: [
        { body: sunBody(sun, m), part: "sun" },
        { body: sunMark(m), part: "sun", mark: true },
      ],
    },
    ...([false, true] as const).flatMap((long): BodySpec[] => [
      {
        ...centred,
        name: long ? "sun shaft" : "sun stub",
        turns: "sun",
        apart: "sun",
        shown: long ? "drivetrain" : "gear set",
        pieces: [{ body: sunShaftBody(m, long), part: "sun" }],
      },
      {
        ...centred,
        name: long ? "carrier shaft" : "carrier stub",
        turns: "carrier",
        apart: "carrier",
        shown: long ? "drivetrain" : "gear set",
        pieces: [{ body: carrierShaftBody(m, long), part: "carrier" }],
      },
    ]),
  ];
}

function trainSpecs(
  model: SceneModel,
  built: Pick<SceneBodies, "measures" | "driveline" | "sunMachine" | "outputMachine">,
): BodySpec[] {
  const { measures: m, driveline: line, sunMachine, outputMachine } = built;
  const shown = "drivetrain" as const;
  const { reduction, final } = line;
  const machineAxis = reduction === null ? centred : { x: reduction.x, y: reduction.y };
  const specs: BodySpec[] = [
    {
      ...centred,
      shown,
      name: "sun rotor",
      turns: "sun",
      apart: "sunRotor",
      pieces: [
        { body: rotorBody(sunMachine), part: "sun-machine" },
        { body: rotorMark(sunMachine), part: "sun-machine", mark: true },
      ],
    },
    {
      ...centred,
      shown,
      name: "sun stator",
      turns: null,
      apart: "sunStator",
      pieces: [{ body: statorBody(sunMachine), part: "sun-machine", cut: CUT.sunMachine }],
    },
    {
      ...machineAxis,
      shown,
      name: "output rotor",
      turns: "outputMachine",
      apart: "outputRotor",
      pieces: [
        { body: rotorBody(outputMachine), part: "output-machine" },
        { body: rotorMark(outputMachine), part: "output-machine", mark: true },
      ],
    },
    {
      ...machineAxis,
      shown,
      name: "output stator",
      turns: null,
      apart: "outputStator",
      pieces: [{ body: statorBody(outputMachine), part: "output-machine", cut: CUT.outputMachine }],
    },
    {
      ...centred,
      shown,
      name: "output shaft",
      turns: "ring",
      apart: "outputGears",
      pieces: [
        { body: outputShaftBody(model, line, m), part: "final-drive" },
        { body: reductionWheelBody(model, line), part: "reduction" },
      ],
    },
    {
      ...centred,
      shown,
      name: "engine",
      turns: "carrier",
      apart: "engine",
      pieces: [
        { body: engineBody(m.carrierShaft), part: "engine" },
        { body: engineMark(), part: "engine", mark: true },
      ],
    },
    {
      shown,
      x: final.x,
      y: final.y,
      name: "axle",
      turns: "axle",
      apart: "outputGears",
      pieces: [
        { body: axleBody(), part: "axle" },
        { body: axleMark(), part: "axle", mark: true },
        { body: finalWheelBody(model, line), part: "final-drive" },
      ],
    },
  ];
  if (reduction === null) return specs;
  return [
    ...specs,
    {
      ...machineAxis,
      shown,
      name: "output pinion",
      turns: "outputMachine",
      apart: "outputGears",
      pieces: [{ body: reductionPinionBody(model, line, outputMachine.shaft), part: "reduction" }],
    },
  ];
}

function turned(outline: Outline, angle: number): Outline {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return outline.map((_, i) => {
    const k = i - (i % 2);
    const [x, y] = [outline[k] ?? 0, outline[k + 1] ?? 0];
    return i % 2 === 0 ? x * c - y * s : x * s + y * c;
  });
}
