import type { FaultList } from "../faults.ts";
import { HIGHEST, LATEST, LOWEST } from "./limits.ts";
import { readTime } from "./time.ts";
import { attribute, children, type Element, textOf } from "./xml.ts";

/** One recorded place. */
export interface GpxPoint {
  /** Such as `track 1, segment 2, point 35`. */
  readonly place: string;
  /** s since 1970; null when none was recorded. */
  readonly seconds: number | null;
  /** Degrees. */
  readonly latitude: number;
  readonly longitude: number;
  /** m; NaN when none was recorded or it cannot be one. */
  readonly elevation: number;
  /** m/s as the receiver states it (GPX 1.0); NaN when it does not. */
  readonly speed: number;
}

/** What was seen on the way that is no fault. */
export interface PointCounts {
  withoutTime: number;
  withoutZone: number;
  withoutElevation: number;
  wrongElevation: number;
}

const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/;

/**
 * Reads the points of a track, segment by segment.
 * @param prefix of the file's own elements
 * @param number of the track in the file, from 1, for messages
 * @returns one list for each segment; points with a fault are left out and the fault is booked
 */
export function readSegments(
  track: Element,
  prefix: string,
  number: number,
  faults: FaultList,
  counts: PointCounts,
): GpxPoint[][] {
  return children(track, `${prefix}trkseg`).map((segment, s) =>
    children(segment, `${prefix}trkpt`).flatMap((point, p) => {
      if (faults.full) return [];
      const part = `track ${number}, segment ${s + 1}, point ${p + 1}`;
      const read = readPoint(point, prefix, part, faults, counts);
      return read ? [read] : [];
    }),
  );
}

function readPoint(
  point: Element,
  prefix: string,
  part: string,
  faults: FaultList,
  counts: PointCounts,
): GpxPoint | null {
  const latitude = readDegrees(point, "lat", 90, part, faults);
  const longitude = readDegrees(point, "lon", 180, part, faults);
  const seconds = readSeconds(textOf(point, `${prefix}time`), part, faults, counts);
  const elevation = readElevation(textOf(point, `${prefix}ele`), part, faults, counts);
  if (latitude === null || longitude === null || seconds === undefined || elevation === null) return null;
  const speedText = (textOf(point, `${prefix}speed`) ?? "").trim();
  const speed = NUMBER.test(speedText) && Number(speedText) >= 0 ? Number(speedText) : Number.NaN;
  return { place: part, seconds, latitude, longitude, elevation, speed };
}

function readDegrees(
  point: Element,
  name: "lat" | "lon",
  most: number,
  part: string,
  faults: FaultList,
): number | null {
  const title = name === "lat" ? "latitude" : "longitude";
  const accepted = `${name}: degrees from -${most} to ${most}`;
  const text = attribute(point, name);
  if (text === undefined) {
    faults.add(`The ${title} is missing.`, { part }, "", accepted);
    return null;
  }
  const value = NUMBER.test(text.trim()) ? Number(text) : Number.NaN;
  if (Math.abs(value) <= most) return value;
  const what = Number.isNaN(value) ? `The ${title} is not a number.` : `The ${title} is out of range.`;
  faults.add(what, { part }, text, accepted);
  return null;
}

/** @returns null for none, undefined for a fault */
function readSeconds(
  text: string | undefined,
  part: string,
  faults: FaultList,
  counts: PointCounts,
): number | null | undefined {
  if (text === undefined || text.trim() === "") {
    counts.withoutTime += 1;
    return null;
  }
  const accepted = "date and time such as 2024-05-01T07:30:00Z";
  const time = readTime(text);
  if (!time) {
    faults.add("The time is not one.", { part }, text, accepted);
    return undefined;
  }
  if (time.seconds < 0 || time.seconds > LATEST) {
    faults.add("The time is out of range.", { part }, text, `${accepted}, from 1970 to 2099`);
    return undefined;
  }
  if (!time.hasZone) counts.withoutZone += 1;
  return time.seconds;
}

/** @returns NaN for none or an impossible one, null for a fault */
function readElevation(
  text: string | undefined,
  part: string,
  faults: FaultList,
  counts: PointCounts,
): number | null {
  const written = (text ?? "").trim();
  if (written === "" || /^nan$/i.test(written)) {
    counts.withoutElevation += 1;
    return Number.NaN;
  }
  if (!NUMBER.test(written)) {
    faults.add("The elevation is not a number.", { part }, written, "metres, or no ele element at all");
    return null;
  }
  const value = Number(written);
  if (value >= LOWEST && value <= HIGHEST) return value;
  // Receivers write such for "not known"; one wrong height is no reason to refuse a drive.
  counts.wrongElevation += 1;
  return Number.NaN;
}
