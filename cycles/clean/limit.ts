import { at } from "../../shared/at.ts";
import type { Span } from "../../shared/cycle.ts";
import { short } from "./words.ts";
import type { Done, Work } from "./work.ts";

/**
 * Lowers speeds until no acceleration is beyond its limit: forward for speeding up, backward for slowing down. Speeds are
 * only ever lowered, so nothing is asked that was not driven; way is lost where it binds.
 * @param up m/s², speeding up
 * @param down m/s², slowing down, as a positive number
 */
export function limitAcceleration(work: Work, up: number, down: number): Done {
  const { time, speed, grade } = work.samples;
  const fast = speed.map(Math.abs);
  const count = time.length;
  for (let i = 1; i < count; i += 1) {
    fast[i] = Math.min(at(fast, i), at(fast, i - 1) + up * (at(time, i) - at(time, i - 1)));
  }
  for (let i = count - 2; i >= 0; i -= 1) {
    fast[i] = Math.min(at(fast, i), at(fast, i + 1) + down * (at(time, i + 1) - at(time, i)));
  }
  const limited = fast.map((v, i) => Math.sign(at(speed, i)) * v);
  const { spans, changed } = changes(time, speed, limited);
  const lost = wayOf(time, speed) - wayOf(time, limited);
  const sentence =
    changed === 0
      ? `No acceleration beyond ${short(up)} m/s² or deceleration beyond ${short(down)} m/s².`
      : `Acceleration limited to ${short(up)} m/s² and deceleration to ${short(down)} m/s²; ${changed} samples lowered, ${short(lost, 1)} m of way lost.`;
  return {
    work: { ...work, places: null, samples: { time, speed: limited, grade } },
    sentence,
    facts: { changed, wayLost: lost },
    spans,
  };
}

/** Slow moments become standing. @param below m/s @param atLeast s @param span s, where to look */
export function setToRest(work: Work, below: number, atLeast: number, span: Span): Done {
  const { time, speed, grade } = work.samples;
  const rested = speed.slice();
  const spans: Span[] = [];
  let standing = 0;
  for (let first = 0; first < time.length; ) {
    if (!isSlow(first)) {
      first += 1;
      continue;
    }
    let last = first;
    while (last + 1 < time.length && isSlow(last + 1)) last += 1;
    const length = at(time, last) - at(time, first);
    if (length >= atLeast && rested.subarray(first, last + 1).some((v) => v !== 0)) {
      rested.fill(0, first, last + 1);
      spans.push({ start: at(time, first), end: at(time, last) });
      standing += length;
    }
    first = last + 1;
  }
  const lost = wayOf(time, speed) - wayOf(time, rested);
  return {
    work: { ...work, places: null, samples: { time, speed: rested, grade } },
    sentence: `${spans.length} slow stretches (below ${short(below)} m/s for at least ${short(atLeast)} s) set to rest, ${short(lost, 1)} m of way lost.`,
    facts: { stretches: spans.length, standing, wayLost: lost },
    spans,
  };

  function isSlow(i: number): boolean {
    const t = at(time, i);
    return Math.abs(at(speed, i)) < below && t >= span.start && t <= span.end;
  }
}

/** Puts a ramp from rest in front and one to rest behind where needed, on the grade of that end. @param ramp m/s² */
export function startAndEndAtRest(work: Work, ramp: number): Done {
  const { time, speed, grade } = work.samples;
  const last = time.length - 1;
  const front = rampTime(at(speed, 0), ramp);
  const back = rampTime(at(speed, last), ramp);
  const around = (list: Float64Array, first: number, end: number): Float64Array =>
    Float64Array.from([...(front > 0 ? [first] : []), ...list, ...(back > 0 ? [end] : [])]);
  const moved = time.map((t) => t + front);
  const samples = {
    time: around(moved, 0, at(moved, last) + back),
    speed: around(atRestIfSlight(speed), 0, 0),
    grade: around(grade, at(grade, 0), at(grade, last)),
  };
  const spans: Span[] = [];
  if (front > 0) spans.push({ start: 0, end: front });
  if (back > 0) spans.push({ start: at(moved, last), end: at(moved, last) + back });
  return {
    work: {
      samples,
      places: null,
      gaps: work.gaps.map((gap) => ({ ...gap, start: gap.start + front, end: gap.end + front })),
      clock: work.clock.map((part) => ({ ...part, shift: part.shift + front })),
    },
    sentence:
      front + back === 0
        ? "The drive starts and ends at rest already."
        : `${short(front, 1)} s of pulling away put in front and ${short(back, 1)} s of braking behind, at ${short(ramp)} m/s².`,
    facts: { front, back },
    spans,
  };
}

/** m/s; a speed at an end that is no more than this becomes rest without a ramp. */
const SLIGHT = 0.01;

const rampTime = (speed: number, ramp: number): number =>
  Math.abs(speed) <= SLIGHT ? 0 : Math.abs(speed) / ramp;

function atRestIfSlight(speed: Float64Array): Float64Array {
  const last = speed.length - 1;
  return speed.map((v, i) => ((i === 0 || i === last) && Math.abs(v) <= SLIGHT ? 0 : v));
}

/** @param steepest rise over run */
export function limitGrade(work: Work, steepest: number): Done {
  const { time, speed, grade } = work.samples;
  const limited = grade.map((g) => Math.max(-steepest, Math.min(steepest, g)));
  const { spans, changed } = changes(time, grade, limited);
  return {
    work: { ...work, places: null, samples: { time, speed, grade: limited } },
    sentence: `Grade limited to ${short(steepest * 100, 1)} %; ${changed} samples changed.`,
    facts: { changed },
    spans,
  };
}

/** Takes all grade away. */
export function level(work: Work): Done {
  const { time, speed, grade } = work.samples;
  return {
    work: { ...work, places: null, samples: { time, speed, grade: new Float64Array(grade.length) } },
    sentence: "The road is taken as level.",
    facts: {},
    spans: [],
  };
}

function changes(time: Float64Array, before: Float64Array, after: Float64Array) {
  const spans: Span[] = [];
  let changed = 0;
  let start: number | null = null;
  for (let i = 0; i < time.length; i += 1) {
    const differs = at(before, i) !== at(after, i);
    if (differs) changed += 1;
    if (differs && start === null) start = at(time, i);
    if (!differs && start !== null) {
      spans.push({ start, end: at(time, i - 1) });
      start = null;
    }
  }
  if (start !== null) spans.push({ start, end: at(time, time.length - 1) });
  return { spans, changed };
}

function wayOf(time: Float64Array, speed: Float64Array): number {
  let way = 0;
  for (let i = 1; i < time.length; i += 1) {
    way += ((Math.abs(at(speed, i)) + Math.abs(at(speed, i - 1))) / 2) * (at(time, i) - at(time, i - 1));
  }
  return way;
}
