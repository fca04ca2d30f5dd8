import { at } from "../../../shared/at.ts";
import type { PositionDrive, RecordedLog } from "../../../shared/recorded.ts";
import { MAX_DURATION } from "../../limits.ts";
import { slug } from "../../slug.ts";
import { FaultList } from "../faults.ts";
import { guardGpx, unmarked } from "./guard.ts";
import { type Ordered, orderPoints, type TimedPoint, timeText } from "./order.ts";
import { type GpxPoint, type PointCounts, readSegments } from "./points.ts";
import { attribute, children, type Element, parseGpx, textOf } from "./xml.ts";

/** What the caller knows about a file. */
export interface GpxOptions {
  /** For messages, source and title; the file itself is not touched. */
  readonly fileName: string;
  /** Taken from the file when left out: the track's name, else the file's. */
  readonly title?: string;
  /** Which track, from 1; the one with the most timed places when left out. */
  readonly track?: number;
}

/** One track of a file, for a person to choose from. */
export interface GpxTrackInfo {
  /** From 1. */
  readonly number: number;
  /** Empty when it has none. */
  readonly name: string;
  readonly segments: number;
  readonly points: number;
  /** Points with a time. */
  readonly timed: number;
}

/** How a file was understood. */
export interface GpxReport {
  readonly fileName: string;
  /** As the file states it; "1.0" and "1.1" are known. */
  readonly version: string;
  readonly tracks: readonly GpxTrackInfo[];
  /** Number of the track that was read. */
  readonly track: number;
  /** Places taken. */
  readonly points: number;
  /** What a person may want to look at, one sentence each. */
  readonly notes: readonly string[];
}

/** A drive read from a file, with how it was read. */
export interface ImportedTrack {
  readonly raw: PositionDrive;
  readonly report: GpxReport;
}

/**
 * Reads the recorded places of a GPX 1.1 or 1.0 file: one track, all its segments, in the order of time. Waypoints are
 * no drive; routes and tracks without times are planned, not driven, and refused. Single places without a time, repeated
 * times and impossible elevations are set aside and counted in the notes.
 * @param text the file, decoded
 * @throws InputError with up to MAX_FAULTS faults, each naming file, track, segment, point and value
 */
export function importGpx(text: string, options: GpxOptions): ImportedTrack {
  const faults = new FaultList(options.fileName);
  const plain = unmarked(text);
  const prefix = guardGpx(plain, faults);
  const root = parseGpx(plain, prefix, faults);
  const counts: PointCounts = { withoutTime: 0, withoutZone: 0, withoutElevation: 0, wrongElevation: 0 };
  const elements = children(root, `${prefix}trk`);
  if (elements.length === 0) refuseTrackless(root, prefix, faults);
  const { number, element } = chooseTrack(elements, prefix, options.track, faults);
  const segments = readSegments(element, prefix, number, faults, counts);
  faults.throwIfAny();
  const ordered = orderPoints(segments.map(timedOnly), faults);
  checkTimes(segments.flat(), ordered, number, faults);
  const name = (textOf(element, `${prefix}name`) ?? "").trim();
  const report = {
    fileName: options.fileName,
    version: attribute(root, "version") ?? "",
    tracks: elements.map((track, i) => trackInfo(track, prefix, i + 1)),
    track: number,
    points: ordered.points.length,
    notes: notesOf(ordered, counts, elements.length, attribute(root, "version")),
  };
  return { raw: driveOf(ordered, options, name, report), report };
}

function driveOf({ points }: Ordered, options: GpxOptions, name: string, report: GpxReport): PositionDrive {
  const title = options.title ?? (name === "" ? bareName(options.fileName) : name.slice(0, 200));
  const start = at(points, 0).seconds;
  const time = Float64Array.from(points, (point) => point.seconds - start);
  return {
    kind: "positions",
    id: slug(title, "imported").slice(0, 80).replace(/-+$/, ""),
    title,
    source: options.fileName,
    time,
    latitude: Float64Array.from(points, (point) => point.latitude),
    longitude: Float64Array.from(points, (point) => point.longitude),
    elevation: Float64Array.from(points, (point) => point.elevation),
    reading: [
      `Read from ${report.fileName}, track ${report.track}, ${report.points} places from ${timeText(start)}.`,
      ...report.notes,
    ],
    overlay: statedSpeeds(points, time),
  };
}

/** Speeds that the receiver states itself are laid beside, so that they can be compared. */
function statedSpeeds(points: readonly TimedPoint[], time: Float64Array): RecordedLog | null {
  if (points.every((point) => Number.isNaN(point.speed))) return null;
  const values = Float64Array.from(points, (point) => point.speed);
  return { time, channels: [{ id: "vehicleSpeed", name: "speed", values }] };
}

const bareName = (fileName: string): string => fileName.replace(/^.*[\\/]/, "").replace(/\.\w+$/, "");

function timedOnly(segment: readonly GpxPoint[]): TimedPoint[] {
  return segment.filter((point): point is TimedPoint => point.seconds !== null);
}

function trackInfo(track: Element, prefix: string, number: number): GpxTrackInfo {
  const segments = children(track, `${prefix}trkseg`);
  const points = segments.flatMap((segment) => children(segment, `${prefix}trkpt`));
  return {
    number,
    name: (textOf(track, `${prefix}name`) ?? "").trim(),
    segments: segments.length,
    points: points.length,
    timed: points.filter((point) => (textOf(point, `${prefix}time`) ?? "") !== "").length,
  };
}

function chooseTrack(
  elements: readonly Element[],
  prefix: string,
  wanted: number | undefined,
  faults: FaultList,
): { number: number; element: Element } {
  if (wanted !== undefined) {
    const element = elements[wanted - 1];
    if (element) return { number: wanted, element };
    faults.stop("The track chosen is not in the file.", {}, String(wanted), `1 to ${elements.length}`);
  }
  const timed = elements.map((track, i) => trackInfo(track, prefix, i + 1).timed);
  const number = timed.indexOf(Math.max(...timed)) + 1;
  return { number, element: at(elements, number - 1) };
}

function refuseTrackless(root: Element, prefix: string, faults: FaultList): never {
  const routes = children(root, `${prefix}rte`).length;
  const waypoints = children(root, `${prefix}wpt`).length;
  const accepted = "a recorded track (trk) with a time at each point";
  if (routes > 0) {
    const what = "The file holds a route: a plan of where to go, without the times of a drive.";
    faults.stop(what, {}, `${routes} rte`, accepted);
  }
  const found = waypoints > 0 ? `${waypoints} wpt` : "";
  return faults.stop("The file holds no track.", {}, found, accepted);
}

function checkTimes(all: readonly GpxPoint[], { points }: Ordered, track: number, faults: FaultList): void {
  const part = `track ${track}`;
  const accepted = "a track with a time at each point";
  if (all.length === 0) faults.stop("The track has no points.", { part }, "", accepted);
  const untimed = all.filter((point) => point.seconds === null);
  const [first] = untimed;
  if (untimed.length === all.length) {
    const what = "No point of the track has a time: it is planned or drawn, and holds no speeds.";
    faults.stop(what, { part }, `${all.length} points`, accepted);
  }
  if (first && untimed.length > all.length / 2) {
    const what = `More than half of the points have no time (${untimed.length} of ${all.length}), here first.`;
    faults.stop(what, { part: first.place }, "", accepted);
  }
  if (points.length < 3) {
    faults.stop("Fewer than 3 points have times of their own.", { part }, String(points.length), accepted);
  }
  const length = at(points, points.length - 1).seconds - at(points, 0).seconds;
  if (length > MAX_DURATION) {
    const hours = `${Math.round(length / 3600)} h`;
    faults.stop("The track is longer than 100 hours.", { part }, hours, "up to 100 h");
  }
}

function notesOf(
  ordered: Ordered,
  counts: PointCounts,
  tracks: number,
  version: string | undefined,
): string[] {
  const notes: string[] = [];
  const note = (count: number, one: string, many: string): void => {
    if (count > 0) notes.push(`${count} ${count === 1 ? one : many}`);
  };
  if (version !== "1.1" && version !== "1.0") {
    notes.push(`The file states version "${version ?? ""}"; it was read as 1.1.`);
  }
  if (tracks > 1) notes.push(`The file holds ${tracks} tracks; one was read.`);
  if (ordered.moved) notes.push("Segments were put in the order of time.");
  note(counts.withoutTime, "point has no time and was set aside.", "points have no time and were set aside.");
  note(
    ordered.repeated,
    "point repeats the time of another one and was set aside.",
    "points repeat the time of another one and were set aside.",
  );
  note(
    ordered.backward,
    "point goes back in time and was set aside.",
    "points go back in time and were set aside.",
  );
  note(
    counts.withoutZone,
    "time names no zone and was taken as UTC.",
    "times name no zone and were taken as UTC.",
  );
  note(counts.withoutElevation, "point has no elevation.", "points have no elevation.");
  note(
    counts.wrongElevation,
    "elevation is impossible and was set aside.",
    "elevations are impossible and were set aside.",
  );
  return notes;
}
