import { at } from "../../../shared/at.ts";
import { mpsToKmh, mpsToMph } from "../../../shared/units.ts";
import { frictionTorque } from "../../../sim/drivetrain/engine.ts";
import type { RunSettings } from "../../../sim/options.ts";
import type { Vehicle } from "../../../sim/parameters/schema.ts";
import type { RegimeFamily } from "../../../sim/run/regimes.ts";
import { outputTopSpeed } from "../../../sim/vehicle/figures.ts";
import {
  bestEfficiencyCurve,
  type Curve,
  engineEfficiencyMap,
  fullLoadCurve,
  machineEfficiencyMap,
  machineLimitCurve,
} from "../../../sim/vehicle/maps.ts";
import { traction } from "../../../sim/vehicle/traction.ts";
import { num, toShaftUnit, type Units } from "../../state/format.ts";
import type { Box, Measure, PlacedLabel } from "../../ui/labels.ts";
import { type ContourLevel, contourLines, levelsOf, type MapPoint } from "./contour-lines.ts";
import { bandOf, pathOf, type Spot, segmentsOf, spots } from "./draw.ts";
import { type AxisInput, type MapFrame, mapFrame } from "./frame.ts";
import type { MapId } from "./kinds.ts";
import { type LineLabel, labelLines } from "./line-labels.ts";

/** What a drawn map is made of: no point, no trail, nothing that moves. */
export interface MapLayout {
  readonly map: MapId;
  readonly frame: MapFrame;
  /** path that contours are cut to */
  readonly inside: string;
  readonly contours: readonly { readonly level: number; readonly best: boolean; readonly d: string }[];
  /** bold lines, and the hatched bands on their far side */
  readonly limits: readonly { readonly d: string; readonly band: string }[];
  /** a zone that is only passed through */
  readonly passed: string;
  readonly lines: readonly { readonly id: LineId; readonly d: string }[];
  readonly labels: readonly PlacedLabel[];
  /** what the marks of the cloud mean */
  readonly key: readonly KeyEntry[];
}

/** A mark and its word; the box holds both. */
export interface KeyEntry {
  readonly family: RegimeFamily;
  readonly box: Box;
}

/** Lines that are no limit. */
export type LineId = "best" | "friction" | "electric" | "regeneration" | "roadLoad";

/** Least and most speed, m/s, and force, N, that a run's rows reach at the wheels. */
export interface WheelExtent {
  readonly back: number;
  readonly least: number;
  readonly most: number;
}

export interface MapInput {
  readonly map: MapId;
  readonly vehicle: Vehicle;
  readonly settings: RunSettings;
  readonly extent: WheelExtent;
  readonly width: number;
  readonly height: number;
  readonly text: number;
  readonly units: Units;
  readonly measure: Measure;
  /** words along lines */
  readonly names: Readonly<Record<LineId, string>>;
  /** words of a cloud's marks; without them there is no key */
  readonly families?: Readonly<Record<RegimeFamily, string>>;
}

const curve = ({ x, y }: Curve): MapPoint[] => Array.from(x, (value, i) => [value, at(y, i)]);

const shaftAxis = (units: Units, least: number, most: number): AxisInput => ({
  least,
  most,
  perSi: toShaftUnit(units, 1),
  number: (value) => num(value),
});

const plainAxis = (least: number, most: number): AxisInput => ({
  least,
  most,
  perSi: 1,
  number: (value) => num(value),
});

const sized = ({ width, height, text, measure }: MapInput, x: AxisInput, y: AxisInput): MapFrame =>
  mapFrame({ width, height, text, x, y, measure });

const inkFrom = (level: number, levels: readonly number[]): boolean => levels.indexOf(level) < 2;

function contoursOf(frame: MapFrame, found: readonly ContourLevel[], levels: readonly number[]) {
  return found.map(({ level, lines }) => ({
    level,
    best: inkFrom(level, levels),
    d: lines.map((line) => pathOf(spots(frame, line))).join(""),
  }));
}

/** Every fourth place of a line, and its last: enough for labels to keep clear of it. */
const coarse = (line: readonly Spot[]): Spot[] => line.filter((_, i) => i % 4 === 0 || i === line.length - 1);

const percent = (level: number): string => `${num(level * 100)} %`;

function levelLabels(
  frame: MapFrame,
  found: readonly ContourLevel[],
  levels: readonly number[],
  shown: (point: MapPoint) => boolean,
): LineLabel[] {
  return [...found]
    .sort((a, b) => b.level - a.level)
    .map(({ level, lines }) => ({
      id: `level:${level}`,
      text: percent(level),
      weight: 40 - levels.indexOf(level),
      line: lines.flatMap((line) => spots(frame, line.filter(shown))),
    }));
}

function engineLayout(input: MapInput): MapLayout {
  const { engine } = input.vehicle;
  const full = curve(fullLoadCurve(engine));
  const peak = Math.max(...full.map(([, torque]) => torque));
  const friction = (speed: number): number => -frictionTorque(engine, speed);
  const frame = sized(
    input,
    shaftAxis(input.units, 0, engine.maxSpeed * 1.02),
    plainAxis(friction(engine.maxSpeed) * 1.15, peak * 1.1),
  );
  const grid = engineEfficiencyMap(engine);
  const levels = levelsOf(grid, "engine");
  const found = contourLines(grid, levels);
  const top = spots(frame, full);
  const foot = frame.y(0);
  const best = spots(frame, curve(bestEfficiencyCurve(engine)));
  const motored = spots(
    frame,
    full.map(([speed]): MapPoint => [speed, friction(speed)]),
  );
  const { box } = frame;
  const idle = frame.x(engine.idleSpeed);
  const under = ([speed, torque]: MapPoint): boolean => {
    const i = full.findIndex(([s]) => s >= speed);
    return torque > 4 && torque < (full[i]?.[1] ?? 0) * 0.98;
  };
  const end: Spot[] = [
    [frame.x(engine.maxSpeed), top.at(-1)?.[1] ?? box.y],
    [frame.x(engine.maxSpeed), frame.y(friction(engine.maxSpeed))],
  ];
  return {
    map: "engine",
    frame,
    inside: `${pathOf(top)}V${foot}H${idle}Z`,
    contours: contoursOf(frame, found, levels),
    limits: [
      { d: pathOf(top), band: bandOf(top, input.text) },
      { d: pathOf(end), band: "" },
    ],
    passed: `M${box.x} ${box.y}H${idle}V${box.y + box.height}H${box.x}Z`,
    lines: [
      { id: "best", d: pathOf(best) },
      { id: "friction", d: pathOf(motored) },
    ],
    key: [],
    labels: labelLines(
      levelLabels(frame, found, levels, under),
      {
        bounds: box,
        lines: [...segmentsOf(top), ...segmentsOf(coarse(best)), ...segmentsOf(end)],
        text: input.text,
      },
      input.measure,
    ),
  };
}

function machineLayout(input: MapInput, map: "sunMachine" | "outputMachine"): MapLayout {
  const machine = input.vehicle[map];
  const frame = sized(
    input,
    shaftAxis(input.units, -machine.maxSpeed * 1.06, machine.maxSpeed * 1.06),
    plainAxis(-machine.peakTorque * 1.14, machine.peakTorque * 1.14),
  );
  const grid = machineEfficiencyMap(machine);
  const levels = levelsOf(grid, "machine");
  const found = contourLines(grid, levels);
  const limit = curve(machineLimitCurve(machine));
  const upper = spots(frame, limit);
  const lower = spots(
    frame,
    limit.map(([speed, torque]): MapPoint => [speed, -torque]),
  ).reverse();
  const round: Spot[] = [...upper, ...lower];
  const first = round[0];
  const closed: Spot[] = first ? [...round, first] : round;
  const within = ([speed, torque]: MapPoint): boolean => {
    const i = limit.findIndex(([s]) => s >= speed);
    return Math.abs(torque) < (limit[i]?.[1] ?? 0) * 0.96 && Math.abs(speed) < machine.maxSpeed * 0.98;
  };
  return {
    map,
    frame,
    inside: `${pathOf(round)}Z`,
    contours: contoursOf(frame, found, levels),
    limits: [{ d: `${pathOf(round)}Z`, band: bandOf(closed, input.text * 0.7) }],
    passed: "",
    lines: [],
    key: [],
    labels: labelLines(
      levelLabels(frame, found, levels, within),
      {
        bounds: frame.box,
        lines: [
          ...segmentsOf(closed),
          { x1: frame.box.x, x2: frame.box.x + frame.box.width, y1: frame.y(0), y2: frame.y(0) },
          { y1: frame.box.y, y2: frame.box.y + frame.box.height, x1: frame.x(0), x2: frame.x(0) },
        ],
        text: input.text,
      },
      input.measure,
    ),
  };
}

/** Families told in the key; those at rest lie on the axis and need no word. */
const KEYED: readonly RegimeFamily[] = ["engine", "electric", "braking"];

/** The key in one row at the upper right, where no vehicle reaches. */
function keyOf({ box }: MapFrame, { text, families, measure }: MapInput): KeyEntry[] {
  if (!families) return [];
  const wide = KEYED.map((family) => text * 1.1 + measure(families[family], text));
  const gap = text * 0.8;
  let x = box.x + box.width - wide.reduce((sum, width) => sum + width, 0) - gap * (KEYED.length - 1);
  return KEYED.map((family, i) => {
    const own = { x, y: box.y - text * 0.15, width: wide[i] ?? 0, height: text };
    x += own.width + gap;
    return { family, box: own };
  });
}

/** Road speeds at which the wheels' limits are found. */
const SPEEDS = 49;

function wheelLayout(input: MapInput): MapLayout {
  const { vehicle, settings, units, extent, text } = input;
  const top = outputTopSpeed(vehicle);
  const limits = traction(vehicle, settings);
  const over = (value: (speed: number) => number): MapPoint[] =>
    Array.from({ length: SPEEDS }, (_, i): MapPoint => {
      const speed = (top * i) / (SPEEDS - 1);
      return [speed, value(speed)];
    });
  const most = over((speed) => limits.most(speed));
  const taken = over((speed) => limits.regeneration(speed)).filter(
    ([speed]) => speed >= vehicle.control.fadeStart,
  );
  const toRoad = units.road === "kmh" ? mpsToKmh : mpsToMph;
  // In a narrow box the key reaches over the greatest force: room for it above.
  const room = input.width < text * 20 ? 1.45 : 1.12;
  const high = Math.max(extent.most, ...most.map(([, force]) => force)) * room;
  const low = Math.min(extent.least, ...taken.map(([, force]) => force)) * 1.08;
  const frame = sized(
    input,
    {
      least: Math.min(0, extent.back * 1.1),
      most: top * 1.02,
      perSi: toRoad(1),
      number: (value) => num(value),
    },
    plainAxis(low, high),
  );
  const upper = spots(frame, most);
  const named: readonly (readonly [LineId, Spot[]])[] = [
    [
      "electric",
      spots(
        frame,
        over((speed) => limits.electric(speed)),
      ),
    ],
    ["regeneration", spots(frame, taken)],
    [
      "roadLoad",
      spots(
        frame,
        over((speed) => limits.roadLoad(speed)),
      ),
    ],
  ];
  const { box } = frame;
  const key = keyOf(frame, input);
  return {
    map: "wheels",
    key,
    frame,
    inside: "",
    contours: [],
    limits: [{ d: pathOf(upper), band: bandOf(upper, text) }],
    passed: "",
    lines: named.map(([id, line]) => ({ id, d: pathOf(line) })),
    labels: labelLines(
      named.map(([id, line], i) => ({
        id: `line:${id}`,
        text: input.names[id],
        weight: 20 - i,
        line: line.slice(Math.floor(line.length * 0.35)),
        beside: true,
      })),
      {
        bounds: box,
        lines: [
          ...segmentsOf(upper),
          ...named.flatMap(([, line]) => segmentsOf(line)),
          { x1: box.x, x2: box.x + box.width, y1: frame.y(0), y2: frame.y(0) },
        ],
        boxes: key.map((entry) => entry.box),
        text,
      },
      input.measure,
    ),
  };
}

/** Everything of a map that does not move, for a size: contours, limits, lines and where their labels stand. */
export function mapLayout(input: MapInput): MapLayout {
  if (input.map === "engine") return engineLayout(input);
  return input.map === "wheels" ? wheelLayout(input) : machineLayout(input, input.map);
}
