import type { Vehicle } from "../../sim/parameters/schema.ts";
import type { VehiclePart } from "./parts.ts";

/** How a body is drawn: cut through (hatched), seen beyond the cut (tinted), a housing's line, a pattern of its own. */
export type Fill = "cut" | "seen" | "winding" | "cells" | "steel" | "steel-seen" | "outline" | "tyre";

/** A box of the section, in the drawing's own units. */
export interface Body {
  readonly part: VehiclePart;
  readonly colour: "carrier" | "sun" | "ring" | "battery" | "";
  readonly fill: Fill;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A chain-dotted axis, or a cable. */
export interface Line {
  readonly kind: "axis" | "cable" | "ground";
  readonly points: readonly (readonly [number, number])[];
}

/** Size of the drawing in its own units. */
export const SECTION = { width: 1130, height: 470 } as const;

/** Heights of the three axes, and radius of the ring's pitch circle, which all teeth are scaled by. */
const MAIN = 150;
const COUNTER = MAIN + 135;
const AXLE = COUNTER + 103;
const RING_PITCH = 88;

type Place = readonly [x: number, width: number];

/** A body of revolution about an axis: cut above it, seen below it. */
function turned(
  part: VehiclePart,
  colour: Body["colour"],
  [x, width]: Place,
  axis: number,
  inner: number,
  outer: number,
): Body[] {
  const common = { part, colour, x, width, height: outer - inner };
  return [
    { ...common, fill: "cut", y: axis - outer },
    { ...common, fill: "seen", y: axis + inner },
  ];
}

/** A machine: stator with windings, rotor, hub. */
function machine(
  part: "sunMachine" | "outputMachine",
  colour: "sun" | "ring",
  x: number,
  shaft: number,
): Body[] {
  const winding = (left: number, y: number): Body => ({
    part,
    colour,
    fill: "winding",
    x: left,
    y,
    width: 14,
    height: 28,
  });
  return [
    ...turned(part, colour, [x, 96], MAIN, 66, 104),
    winding(x - 14, MAIN - 99),
    winding(x + 96, MAIN - 99),
    winding(x - 14, MAIN + 71),
    winding(x + 96, MAIN + 71),
    ...turned(part, colour, [x, 96], MAIN, 40, 62),
    ...turned(part, colour, [x + 38, 20], MAIN, shaft, 40),
  ];
}

/** Sun, planets, carrier and ring: their radii are the teeth's, so that they mesh on the drawing too. */
function gearSet({ gearSet: g }: Vehicle): Body[] {
  const unit = RING_PITCH / g.ringTeeth;
  const sun = g.sunTeeth * unit;
  const planet = g.planetTeeth * unit;
  const centre = sun + planet;
  const half = (fill: "steel" | "steel-seen", y: number): Body => ({
    part: "gearSet",
    colour: "",
    fill,
    x: 412,
    y,
    width: 32,
    height: 2 * planet,
  });
  return [
    ...turned("gearSet", "sun", [410, 36], MAIN, 20, Math.max(21, sun)),
    half("steel", MAIN - centre - planet),
    half("steel-seen", MAIN + centre - planet),
    ...turned("gearSet", "carrier", [404, 54], MAIN, centre - 4, centre + 4),
    ...turned("gearSet", "carrier", [452, 11], MAIN, 9, centre + 9),
    ...turned("gearSet", "ring", [406, 90], MAIN, RING_PITCH, RING_PITCH + 13),
    ...turned("gearSet", "ring", [486, 10], MAIN, 24, RING_PITCH),
    ...turned("gearSet", "ring", [486, 66], MAIN, 13, 24),
  ];
}

/** Two gears in mesh between two axes with a given ratio of the second to the first. */
const meshing = (distance: number, ratio: number): readonly [number, number] => {
  const first = distance / (1 + ratio);
  return [first, distance - first];
};

function drive(v: Vehicle): Body[] {
  const [ringGear, counterGear] = meshing(COUNTER - MAIN, 1);
  const [pinion, wheel] = meshing(COUNTER - MAIN, v.outputMachine.reduction);
  const [small, large] = meshing(AXLE - COUNTER, v.finalDrive.ratio);
  const shaft = (place: Place, axis: number): Body[] => turned("finalDrive", "ring", place, axis, 0, 11);
  return [
    ...turned("finalDrive", "ring", [512, 26], MAIN, 24, ringGear),
    ...turned("finalDrive", "ring", [512, 26], COUNTER, 11, counterGear),
    ...turned("outputMachine", "ring", [612, 22], MAIN, 13, Math.max(15, pinion)),
    ...turned("outputMachine", "ring", [612, 22], COUNTER, 11, wheel),
    ...shaft([500, 148], COUNTER),
    ...turned("finalDrive", "ring", [562, 28], COUNTER, 11, Math.max(13, small)),
    ...turned("finalDrive", "ring", [562, 28], AXLE, 11, large),
    ...shaft([540, 380], AXLE),
  ];
}

function wheel(): Body[] {
  const at = (fill: Fill, x: number, y: number, width: number, height: number): Body => ({
    part: "body",
    colour: "",
    fill,
    x,
    y,
    width,
    height,
  });
  return [
    at("steel", 920, AXLE - 38, 10, 76),
    at("steel", 930, AXLE - 58, 9, 40),
    at("steel-seen", 930, AXLE + 18, 9, 40),
    at("tyre", 912, AXLE - 78, 62, 22),
    at("steel-seen", 912, AXLE + 56, 62, 22),
  ];
}

function electric(): Body[] {
  return [
    { part: "auxiliary", colour: "battery", fill: "winding", x: 864, y: MAIN - 80, width: 54, height: 56 },
    { part: "battery", colour: "battery", fill: "outline", x: 968, y: MAIN - 92, width: 96, height: 124 },
    ...[0, 1, 2, 3].map(
      (n): Body => ({
        part: "battery",
        colour: "battery",
        fill: "cells",
        x: 976 + 20.5 * n,
        y: MAIN - 84,
        width: 18,
        height: 108,
      }),
    ),
  ];
}

/** The drivetrain as a side section, its axes turned into one plane. */
export function sectionBodies(v: Vehicle): readonly Body[] {
  return [
    ...turned("engine", "carrier", [56, 84], MAIN, 0, 20),
    ...turned("engine", "carrier", [140, 20], MAIN, 0, 96),
    ...turned("engine", "carrier", [160, 8], MAIN, 9, 72),
    ...turned("engine", "carrier", [160, 22], MAIN, 46, 72),
    ...turned("engine", "carrier", [168, 295], MAIN, 0, 9),
    ...turned("sunMachine", "sun", [222, 224], MAIN, 11, 20),
    ...machine("sunMachine", "sun", 234, 20),
    ...gearSet(v),
    ...turned("outputMachine", "ring", [602, 214], MAIN, 0, 13),
    ...machine("outputMachine", "ring", 668, 13),
    ...drive(v),
    ...wheel(),
    ...electric(),
  ];
}

/** Axes, cables and the road. */
export const SECTION_LINES: readonly Line[] = [
  {
    kind: "axis",
    points: [
      [40, MAIN],
      [836, MAIN],
    ],
  },
  {
    kind: "axis",
    points: [
      [486, COUNTER],
      [662, COUNTER],
    ],
  },
  {
    kind: "axis",
    points: [
      [526, AXLE],
      [990, AXLE],
    ],
  },
  {
    kind: "cable",
    points: [
      [282, MAIN - 104],
      [282, MAIN - 128],
      [891, MAIN - 128],
      [891, MAIN - 80],
    ],
  },
  {
    kind: "cable",
    points: [
      [778, MAIN - 85],
      [820, MAIN - 85],
      [820, MAIN - 52],
      [864, MAIN - 52],
    ],
  },
  {
    kind: "cable",
    points: [
      [918, MAIN - 52],
      [968, MAIN - 52],
    ],
  },
  {
    kind: "ground",
    points: [
      [884, AXLE + 79],
      [1010, AXLE + 79],
    ],
  },
];

/** Where the name of a part stands, its value a line under it: a place of the drawing, and text sizes below that. */
interface NamePlace {
  readonly part: VehiclePart;
  readonly x: number;
  readonly y: number;
  readonly lines: number;
}

/** Lines from a body's foot down to the name under it. */
const UNDER = 1.2;

/** Where the names of the parts stand: clear of the bodies at every size of the drawing. */
export const NAMES: readonly NamePlace[] = [
  { part: "engine", x: 96, y: MAIN + 104, lines: UNDER },
  { part: "sunMachine", x: 282, y: MAIN + 104, lines: UNDER },
  { part: "gearSet", x: 428, y: MAIN + 107, lines: UNDER },
  { part: "outputMachine", x: 760, y: MAIN + 104, lines: UNDER },
  { part: "finalDrive", x: 720, y: AXLE + 11, lines: UNDER },
  { part: "body", x: 1046, y: AXLE, lines: -0.4 },
  { part: "auxiliary", x: 891, y: MAIN - 24, lines: UNDER },
  { part: "battery", x: 1016, y: MAIN + 32, lines: UNDER },
];
