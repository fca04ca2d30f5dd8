import { at } from "../../shared/at.ts";
import type { PositionDrive, RawDrive } from "../../shared/recorded.ts";
import type { Samples } from "../cut.ts";
import { between, rollOut } from "./track.ts";

/** What a treatment may change, to be seen before and after it. */
export interface DriveFigures {
  readonly samples: number;
  /** s. */
  readonly duration: number;
  /** m. */
  readonly distance: number;
  /** m climbed, and m descended, in all. */
  readonly ascent: number;
  readonly descent: number;
  /** m/s. */
  readonly maxSpeed: number;
  /** m/s², between neighbouring samples. */
  readonly maxAcceleration: number;
  /** m/s², between neighbouring samples, as a positive number. */
  readonly maxDeceleration: number;
  /** s with both ends of a step at rest. */
  readonly restTime: number;
  /** Rise over run, the steepest up or down. */
  readonly steepest: number;
}

/** Figures of samples joined by straight lines. */
export function figuresOf({ time, speed, grade }: Samples): DriveFigures {
  let distance = 0;
  let ascent = 0;
  let descent = 0;
  let maxSpeed = Math.abs(at(speed, 0));
  let maxAcceleration = 0;
  let maxDeceleration = 0;
  let restTime = 0;
  let steepest = Math.abs(at(grade, 0));
  for (let i = 1; i < time.length; i += 1) {
    const dt = at(time, i) - at(time, i - 1);
    const v0 = Math.abs(at(speed, i - 1));
    const v1 = Math.abs(at(speed, i));
    distance += ((v0 + v1) / 2) * dt;
    const rise = ((v0 * at(grade, i - 1) + v1 * at(grade, i)) / 2) * dt;
    if (rise > 0) ascent += rise;
    else descent -= rise;
    maxSpeed = Math.max(maxSpeed, v1);
    maxAcceleration = Math.max(maxAcceleration, (v1 - v0) / dt);
    maxDeceleration = Math.max(maxDeceleration, (v0 - v1) / dt);
    if (v0 === 0 && v1 === 0) restTime += dt;
    steepest = Math.max(steepest, Math.abs(at(grade, i)));
  }
  return {
    samples: time.length,
    duration: at(time, time.length - 1) - at(time, 0),
    distance,
    ascent,
    descent,
    maxSpeed,
    maxAcceleration,
    maxDeceleration,
    restTime,
    steepest,
  };
}

/** Figures of a drive as recorded: of places the straight way from each to the next, and every rise between them. */
export function rawFigures(raw: RawDrive, samples: Samples): DriveFigures {
  const figures = figuresOf(samples);
  return raw.kind === "speeds" ? figures : { ...figures, ...placesFigures(raw) };
}

function placesFigures(track: PositionDrive): Pick<DriveFigures, "distance" | "ascent" | "descent"> {
  const plane = rollOut(track.latitude, track.longitude);
  let distance = 0;
  let ascent = 0;
  let descent = 0;
  let height = Number.NaN;
  track.elevation.forEach((here, i) => {
    if (i > 0) distance += between(plane, i - 1, i);
    if (Number.isNaN(here)) return;
    if (here > height) ascent += here - height;
    if (here < height) descent += height - here;
    height = here;
  });
  return { distance, ascent, descent };
}
