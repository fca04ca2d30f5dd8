import { at } from "../../shared/at.ts";
import type { Treatment } from "../../shared/treatments.ts";
import type { Samples } from "../cut.ts";
import { MAX_GRADE } from "../limits.ts";
import { findJitter } from "./jitter.ts";
import { smoothRobust } from "./robust.ts";
import { GRADE_LIVELINESS, SPEED_LIVELINESS, WIDE_GRADE, WIDE_SPEED } from "./settings.ts";
import { short } from "./words.ts";
import type { Done, Gap, Work } from "./work.ts";

type Smooth = Extract<Treatment, { kind: "smooth" }>;

/** m/s; a recorded speed no faster than this was standing, and stays so. */
const AT_REST = 0.02;

/**
 * Calms a recorded speed over time and a recorded grade over the way, gaps apart. A smoothing spline keeps the sum of
 * what it smooths, so the way stays (to the trapezoid's error); recorded standing stays standing, and no speed changes
 * its direction.
 */
export function smoothSpeeds(work: Work, options: Smooth): Done {
  const { time, speed, grade } = work.samples;
  const known = new Uint8Array(time.length).fill(1);
  const raw = { along: time, values: [speed], known };
  const jitter = options.jitter === "auto" ? findJitter(raw, SPEED_LIVELINESS, 0.02, 3) : options.jitter;
  const calmed = new Float64Array(time.length);
  let aside = 0;
  for (const { first, last } of between(time, work.gaps)) {
    const cut = (list: Float64Array): Float64Array => list.subarray(first, last);
    const part = { along: cut(time), values: [cut(speed)], known: known.subarray(first, last) };
    const { smooth, used } = smoothRobust(part, jitter, SPEED_LIVELINESS, WIDE_SPEED);
    calmed.set(at(smooth.values, 0), first);
    aside += used.length - used.reduce((sum, yes) => sum + yes, 0);
  }
  const calm = calmed.map((v, i) => sameDirection(v, at(speed, i)));
  const slopes = calmGrade({ time, speed: calm, grade }, options.elevationJitter);
  const facts = { jitter, elevationJitter: slopes.jitter, speedsSetAside: aside };
  const gradeText =
    slopes.jitter > 0 ? `; grade smoothed over the way for a jitter of ${short(slopes.jitter, 4)}` : "";
  return {
    work: { ...work, samples: { time, speed: calm, grade: slopes.grade } },
    sentence: `Speed smoothed for a jitter of ${short(jitter)} m/s; ${aside} speeds set aside as impossible${gradeText}.`,
    facts,
    spans: [],
  };
}

function sameDirection(smooth: number, recorded: number): number {
  if (Math.abs(recorded) <= AT_REST) return 0;
  return recorded > 0 ? Math.max(0, smooth) : Math.min(0, smooth);
}

function calmGrade(samples: Samples, jitter: number | "auto"): { grade: Float64Array; jitter: number } {
  const { time, speed, grade } = samples;
  if (grade.every((g) => g === at(grade, 0))) return { grade, jitter: 0 };
  const way = new Float64Array(time.length);
  for (let i = 1; i < time.length; i += 1) {
    const step = (Math.abs(at(speed, i)) + Math.abs(at(speed, i - 1))) / 2;
    way[i] = at(way, i - 1) + step * (at(time, i) - at(time, i - 1));
  }
  const measured = { along: way, values: [grade], known: new Uint8Array(time.length).fill(1) };
  const size = jitter === "auto" ? findJitter(measured, GRADE_LIVELINESS, 0.0005, 0.1) : jitter;
  const { smooth } = smoothRobust(measured, size, GRADE_LIVELINESS, WIDE_GRADE);
  return {
    grade: at(smooth.values, 0).map((g) => Math.max(-MAX_GRADE, Math.min(MAX_GRADE, g))),
    jitter: size,
  };
}

/** Sample numbers of the parts between gaps, `last` left out. */
function between(time: Float64Array, gaps: readonly Gap[]): { first: number; last: number }[] {
  const parts: { first: number; last: number }[] = [];
  let first = 0;
  for (const gap of gaps) {
    const last = time.indexOf(gap.start) + 1;
    if (last > first) parts.push({ first, last });
    first = Math.max(first, last);
  }
  parts.push({ first, last: time.length });
  return parts.filter((part) => part.last > part.first);
}
