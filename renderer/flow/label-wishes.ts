import type { BenchFlows } from "../../sim/bench/bench.ts";
import { kilowatts, num } from "../state/format.ts";
import { t } from "../texts/catalogue.ts";
import {
  type Anchor,
  type Box,
  type LabelWish,
  type Measure,
  type Place,
  placeLabels,
  type Segment,
} from "../ui/labels.ts";
import { NOTHING } from "./divide.ts";
import type { FlowLayout, NodeId, Ribbon, RibbonId } from "./layout.ts";

/** What the labels say beside the powers. */
export interface FlowNumbers {
  readonly flows: BenchFlows;
  readonly shares: { readonly electrical: number; readonly mechanical: number } | null;
  readonly height: number;
  readonly width: number;
}

const at = (x: number, y: number, anchor: Anchor = "middle"): Place => ({ x, y, anchor });
const label = (
  id: string,
  text: string,
  size: number,
  weight: number,
  places: readonly Place[],
): LabelWish => ({
  id,
  text,
  size,
  weight,
  places,
  droppable: weight < 50,
});

const active = (power: number): boolean => Math.abs(power) > NOTHING;

/** Two words for a machine: it generates, drives, or idles. */
const machineWord = (generates: number): string =>
  !active(generates) ? t.flow.idle : generates > 0 ? t.flow.generating : t.flow.driving;

function upperNames(l: FlowLayout, { flows }: FlowNumbers): LabelWish[] {
  const y = l.upper + l.text * 1.2;
  // Beside the ribbons that come up on the left and go down on the right.
  const two = (id: NodeId, name: string, word: string): LabelWish[] => {
    const inward = id === "sunMachine" ? 1 : -1;
    const x = l.at(id) - inward * l.text * 0.9;
    const anchor = inward > 0 ? "start" : "end";
    return [
      label(`node:${id}`, name, l.text, 90, [at(x, y, anchor)]),
      label(`word:${id}`, word, l.text, 45, [at(x, y + l.text * 1.15, anchor)]),
    ];
  };
  return [
    ...two("sunMachine", t.flow.sunMachine, machineWord(flows.sun)),
    label("node:dcLink", t.flow.dcLink, l.text, 90, [at(l.at("dcLink"), y)]),
    ...two("outputMachine", t.flow.outputMachine, machineWord(-flows.outputMachine)),
  ];
}

function battery(l: FlowLayout, { flows }: FlowNumbers): LabelWish[] {
  const bar = l.bars.find((one) => one.id === "battery");
  if (!bar) return [];
  const word = flows.battery > 0 ? t.flow.giving : t.flow.charging;
  const x = l.at("battery") - 10;
  const y = bar.y + bar.height / 2 + l.text * 0.35;
  return [
    label("node:battery", t.flow.battery, l.text, 88, [at(x, y - l.text * 0.5, "end"), at(x, y, "end")]),
    label("word:battery", word, l.text, 45, [at(x, y + l.text * 0.65, "end")]),
  ];
}

function lowerNames(l: FlowLayout, { flows, shares, height }: FlowNumbers): LabelWish[] {
  const top = (id: NodeId): number => l.bars.find((bar) => bar.id === id)?.y ?? l.lower;
  const foot = height - l.text * 0.25;
  const middle = (id: NodeId): number => {
    const bar = l.bars.find((one) => one.id === id);
    return bar ? bar.y + bar.height / 2 + l.text * 0.35 : l.lower;
  };
  const source = flows.engine < -NOTHING ? t.flow.motored : t.flow.byHand;
  const sink = flows.output < -NOTHING ? t.flow.pushed : t.flow.brake;
  const share = shares && t.flow.shares(num(shares.electrical * 100), num(shares.mechanical * 100));
  const gear = l.at("gearSet");
  return [
    label("node:engine", t.flow.engine, l.text, 90, [at(l.at("engine"), top("engine") - l.text * 0.55)]),
    label("word:source", source, l.text, 45, [at(l.at("engine") - 10, middle("engine"), "end")]),
    label("node:gearSet", t.flow.gearSet, l.text, 90, [at(gear, foot)]),
    ...(share ? [label("electrical", share, l.text, 80, [at(gear + l.text * 2.4, foot, "start")])] : []),
    label("node:ring", t.flow.ring, l.text, 90, [at(l.at("ring"), foot)]),
    label("node:output", t.flow.output, l.text, 90, [at(l.at("output"), foot)]),
    label("word:sink", sink, l.text, 45, [at(l.at("output") + 10, middle("output"), "start")]),
  ];
}

/** Places of a ribbon's value: above it, then below, then beside. */
function valuePlaces(ribbon: Ribbon, l: FlowLayout): Place[] {
  const { mark, width } = ribbon;
  const above = mark.y - width / 2 - l.text * 0.4;
  const below = mark.y + width / 2 + l.text * 1.05;
  const steep = width * 0.6 + l.text * 1.05;
  const mid = (id: NodeId, other: NodeId): number => (l.at(id) + l.at(other)) / 2;
  switch (ribbon.id) {
    case "sun":
      return [
        at(mark.x - steep, mark.y - l.text * 0.1, "end"),
        at(mark.x - steep, mark.y - l.text * 1.1, "end"),
      ];
    case "outputMachine":
      return [
        at(mark.x + steep, mark.y - l.text * 0.1, "start"),
        at(mark.x + steep, mark.y - l.text * 1.1, "start"),
      ];
    case "sunOver":
      return [
        at(mid("gearSet", "sunMachine"), l.upper - width - l.text * 0.4),
        at(mid("gearSet", "sunMachine"), l.upper + l.text * 1.05),
      ];
    case "outputMachineOver":
      return [
        at(mid("outputMachine", "ring"), l.upper - width - l.text * 0.4),
        at(mid("outputMachine", "ring"), l.upper + l.text * 1.05),
      ];
    case "mechanical":
      return [0, 3, 6].map((right) =>
        at(mid("dcLink", "outputMachine") + l.text * (right - 2), l.lower + l.text * 1.1, "end"),
      );
    case "battery":
    case "batteryOver":
      return [at(mid("battery", "sunMachine"), above), at(mid("battery", "sunMachine"), below)];
    case "sunLink":
      return [at(mark.x, above), at(mark.x, below), at(mark.x, l.upper + l.text * 2.3)];
    default:
      return [at(mark.x, above), at(mark.x, below)];
  }
}

/** Whose number a ribbon's value is, in colour. */
export const COLOUR_OF: Readonly<Record<RibbonId, "carrier" | "sun" | "ring" | "battery">> = {
  engine: "carrier",
  sun: "sun",
  sunOver: "sun",
  sunLink: "sun",
  battery: "battery",
  batteryOver: "battery",
  outputLink: "ring",
  outputMachine: "ring",
  outputMachineOver: "ring",
  mechanical: "ring",
  output: "ring",
};

function values(l: FlowLayout): LabelWish[] {
  const found = l.ribbons.map((ribbon) => {
    const shown = ribbon.power < 50 ? "< 0.1" : kilowatts(ribbon.power);
    return label(`value:${ribbon.id}`, shown, l.text, 70, valuePlaces(ribbon, l));
  });
  const mechanical = l.ribbons.some((ribbon) => ribbon.id === "mechanical");
  const x = (l.at("dcLink") + l.at("outputMachine")) / 2 - l.text * 1.6;
  const path = label(
    "path",
    t.flow.mechanicalPath,
    l.text,
    46,
    [0, 3, 6].map((right) => at(x + l.text * right, l.lower + l.text * 1.1, "start")),
  );
  return mechanical ? [...found, path] : found;
}

function circulating(l: FlowLayout): LabelWish[] {
  if (l.circulating <= NOTHING) return [];
  const y = l.upper + l.text * 1.2;
  return [
    label("loop", t.flow.circulating, l.text, 60, [
      at(l.at("gearSet") + l.text, y, "start"),
      at(l.at("dcLink"), y + l.text * 1.15),
    ]),
  ];
}

const CURVED: ReadonlySet<RibbonId> = new Set(["sun", "outputMachine", "sunOver", "outputMachineOver"]);

/** Every third piece of a curved ribbon's middle: close enough for a text. */
function linesOf({ id, middle }: Ribbon): Segment[] {
  if (!CURVED.has(id)) return [];
  const points = middle.filter((_, i) => i % 3 === 0);
  return points.slice(1).map(([x2, y2], i) => {
    const [x1, y1] = points[i] ?? [x2, y2];
    return { x1, y1, x2, y2 };
  });
}

/** Box about a ribbon that is nearly level; steep ones are left to the places of their own labels. */
function boxesOf({ id, outline }: Ribbon): Box[] {
  if (CURVED.has(id)) return [];
  const xs = outline.map(([x]) => x);
  const ys = outline.map(([, y]) => y);
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return [{ x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y }];
}

/** Every text of the sheet in its place. */
export function flowLabels(l: FlowLayout, numbers: FlowNumbers, measure: Measure) {
  const bars: Box[] = l.bars.map(({ x, y, height }) => ({
    x: x - 3,
    y: y - 2,
    width: 6,
    height: height + 4,
  }));
  const obstacles = {
    boxes: [...bars, ...l.ribbons.flatMap(boxesOf)],
    lines: l.ribbons.flatMap(linesOf),
    bounds: { x: 0, y: -l.text * 0.4, width: numbers.width, height: numbers.height + l.text * 0.6 },
  };
  const wishes = [
    ...upperNames(l, numbers),
    ...lowerNames(l, numbers),
    ...battery(l, numbers),
    ...values(l),
    ...circulating(l),
  ];
  return placeLabels(wishes, obstacles, measure);
}
