import { at } from "../../shared/at.ts";
import type { Span } from "../../shared/cycle.ts";
import type { PositionDrive, RawDrive } from "../../shared/recorded.ts";
import type { Samples } from "../cut.ts";
import { MAX_GRADE } from "../limits.ts";
import { GAP_STEPS, LEAST_GAP } from "./settings.ts";
import { between, rollOut } from "./track.ts";

/** A stretch in which nothing is known: between two samples that are neighbours. */
export interface Gap extends Span {
  /** m from one end to the other, straight; null when only speeds were recorded. */
  readonly distance: number | null;
  /** m gained; null when unknown. */
  readonly rise: number | null;
}

/** A part of the recorded clock that is still there, and how far it was moved. */
export interface ClockPart extends Span {
  /** s, added to a recorded time. */
  readonly shift: number;
}

/** A drive on its way through the treatments. Nothing in it is ever changed; each step makes a new one. */
export interface Work {
  readonly samples: Samples;
  /** The places, as long as no step has made speeds of them. */
  readonly places: PositionDrive | null;
  /** In order. */
  readonly gaps: readonly Gap[];
  /** In order; for what was recorded beside the drive. */
  readonly clock: readonly ClockPart[];
}

/** What one step did. */
export interface Done {
  readonly work: Work;
  /** For a person to read. */
  readonly sentence: string;
  /** Figures behind the sentence, by name; what they mean is told with each step. */
  readonly facts: Readonly<Record<string, number>>;
  /** s, on the clock of the result: where the vehicle was found standing, or where speed was changed. */
  readonly spans: readonly Span[];
}

/** The drive before the first step. */
export function startWork(raw: RawDrive): Work {
  const end = at(raw.time, raw.time.length - 1);
  const clock = [{ start: 0, end, shift: 0 }];
  if (raw.kind === "speeds") {
    const { time, speed, grade } = raw;
    const gaps = findGaps(time).map((gap) => ({ ...gap, distance: null, rise: null }));
    return { samples: { time, speed, grade }, places: null, gaps, clock };
  }
  return { ...straight(raw), places: raw, clock };
}

/** Speeds and grades from place to place, and the gaps, of a track as it was recorded. */
export function straight(track: PositionDrive): Pick<Work, "samples" | "gaps"> {
  const { time, elevation } = track;
  const plane = rollOut(track.latitude, track.longitude);
  const count = time.length;
  const speed = new Float64Array(count);
  const grade = new Float64Array(count);
  for (let i = 1; i < count; i += 1) {
    const way = between(plane, i - 1, i);
    const rise = at(elevation, i) - at(elevation, i - 1);
    speed[i] = way / (at(time, i) - at(time, i - 1));
    // Under a metre of way the elevation's jitter is all there is.
    grade[i] = way < 1 || Number.isNaN(rise) ? 0 : Math.max(-MAX_GRADE, Math.min(MAX_GRADE, rise / way));
  }
  speed[0] = at(speed, 1);
  grade[0] = at(grade, 1);
  const gaps = findGaps(time).map((gap) => ({
    start: gap.start,
    end: gap.end,
    distance: between(plane, gap.index, gap.index + 1),
    rise: null,
  }));
  return { samples: { time, speed, grade }, gaps };
}

/** Steps of time in which nothing was recorded; `index` is the sample before. */
export function findGaps(time: Float64Array): (Span & { readonly index: number })[] {
  const longest = longestStep(time);
  const gaps: (Span & { readonly index: number })[] = [];
  for (let i = 1; i < time.length; i += 1) {
    const start = at(time, i - 1);
    const end = at(time, i);
    if (end - start > longest) gaps.push({ start, end, index: i - 1 });
  }
  return gaps;
}

/** s; a longer step of this recording is a gap. @param time at least 2, rising */
export function longestStep(time: Float64Array): number {
  const steps = new Float64Array(time.length - 1);
  for (let i = 1; i < time.length; i += 1) steps[i - 1] = at(time, i) - at(time, i - 1);
  steps.sort();
  return Math.max(LEAST_GAP, GAP_STEPS * at(steps, steps.length >> 1));
}

/** The clock cut to a span of the present clock, which then starts at 0. */
export function cutClock(clock: readonly ClockPart[], span: Span): ClockPart[] {
  return clock.flatMap((part) => {
    const start = Math.max(part.start, span.start - part.shift);
    const end = Math.min(part.end, span.end - part.shift);
    return start <= end ? [{ start, end, shift: part.shift - span.start }] : [];
  });
}

/** The clock after a span of the present clock was replaced by one of another length. Both ends stay recorded. */
export function replaceInClock(clock: readonly ClockPart[], span: Span, length: number): ClockPart[] {
  const later = length - (span.end - span.start);
  return clock.flatMap((part) => {
    const before = { ...part, end: Math.min(part.end, span.start - part.shift) };
    const after = {
      start: Math.max(part.start, span.end - part.shift),
      end: part.end,
      shift: part.shift + later,
    };
    return [before, after].filter(({ start, end }) => start <= end);
  });
}
