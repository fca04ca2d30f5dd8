import { at } from "../../shared/at.ts";
import type { Span } from "../../shared/cycle.ts";
import { MAX_GRADE } from "../limits.ts";
import { cross } from "./crossing.ts";
import { FASTEST_STEP, GAP_ACCELERATION, JOIN_REST } from "./settings.ts";
import { clockText, short } from "./words.ts";
import { type Done, type Gap, replaceInClock, type Work } from "./work.ts";

/** A sample under way. */
interface Row {
  readonly time: number;
  readonly speed: number;
  readonly grade: number;
}

/** What takes a gap's place: rows between its two ends, and how long it is then. */
interface Bridge {
  readonly length: number;
  readonly rows: readonly Row[];
}

/**
 * Bridges gaps. Up to `longest`, the distance between the ends is driven as calmly as it can be in the time (`cross`);
 * where no distance is known, the speed runs straight from one end to the other. A longer gap, or one that asks for more
 * than 300 km/h, is taken out: the drive
 * brakes to a stop at 1 m/s² where it was lost, stands for 5 s, and pulls away where it was found again.
 * @param longest s
 */
export function fillGaps(work: Work, longest: number): Done {
  const rows: Row[] = [];
  const spans: Span[] = [];
  let { clock } = work;
  let shift = 0;
  let filled = 0;
  let longestFilled = 0;
  let way = 0;
  let takenOut = 0;
  let lost = 0;
  const { time } = work.samples;
  const gaps = [...work.gaps];
  time.forEach((t, i) => {
    rows.push(rowAt(work, i, shift));
    const gap = gaps[0];
    if (gap?.start !== t || i + 1 >= time.length) return;
    gaps.shift();
    const length = gap.end - gap.start;
    // A jump too fast for any vehicle is no way that was driven, however short the gap.
    const fits = length <= longest && (gap.distance ?? 0) <= FASTEST_STEP * length;
    const bridge = fits ? across(work, i, gap) : stopAndGo(work, i);
    rows.push(...bridge.rows.map((row) => ({ ...row, time: row.time + t + shift })));
    spans.push({ start: t + shift, end: t + shift + bridge.length });
    if (fits) {
      filled += 1;
      longestFilled = Math.max(longestFilled, length);
      way += gap.distance ?? 0;
    } else {
      clock = replaceInClock(clock, { start: t + shift, end: gap.end + shift }, bridge.length);
      takenOut += 1;
      lost += length;
      shift += bridge.length - length;
    }
  });
  const facts = { filled, longestFilled, wayFilled: way, takenOut, timeTakenOut: lost };
  return {
    work: {
      samples: {
        time: Float64Array.from(rows, (row) => row.time),
        speed: Float64Array.from(rows, (row) => row.speed),
        grade: Float64Array.from(rows, (row) => row.grade),
      },
      places: null,
      gaps: [],
      clock,
    },
    sentence: sentenceOf(facts, longest),
    facts,
    spans,
  };
}

function sentenceOf(
  facts: { filled: number; longestFilled: number; wayFilled: number; takenOut: number; timeTakenOut: number },
  longest: number,
): string {
  if (facts.filled + facts.takenOut === 0) return "No gaps to fill.";
  const parts: string[] = [];
  if (facts.filled > 0) {
    parts.push(
      `${facts.filled} gaps filled, the longest ${clockText(facts.longestFilled)}, ${short(facts.wayFilled / 1000)} km of way invented in them`,
    );
  }
  if (facts.takenOut > 0) {
    parts.push(
      `${facts.takenOut} gaps longer than ${clockText(longest)}, or too far to be driven, taken out, ${clockText(facts.timeTakenOut)} in all; the drive stops and starts again there`,
    );
  }
  return `${parts.join("; ")}.`;
}

function rowAt({ samples }: Work, i: number, shift: number): Row {
  return { time: at(samples.time, i) + shift, speed: at(samples.speed, i), grade: at(samples.grade, i) };
}

/** A step in grade is drawn over this share of a gap at each end, so that times stay apart. */
const EDGE = 1e-3;

function across({ samples }: Work, i: number, gap: Gap): Bridge {
  const length = gap.end - gap.start;
  if (gap.distance === null) return { length, rows: [] };
  const before = at(samples.speed, i);
  const after = at(samples.speed, i + 1);
  const slope = gap.distance < 1 || gap.rise === null ? 0 : gap.rise / gap.distance;
  const grade = Math.max(-MAX_GRADE, Math.min(MAX_GRADE, slope));
  const inner = cross(length, gap.distance, Math.abs(before), Math.abs(after));
  const ends = [length * EDGE, length * (1 - EDGE)];
  const times = [...ends, ...inner.map((point) => point.time)]
    .sort((a, b) => a - b)
    .filter((time, k, all) => k === 0 || time - at(all, k - 1) > length * 1e-6);
  const line = [{ time: 0, speed: before }, ...inner, { time: length, speed: after }];
  return { length, rows: times.map((time) => ({ time, speed: onLine(line, time), grade })) };
}

function onLine(line: readonly { time: number; speed: number }[], time: number): number {
  const k = Math.max(
    1,
    line.findIndex((point) => point.time >= time),
  );
  const a = at(line, k - 1);
  const b = at(line, k);
  return a.speed + ((b.speed - a.speed) * (time - a.time)) / (b.time - a.time);
}

/** s; a ramp shorter than this is none. */
const SLIGHT = 1e-3;

function stopAndGo({ samples }: Work, i: number): Bridge {
  const down = Math.abs(at(samples.speed, i)) / GAP_ACCELERATION;
  const up = Math.abs(at(samples.speed, i + 1)) / GAP_ACCELERATION;
  const length = down + JOIN_REST + up;
  const rows = [
    { time: down, speed: 0, grade: at(samples.grade, i) },
    { time: down + JOIN_REST, speed: 0, grade: at(samples.grade, i + 1) },
  ].filter((row) => row.time > SLIGHT && row.time < length - SLIGHT);
  return { length, rows };
}
