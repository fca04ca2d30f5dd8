import { SHAFTS, type Shaft } from "../../sim/bench/shafts.ts";
import {
  type Box,
  type LabelWish,
  type Place,
  type PlacedLabel,
  placeLabels,
  type Segment,
} from "../ui/labels.ts";
import type { Axis, Block, LeverFrame, LeverInput, TorqueArrow } from "./layout.ts";

interface Parts {
  readonly axes: readonly Axis[];
  readonly blocks: readonly Block[];
  readonly hero: Segment;
  readonly arrows: readonly TorqueArrow[];
  readonly ticks: readonly number[];
  readonly radius: number;
}

/** Order of importance where labels want the same place: name, speed, torque, limit, tick. */
const WEIGHT = {
  name: 110,
  unit: 105,
  speed: 100,
  dim: 102,
  torque: 90,
  limit: 50,
  idle: 40,
  never: 30,
  tick: 10,
};

const wish = (
  id: string,
  text: string,
  size: number,
  weight: number,
  places: readonly Place[],
): LabelWish => ({ id, text, size, weight, places, droppable: weight < WEIGHT.torque });

function names(input: LeverInput, frame: LeverFrame): LabelWish[] {
  const { text, nameSize, texts } = input;
  const subs = texts.subs;
  const y = frame.top - text * (subs ? 1.75 : 1.35);
  // Close together, the carrier's name gives way to the left, so that the two do not read as one.
  const tight = frame.x.ring - frame.x.carrier < nameSize * 3.2;
  const wishes = SHAFTS.map((shaft) => {
    const at: Place = { x: frame.x[shaft], y, anchor: "middle" };
    const aside: Place =
      shaft === "ring"
        ? { ...at, x: at.x - text * 0.7, anchor: "start" }
        : { ...at, x: at.x + text, anchor: "end" };
    const beside: Place = { ...aside, x: at.x };
    const places = tight && shaft === "carrier" ? [aside, at, beside] : [at, aside, beside];
    return wish(`name:${shaft}`, texts.names[shaft], nameSize, WEIGHT.name, places);
  });
  const unit = wish("unit", texts.unit, text, WEIGHT.unit, [
    { x: frame.left - 8, y, anchor: "end" },
    { x: 0, y, anchor: "start" },
  ]);
  const second = SHAFTS.flatMap((shaft) =>
    subs
      ? [
          wish(`sub:${shaft}`, subs[shaft], text, WEIGHT.unit - 1, [
            { x: frame.x[shaft], y: frame.top - text * 0.55, anchor: "middle" },
          ]),
        ]
      : [],
  );
  return [...wishes, unit, ...second];
}

/** Right above, right below, left above, left below a handle: the side that the line leaves open comes first. */
function around(x: number, y: number, radius: number, size: number, lift: number): Place[] {
  const gap = radius + 9;
  const below = y + radius + size * 0.72;
  const above = y - lift;
  return [
    { x: x + gap, y: above, anchor: "start" },
    { x: x + gap, y: below, anchor: "start" },
    { x: x - gap, y: above, anchor: "end" },
    { x: x - gap, y: below, anchor: "end" },
    { x: x + gap + size * 1.2, y: above, anchor: "start" },
    { x: x + gap + size * 1.2, y: below, anchor: "start" },
    { x: x + gap, y: above - size * 0.8, anchor: "start" },
    { x: x + gap, y: below + size * 0.8, anchor: "start" },
  ];
}

function speeds(input: LeverInput, frame: LeverFrame, { radius }: Parts): LabelWish[] {
  const lifts: Readonly<Record<Shaft, number>> = { sun: radius + 4, carrier: radius + 7, ring: 10 };
  const inside = (value: number): number => Math.min(input.scale.high, Math.max(input.scale.low, value));
  return SHAFTS.map((shaft) => {
    const value = input.speeds[shaft];
    const places = around(frame.x[shaft], frame.y(inside(value)), radius, input.speedSize, lifts[shaft]);
    return wish(`speed:${shaft}`, input.texts.number(value), input.speedSize, WEIGHT.speed, places);
  });
}

function torques(input: LeverInput, { arrows }: Parts): LabelWish[] {
  const { text, texts } = input;
  return arrows.flatMap(({ shaft, x, from, to, half }) => {
    const value = input.torques?.[shaft] ?? 0;
    const down = to > from;
    const tip = to + (down ? text * 0.2 : text * 0.4);
    const beyond = down ? to + text * 1.1 : to - text * 0.4;
    const mid = from + (to - from) * 0.62;
    const right = (y: number): Place => ({ x: x + half * 2 + 6, y, anchor: "start" });
    const left = (y: number): Place => ({ x: x - half * 2 - 6, y, anchor: "end" });
    // A short arrow has its label beyond the line, on either side.
    const clear = [right(from - text * 1.7), right(from + text * 2.3), left(from + text * 2.3)];
    const under: Place = { x: x - half * 2, y: beyond, anchor: "start" };
    const lists: Readonly<Record<Shaft, Place[]>> = {
      sun: [under, right(tip), right(mid), right(beyond), right(beyond + text), left(beyond), left(mid)],
      carrier: [left(mid), left(tip), left(beyond), { x, y: beyond, anchor: "middle" }, right(beyond)],
      ring: [right(tip), right(mid), right(beyond), right(beyond + text), under, left(beyond)],
    };
    return [wish(`torque:${shaft}`, texts.torque(value), text, WEIGHT.torque, [...lists[shaft], ...clear])];
  });
}

function limits(input: LeverInput, { blocks, axes }: Parts): LabelWish[] {
  const { text, texts } = input;
  const beside = (block: Block, y: number): Place[] => [
    { x: block.x + block.width + 8, y, anchor: "start" },
    { x: block.x - 8, y, anchor: "end" },
  ];
  const wishes = blocks.map((block) => {
    const { shaft, end, kind, bar } = block;
    if (kind === "below") {
      const places = [...beside(block, bar + text * 0.05)].reverse();
      return wish("idle", texts.idle(texts.number(input.idle)), text, WEIGHT.idle, places);
    }
    const never = shaft === "carrier" && end === "least";
    const y = never ? bar + text * 1.15 : bar + text * (shaft !== "sun" && end === "most" ? -0.25 : 0.35);
    const label = never ? texts.never : texts.number(input.limits[shaft][end]);
    return wish(`limit:${shaft}:${end}`, label, text, never ? WEIGHT.never : WEIGHT.limit, beside(block, y));
  });
  const onward = axes
    .filter((axis) => axis.goesOn)
    .map(({ shaft, x, y2 }) => {
      const label = texts.to(texts.number(input.limits[shaft].least));
      return wish(`to:${shaft}`, label, text, WEIGHT.limit, [
        { x: x - 13, y: y2 + text * 0.55, anchor: "end" },
      ]);
    });
  return [...wishes, ...onward];
}

function ticks(input: LeverInput, frame: LeverFrame, parts: Parts): LabelWish[] {
  const { text, texts } = input;
  return [0, ...parts.ticks].map((value) =>
    wish(`tick:${value}`, texts.number(value), text, value === 0 ? WEIGHT.dim : WEIGHT.tick, [
      { x: frame.left - 8, y: frame.y(value) + text * 0.35, anchor: "end" },
    ]),
  );
}

function dimensions(input: LeverInput, frame: LeverFrame): LabelWish[] {
  const y = dimensionY(input) - 5;
  const between = (a: Shaft, b: Shaft): Place => ({ x: (frame.x[a] + frame.x[b]) / 2, y, anchor: "middle" });
  const [long, short] = input.texts.teeth;
  return [
    wish("dim:k", long, input.text, WEIGHT.dim, [between("sun", "carrier")]),
    wish("dim:1", short, input.text, WEIGHT.dim, [between("carrier", "ring")]),
  ];
}

/** y of the dimension line at the foot. */
export const dimensionY = ({ height, text }: LeverInput): number => height - text * 1.15;

/** Every text of the drawing in its place, none over another. */
export function leverLabels(input: LeverInput, frame: LeverFrame, parts: Parts): readonly PlacedLabel[] {
  const { radius, arrows, blocks, hero } = parts;
  const inside = (value: number): number => Math.min(input.scale.high, Math.max(input.scale.low, value));
  const handles: Box[] = SHAFTS.map((shaft) => ({
    x: frame.x[shaft] - radius - 2,
    y: frame.y(inside(input.speeds[shaft])) - radius - 2,
    width: 2 * radius + 4,
    height: 2 * radius + 4,
  }));
  const shafts: Box[] = arrows.map(({ x, from, to, half }) => ({
    x: x - 2 * half,
    y: Math.min(from, to),
    width: 4 * half,
    height: Math.abs(to - from),
  }));
  const obstacles = {
    boxes: [...handles, ...shafts, ...blocks],
    lines: [hero],
    bounds: { x: 0, y: 0, width: input.width, height: input.height },
  };
  const wishes = [
    ...names(input, frame),
    ...speeds(input, frame, parts),
    ...torques(input, parts),
    ...limits(input, parts),
    ...ticks(input, frame, parts),
    ...dimensions(input, frame),
  ];
  return placeLabels(wishes, obstacles, input.measure);
}
