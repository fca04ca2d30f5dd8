import type { BenchFlows } from "../../sim/bench/bench.ts";
import { type Divided, divide, NOTHING, size, stepOver } from "./divide.ts";
import { type Knot, markOf, middleOf, outlineOf } from "./ribbon.ts";

/** The bars of the sheet, from the engine to the output. */
export type NodeId =
  | "engine"
  | "gearSet"
  | "sunMachine"
  | "battery"
  | "dcLink"
  | "outputMachine"
  | "ring"
  | "output";

/** The ribbons between them; "over" ones turn round above a bar and come in from its other side. */
export type RibbonId =
  | "engine"
  | "sun"
  | "sunOver"
  | "sunLink"
  | "battery"
  | "batteryOver"
  | "outputLink"
  | "outputMachine"
  | "outputMachineOver"
  | "mechanical"
  | "output";

export interface Ribbon {
  readonly id: RibbonId;
  /** W, always positive */
  readonly power: number;
  readonly width: number;
  /** its middle line and its outline, px */
  readonly middle: readonly (readonly [number, number])[];
  readonly outline: readonly (readonly [number, number])[];
  /** middle of the ribbon and its direction there in degrees, the way the power runs */
  readonly mark: { readonly x: number; readonly y: number; readonly angle: number };
  readonly loop: boolean;
}

export interface Bar {
  readonly id: NodeId;
  readonly x: number;
  readonly y: number;
  readonly height: number;
}

export interface FlowSheetInput {
  readonly width: number;
  readonly height: number;
  /** text size, px */
  readonly text: number;
  readonly flows: BenchFlows;
}

/** A ribbon is never thinner than this, px. */
const THINNEST = 1.2;

/** Gap between a ribbon that turns round and the one below it, px. */
const GAP = 7;

interface Lanes {
  readonly perWatt: number;
  /** foot of the upper and of the lower lane */
  readonly upper: number;
  readonly lower: number;
}

/** Thickness that a ribbon between the lanes can bend with, as a share of the sheet's width. */
const BENDS = 0.075;

/** Height that the drawing takes of a taller view, as a share of its width: beyond it ribbons would stand upright. */
export const TALLEST = 0.36;

/** px a watt so that the fuller lane fits, and where the lanes stand: they never move. */
function lanesOf({ width, height, text, flows }: FlowSheetInput, over: Divided): Lanes {
  const room = height - text * 4.9;
  const high = Math.max(size(flows.sun) + size(flows.battery), size(flows.outputMachine));
  const low = Math.max(
    size(flows.engine) + over.sunOver,
    size(flows.ring),
    size(flows.output) + over.outputOver,
  );
  const turns = over.batteryOver > NOTHING ? GAP : 0;
  const curved = Math.max(size(flows.sun), size(flows.outputMachine), NOTHING);
  const perWatt = Math.min(
    (0.43 * room - turns) / stepOver(high),
    (0.57 * room) / stepOver(low),
    (BENDS * width) / curved,
  );
  return { perWatt, upper: text * 1.15 + 0.43 * room, lower: height - text * 1.35 };
}

const PLACES: Readonly<Record<NodeId, number>> = {
  engine: 0.075,
  gearSet: 0.25,
  battery: 0.285,
  sunMachine: 0.4,
  dcLink: 0.54,
  outputMachine: 0.68,
  ring: 0.82,
  output: 0.945,
};

/** Thickness of every ribbon, px. */
function thicknesses(f: BenchFlows, over: Divided, perWatt: number) {
  const px = (power: number): number =>
    size(power) > NOTHING ? Math.max(THINNEST, size(power) * perWatt) : 0;
  return {
    engine: px(f.engine),
    sun: px(f.sun),
    sunIn: px(size(f.sun) - over.sunOver),
    sunOver: px(over.sunOver),
    out: px(f.outputMachine),
    outIn: px(size(f.outputMachine) - over.outputOver),
    outOver: px(over.outputOver),
    batteryIn: px(size(f.battery) - over.batteryOver),
    batteryOver: px(over.batteryOver),
    ring: px(f.ring),
    output: px(f.output),
  };
}

type Thick = ReturnType<typeof thicknesses>;

function barsOf(h: Thick, { upper, lower }: Lanes, at: (id: NodeId) => number): Bar[] {
  const bar = (id: NodeId, foot: number, height: number): Bar => ({
    id,
    x: at(id),
    y: foot - height,
    height,
  });
  const inset = h.batteryOver > 0 && h.batteryIn + h.sun > 0 ? GAP : 0;
  const battery = h.batteryIn + h.batteryOver + (h.batteryIn > 0 ? inset : 0);
  const bars = [
    bar("engine", lower, h.engine),
    bar("gearSet", lower, Math.max(h.engine + h.sunOver, h.sunIn + h.ring)),
    bar("sunMachine", upper, h.sun),
    bar("dcLink", upper, Math.max(h.sun + h.batteryIn, h.out + h.batteryOver)),
    bar("outputMachine", upper, h.out),
    bar("ring", lower, Math.max(h.ring + h.outIn, h.output + h.outOver)),
    bar("output", lower, h.output),
  ];
  if (battery === 0) return bars;
  const foot = upper - h.sun - (h.batteryIn > 0 ? 0 : inset);
  // The battery's ribbon runs where an idle sun machine's mark would be.
  const seen = h.sun > 0 ? bars : bars.filter(({ id }) => id !== "sunMachine");
  return [...seen, bar("battery", foot, battery)];
}

interface Course {
  readonly id: RibbonId;
  /** W, signed as the knots run */
  readonly power: number;
  readonly knots: readonly Knot[];
  /** belongs to the loop when power circulates */
  readonly round: boolean;
}

const right = (x: number, y: number): Knot => ({ x, y, way: 1 });
const left = (x: number, y: number): Knot => ({ x, y, way: -1 });

/** Where every ribbon runs, along its middle. */
function coursesOf(
  f: BenchFlows,
  over: Divided,
  h: Thick,
  lanes: Lanes,
  at: (id: NodeId) => number,
): Course[] {
  const { upper, lower } = lanes;
  const part = (power: number, over: number): number => (size(power) - over) * Math.sign(power);
  const whole = (power: number, over: number): number => over * Math.sign(power);
  const flat = (a: NodeId, b: NodeId, y: number) => [right(at(a), y), right(at(b), y)];
  const sunY = upper - h.sunOver / 2;
  const outY = upper - h.outOver / 2;
  const inY = upper - h.sun - h.batteryIn / 2;
  const overY = upper - h.sun - h.batteryIn - GAP - h.batteryOver / 2;
  const course = (id: RibbonId, power: number, knots: readonly Knot[], round = false): Course => ({
    id,
    power,
    knots,
    round,
  });
  return [
    course("engine", f.engine, flat("engine", "gearSet", lower - h.engine / 2)),
    course("mechanical", f.ring, flat("gearSet", "ring", lower - h.ring / 2), true),
    course("output", f.output, flat("ring", "output", lower - h.output / 2)),
    course("sun", part(f.sun, over.sunOver), [
      right(at("gearSet"), lower - h.ring - h.sunIn / 2),
      right(at("sunMachine"), upper - h.sun + h.sunIn / 2),
    ]),
    course(
      "sunOver",
      whole(f.sun, over.sunOver),
      [
        left(at("gearSet"), lower - h.engine - h.sunOver / 2),
        right(at("gearSet"), sunY),
        right(at("sunMachine"), sunY),
      ],
      true,
    ),
    course("sunLink", f.sun, flat("sunMachine", "dcLink", upper - h.sun / 2), true),
    course("outputLink", f.outputMachine, flat("dcLink", "outputMachine", upper - h.out / 2), true),
    course("outputMachine", part(f.outputMachine, over.outputOver), [
      right(at("outputMachine"), upper - h.out + h.outIn / 2),
      right(at("ring"), lower - h.ring - h.outIn / 2),
    ]),
    course(
      "outputMachineOver",
      whole(f.outputMachine, over.outputOver),
      [
        right(at("outputMachine"), outY),
        right(at("ring"), outY),
        left(at("ring"), lower - h.output - h.outOver / 2),
      ],
      true,
    ),
    course("battery", part(f.battery, over.batteryOver), flat("battery", "dcLink", inY)),
    course("batteryOver", whole(f.battery, over.batteryOver), [
      right(at("battery"), overY),
      right(at("dcLink"), overY),
      left(at("dcLink"), upper - h.out - h.batteryOver / 2),
    ]),
  ];
}

function ribbonOf({ id, power, knots, round }: Course, perWatt: number, loop: boolean): Ribbon {
  const middle = middleOf(knots);
  const width = Math.max(THINNEST, size(power) * perWatt);
  return {
    id,
    power: size(power),
    width,
    middle,
    outline: outlineOf(middle, width),
    mark: markOf(middle, power < 0),
    loop: loop && round,
  };
}

/** The sheet as numbers: bars, ribbons with outlines, the scale. */
export function flowLayout(input: FlowSheetInput) {
  const { width, text, flows } = input;
  const over = divide(flows);
  const lanes = lanesOf(input, over);
  const h = thicknesses(flows, over, lanes.perWatt);
  const at = (id: NodeId): number => width * PLACES[id];
  const loop = over.sunOver > NOTHING && over.outputOver > NOTHING;
  const ribbons = coursesOf(flows, over, h, lanes, at)
    .filter((course) => size(course.power) > NOTHING)
    .map((course) => ribbonOf(course, lanes.perWatt, loop));
  const circulating = loop ? Math.min(over.sunOver, over.outputOver) : 0;
  return { bars: barsOf(h, lanes, at), ribbons, at, ...lanes, text, circulating };
}

export type FlowLayout = ReturnType<typeof flowLayout>;
