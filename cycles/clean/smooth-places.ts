import { at } from "../../shared/at.ts";
import type { Span } from "../../shared/cycle.ts";
import { InputError } from "../../shared/errors.ts";
import type { PositionDrive } from "../../shared/recorded.ts";
import type { Treatment } from "../../shared/treatments.ts";
import { wayAcross } from "./across.ts";
import { findFrozen } from "./frozen.ts";
import { findJitter } from "./jitter.ts";
import { believable } from "./jumps.ts";
import { type Piece, piecesOf, withGrid } from "./pieces.ts";
import { smoothRobust } from "./robust.ts";
import { FASTEST_STEP, JITTER_STEP, PATH_LIVELINESS, STRAY_PLACES, WIDE_PLACE } from "./settings.ts";
import { type Layer, smoothElevation } from "./smooth-elevation.ts";
import { smoothSpline } from "./spline.ts";
import { findStops, inside } from "./stops.ts";
import { between, type Plane, rollOut } from "./track.ts";
import { clockText } from "./words.ts";
import { cutClock, type Done, type Gap, type Work } from "./work.ts";

type Smooth = Extract<Treatment, { kind: "smooth" }>;

/**
 * Speed and grade from places.
 *
 * 1. Places that ask for impossible speeds are set aside, then the track is smoothed once (`smoothSpline` on both axes
 *    together, the jitter found by likelihood); places far off what was expected are set aside too.
 * 2. Where the smooth track gets nowhere the vehicle stood (`findStops`).
 * 3. Each stretch without gaps is smoothed again, with the rate held at zero while standing. So jitter adds no way at
 *    stops, where it does the most harm, and the way between stops stays that between the places.
 * 4. Speed is the length of the smooth rate, on an even clock.
 * 5. Elevations are smoothed over the way, not over time, and their slope is the grade.
 * @throws InputError when too few places are left
 */
export function smoothPlaces(work: Work, track: PositionDrive, options: Smooth): Done {
  const rough = rollOut(track.latitude, track.longitude);
  const { time } = track;
  const possible = (i: number, j: number): boolean =>
    between(rough, i, j) <= JITTER_STEP + FASTEST_STEP * (at(time, j) - at(time, i));
  const frozen = findFrozen(time, rough);
  const known = believable(time.length, possible, STRAY_PLACES).map((good, i) => good & (1 - at(frozen, i)));
  if (!known.includes(1)) throw tooFew(track, known);
  const measured = { along: time, values: [rough.east, rough.north], known };
  const jitter = options.jitter === "auto" ? findJitter(measured, PATH_LIVELINESS, 0.3, 15) : options.jitter;
  const { smooth: first, used } = smoothRobust(measured, jitter, PATH_LIVELINESS, WIDE_PLACE);
  const pieces = piecesOf(time, used, possible);
  if (pieces.length === 0) throw tooFew(track, used);

  const smooth = planeOf(first.values);
  const stops = pieces.flatMap((piece) => {
    const cut = <T extends Float64Array>(list: T) => list.subarray(piece.first, piece.last + 1);
    const plane = { east: cut(smooth.east), north: cut(smooth.north) };
    return findStops(cut(time), plane, cut(speedOf(first.rates)), jitter);
  });
  const layers = pieces.map((piece) => smoothPiece(time, rough, used, piece, stops, options.step, jitter));
  return assemble(work, track, options, { layers, stops, jitter, used, pieces });
}

function smoothPiece(
  time: Float64Array,
  rough: Plane,
  used: Uint8Array,
  piece: Piece,
  stops: readonly Span[],
  step: number,
  jitter: number,
): Layer {
  const { along, source, wanted } = withGrid(time, used, piece, step);
  const pick = (list: Float64Array): Float64Array =>
    Float64Array.from(source, (i) => (i < 0 ? 0 : at(list, i)));
  const known = Uint8Array.from(source, (i) => (i < 0 ? 0 : 1));
  const still = inside(along, stops);
  const measured = { along, values: [pick(rough.east), pick(rough.north)], known };
  const smooth = smoothSpline(measured, { jitter, liveliness: PATH_LIVELINESS, still });
  const speed = speedOf(smooth.rates).map((v, i) => (at(still, i) === 1 ? 0 : v));
  return { time: along, speed, plane: planeOf(smooth.values), source, wanted };
}

interface Found {
  readonly layers: readonly Layer[];
  readonly stops: readonly Span[];
  readonly jitter: number;
  readonly used: Uint8Array;
  readonly pieces: readonly Piece[];
}

function assemble(work: Work, track: PositionDrive, options: Smooth, found: Found): Done {
  const { layers, stops, jitter, used, pieces } = found;
  const jumps = layers.map((layer, k) => {
    const next = layers[k + 1];
    return next ? wayAcross(layer, next) : 0;
  });
  const elevation = smoothElevation(track.elevation, layers, jumps, options.elevationJitter);
  const begin = at(pieces, 0).start;
  const time: number[] = [];
  const speed: number[] = [];
  const grade: number[] = [];
  const gaps: Gap[] = [];
  layers.forEach((layer, k) => {
    const slopes = at(elevation.grades, k);
    layer.time.forEach((t, i) => {
      if (at(layer.wanted, i) === 0) return;
      time.push(t - begin);
      speed.push(at(layer.speed, i));
      grade.push(at(slopes, i));
    });
    const next = pieces[k + 1];
    if (!next) return;
    gaps.push({
      start: at(pieces, k).end - begin,
      end: next.start - begin,
      distance: at(jumps, k),
      rise: at(elevation.rises, k),
    });
  });
  const samples = {
    time: Float64Array.from(time),
    speed: Float64Array.from(speed),
    grade: Float64Array.from(grade),
  };
  const end = at(samples.time, samples.time.length - 1);
  const aside = used.length - used.reduce((sum, yes) => sum + yes, 0);
  const spans = stops.map((stop) => ({ start: stop.start - begin, end: stop.end - begin }));
  const standing = stops.reduce((sum, stop) => sum + stop.end - stop.start, 0);
  const facts = {
    jitter,
    elevationJitter: elevation.jitter,
    placesSetAside: aside,
    elevationsSetAside: elevation.setAside,
    stops: stops.length,
    standing,
    gaps: gaps.length,
  };
  return {
    work: {
      samples,
      places: null,
      gaps,
      clock: cutClock(work.clock, { start: begin, end: begin + end }),
    },
    sentence: sentenceOf(facts, options),
    facts,
    spans,
  };
}

function sentenceOf(facts: Record<string, number>, options: Smooth): string {
  const n = (name: string): number => facts[name] ?? 0;
  const how = options.jitter === "auto" ? "found" : "given";
  const parts = [
    `Speed taken from the places, smoothed for a jitter of ${n("jitter").toFixed(1)} m (${how}), every ${options.step} s`,
    `${n("placesSetAside")} places set aside as impossible`,
    `${n("stops")} stops found, ${clockText(n("standing"))} in all`,
    n("elevationJitter") > 0
      ? `grade from elevations smoothed over the way for a jitter of ${n("elevationJitter").toFixed(1)} m, ${n("elevationsSetAside")} set aside`
      : "too few elevations, so the road is taken as level",
  ];
  return `${parts.join("; ")}.`;
}

function planeOf(values: readonly Float64Array[]): Plane {
  return { east: at(values, 0), north: at(values, 1) };
}

function speedOf(rates: readonly Float64Array[]): Float64Array {
  const east = at(rates, 0);
  const north = at(rates, 1);
  return east.map((x, i) => Math.sqrt(x * x + at(north, i) * at(north, i)));
}

function tooFew(track: PositionDrive, used: Uint8Array): InputError {
  return new InputError({
    what: "Too few places fit together for a speed.",
    where: track.source,
    value: `${used.reduce((sum, yes) => sum + yes, 0)} of ${used.length}`,
    accepted: "a stretch of at least 3 places in a row, none more than 300 km/h from the next",
  });
}
