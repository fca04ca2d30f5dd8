import type { CycleInfo } from "../../../cycles/catalogue.ts";
import type { CompositeTest } from "../../../cycles/composite/registry.ts";
import { rangeText } from "../../../cycles/manoeuvres/grammar.ts";
import type { Manoeuvre } from "../../../cycles/manoeuvres/parameter.ts";
import { type CycleStatistics, phaseStatistics, statistics } from "../../../cycles/statistics/basics.ts";
import { drivingDynamics } from "../../../cycles/statistics/on-road.ts";
import type { CycleTrace } from "../../../shared/cycle.ts";
import { clock, columns, digits, fixed, labelled, section, wrap } from "./text.ts";
import { percent, type ReportUnits } from "./units.ts";

/** A cycle with what is known about it. */
export interface ShownCycle {
  readonly trace: CycleTrace;
  /** Catalogue entry; null for a file. */
  readonly info: CycleInfo | null;
  /** Definition of an own manoeuvre; null for everything else. */
  readonly manoeuvre: Manoeuvre | null;
  /** What a person may want to know of the file, one sentence each. */
  readonly notes: readonly string[];
}

/** A cycle as a table to read: source, statistics, phases, parameters. */
export function cycleReport(shown: ShownCycle, units: ReportUnits): string {
  const { trace, info, manoeuvre, notes } = shown;
  return [
    ...wrap(`${trace.title} (${trace.id})`),
    ...wrap(trace.source),
    ...(info?.unit ? [`published in ${info.unit}, one sample a second`] : []),
    ...(info?.standing ? wrap(info.standing) : []),
    ...[...trace.treatment, ...notes].flatMap((sentence) => wrap(sentence)),
    ...section("figures", figureLines(trace, units)),
    ...section("phases", phaseLines(trace, units)),
    ...(manoeuvre ? manoeuvreLines(manoeuvre) : []),
    "",
  ].join("\n");
}

function figureLines(trace: CycleTrace, units: ReportUnits): string[] {
  const s = statistics(trace);
  const { traction } = s.demand;
  const brisk = drivingDynamics(trace).brisk95;
  return columns(
    [
      ["time", `${clock(s.duration)} (${digits(s.duration, 7)} s)`],
      ...(s.drivingTime < s.duration ? [["time without soaks", clock(s.drivingTime)]] : []),
      ["distance", units.distance(s.distance)],
      ["mean speed", `${units.speed(s.meanSpeed)}, moving ${units.speed(s.meanMovingSpeed)}`],
      ["greatest speed", units.speed(s.maxSpeed)],
      ["strongest rise and fall", `${fixed(s.maxAcceleration, 2)} and ${fixed(s.maxDeceleration, 2)} m/s²`],
      ["at rest", `${fixed(s.restTime, 0)} s, ${percent(s.restShare)}`],
      ["stops", String(s.stops)],
      ["relative positive acceleration", `${fixed(s.relativePositiveAcceleration, 4)} m/s²`],
      ["speed × acceleration, 95th percentile", `${fixed(brisk, 2)} m²/s³`],
      [
        "demand in traction",
        `air ${fixed(traction.air, 1)} m²/s², rolling ${fixed(traction.rolling, 3)}, inertia ${fixed(traction.inertia, 4)} m/s²`,
      ],
    ],
    "ll",
  );
}

function phaseLines(trace: CycleTrace, units: ReportUnits): string[] {
  if (trace.phases.length === 0) return [];
  const row = (title: string, s: CycleStatistics): string[] => [
    title,
    clock(s.duration),
    units.distance(s.distance),
    units.speed(s.meanSpeed),
    units.speed(s.maxSpeed),
  ];
  const rows = phaseStatistics(trace).map(({ phase, statistics: s }) => row(phase.title, s));
  return columns([["", "time", "distance", "mean speed", "greatest"], ...rows], "lrrrr");
}

function manoeuvreLines(manoeuvre: Manoeuvre): string[] {
  const rows = Object.entries(manoeuvre.parameters).map(([key, p]) => [
    key,
    `${p.default} ${p.unit}`.trimEnd(),
    rangeText(p),
    p.meaning,
  ]);
  const [first] = Object.entries(manoeuvre.parameters);
  const example = first ? `:${first[0]}=${first[1].default}${first[1].unit}` : "";
  return [
    ...section("this manoeuvre", wrap(manoeuvre.summary)),
    ...section("parameters", columns([["", "default", "range", ""], ...rows], "lrll")),
    ...section("written as", [`--cycle "${manoeuvre.id}${example}"`]),
  ];
}

/** A test made of several drives. */
export function testText(test: CompositeTest): string {
  const parts = test.parts.map((part) => [
    part.title,
    part.cycle,
    `weight ${fixed(part.weight, 2)}`,
    part.coldStart ? "cold start" : "warm",
  ]);
  return [
    ...wrap(`${test.title} (${test.id})`),
    ...labelled("source", test.publishedIn, 8),
    ...section("drives", columns(parts, "llll")),
    "",
  ].join("\n");
}
