import { at } from "../../shared/at.ts";
import type { CycleTrace, Span } from "../../shared/cycle.ts";
import { InputError } from "../../shared/errors.ts";
import { cut } from "../cut.ts";
import { resample } from "../edit.ts";
import { short } from "./words.ts";
import { cutClock, type Done, straight, type Work } from "./work.ts";

/**
 * Keeps a part. Of places only those inside are kept, and the clock starts at the first of them; of speeds the ends are
 * found on the straight line.
 * @param where of the treatment, for messages
 * @throws InputError when the part is empty or reaches outside
 */
export function cropWork(work: Work, span: Span, where: string): Done {
  const { time } = work.samples;
  const end = at(time, time.length - 1);
  if (!(span.start < span.end && span.end <= end)) {
    throw new InputError({
      what: "The part to keep does not lie in the drive.",
      where,
      value: `${span.start} to ${span.end} s`,
      accepted: `start < end, both from 0 to ${short(end, 3)} s`,
    });
  }
  const sentence = `Cut to ${short(span.start)} to ${short(span.end)} s; time counted from the cut.`;
  return work.places ? cropPlaces(work, span, where, sentence) : cropSpeeds(work, span, sentence);
}

function cropSpeeds(work: Work, span: Span, sentence: string): Done {
  const samples = cut(traceOf(work), span);
  const gaps = work.gaps
    .filter((gap) => gap.end > span.start && gap.start < span.end)
    .map((gap) => {
      const start = Math.max(gap.start, span.start);
      const end = Math.min(gap.end, span.end);
      const share = (end - start) / (gap.end - gap.start);
      return {
        start: start - span.start,
        end: end - span.start,
        distance: gap.distance === null ? null : gap.distance * share,
        rise: gap.rise === null ? null : gap.rise * share,
      };
    });
  return {
    work: {
      samples: { ...samples, time: samples.time.map((t) => t - span.start) },
      places: null,
      gaps,
      clock: cutClock(work.clock, span),
    },
    sentence,
    facts: {},
    spans: [],
  };
}

function cropPlaces(work: Work, span: Span, where: string, sentence: string): Done {
  const track = work.places;
  if (!track) throw new Error("no places");
  const first = track.time.findIndex((t) => t >= span.start);
  let last = track.time.length - 1;
  while (last > first && at(track.time, last) > span.end) last -= 1;
  if (last - first < 2) {
    throw new InputError({
      what: "The part to keep holds fewer than 3 places.",
      where,
      value: `${span.start} to ${span.end} s`,
      accepted: "a longer part",
    });
  }
  const start = at(track.time, first);
  const pick = (list: Float64Array): Float64Array => list.slice(first, last + 1);
  const places = {
    ...track,
    time: pick(track.time).map((t) => t - start),
    latitude: pick(track.latitude),
    longitude: pick(track.longitude),
    elevation: pick(track.elevation),
  };
  const clock = cutClock(work.clock, { start, end: at(track.time, last) });
  return { work: { ...straight(places), places, clock }, sentence, facts: {}, spans: [] };
}

/**
 * Even samples. @param step s
 * @throws InputError as `resample`
 */
export function resampleWork(work: Work, step: number): Done {
  const { time, speed, grade } = resample(traceOf(work), step);
  // The ends of a gap must stay samples, or the gap could not be filled later.
  const ends = work.gaps.flatMap((gap) => [gap.start, gap.end]);
  const isEven = ends.every((end) => time.includes(end));
  return {
    work: { ...work, places: null, samples: { time, speed, grade }, gaps: isEven ? work.gaps : [] },
    sentence: `Sampled anew every ${short(step)} s by straight lines${isEven ? "" : ", gaps included"}.`,
    facts: {},
    spans: [],
  };
}

const traceOf = (work: Work): CycleTrace => ({
  id: "drive",
  title: "Drive",
  source: "",
  ...work.samples,
  phases: [],
  soaks: [],
  treatment: [],
});
