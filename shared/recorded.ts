import { z } from "zod";

/** A further quantity that a log may hold, for laying over the simulated one. */
export const RECORDED_CHANNELS = ["engineSpeed", "soc", "batteryCurrent", "vehicleSpeed"] as const;

/**
 * `engineSpeed` rad/s; `soc` a share 0–1; `batteryCurrent` A, positive on discharge; `vehicleSpeed` m/s as a receiver
 * stated it beside its positions.
 */
export type RecordedChannelId = (typeof RECORDED_CHANNELS)[number];

/** One recorded quantity. */
export interface RecordedChannel {
  readonly id: RecordedChannelId;
  /** The column's name in the file. */
  readonly name: string;
  /** SI, one for each time of the log; NaN where the file has none. */
  readonly values: Float64Array;
}

/** What was recorded beside the drive, on the clock of the drive it came with. */
export interface RecordedLog {
  /** s, strictly increasing; may start before 0 and end after the drive when the drive was cut. */
  readonly time: Float64Array;
  readonly channels: readonly RecordedChannel[];
}

interface RawBase {
  /** Lower case, digits and hyphens. */
  readonly id: string;
  readonly title: string;
  /** Name of the file. */
  readonly source: string;
  /** s, strictly increasing, first 0; at least 2. */
  readonly time: Float64Array;
  /** How it was read, one sentence each. */
  readonly reading: readonly string[];
  /** null when nothing else was recorded. */
  readonly overlay: RecordedLog | null;
}

/** A drive recorded as places. */
export interface PositionDrive extends RawBase {
  readonly kind: "positions";
  /** Degrees, WGS 84, north positive. */
  readonly latitude: Float64Array;
  /** Degrees, WGS 84, east positive. */
  readonly longitude: Float64Array;
  /** m; NaN where none was recorded. */
  readonly elevation: Float64Array;
}

/** A drive recorded as speeds. */
export interface SpeedDrive extends RawBase {
  readonly kind: "speeds";
  /** m/s. */
  readonly speed: Float64Array;
  /** Rise over run. */
  readonly grade: Float64Array;
}

/** A recorded drive as the file had it, before any treatment. */
export type RawDrive = PositionDrive | SpeedDrive;

const MOST_SAMPLES = 1_000_000;
const numbers = z.array(z.number()).min(2).max(MOST_SAMPLES);
/** Missing values stand as null, since JSON has no NaN. */
const holes = z.array(z.number().nullable()).min(2).max(MOST_SAMPLES);

/** What was recorded beside a drive, in a file; `logFromJson` and `logToJson` turn it. */
export const recordedLogSchema = z.strictObject({
  time: z.array(z.number()).max(MOST_SAMPLES),
  channels: z
    .array(
      z.strictObject({
        id: z.enum(RECORDED_CHANNELS),
        name: z.string().max(200),
        values: z.array(z.number().nullable()).max(MOST_SAMPLES),
      }),
    )
    .max(20),
});

const base = {
  id: z
    .string()
    .max(80)
    .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/),
  title: z.string().min(1).max(200),
  source: z.string().max(500),
  time: numbers,
  reading: z.array(z.string().max(1000)).max(100),
  overlay: recordedLogSchema.nullable(),
};

/** A raw drive in a project or cycle file; `rawFromJson` and `rawToJson` turn it. */
export const rawDriveSchema = z
  .discriminatedUnion("kind", [
    z.strictObject({
      kind: z.literal("positions"),
      ...base,
      latitude: z.array(z.number().min(-90).max(90)).min(2).max(MOST_SAMPLES),
      longitude: z.array(z.number().min(-180).max(180)).min(2).max(MOST_SAMPLES),
      elevation: holes,
    }),
    z.strictObject({ kind: z.literal("speeds"), ...base, speed: numbers, grade: numbers }),
  ])
  .superRefine((drive, context) => {
    const wrong = (path: PropertyKey[], what: string, accepted: string): void => {
      context.addIssue({ code: "custom", path, params: { what, accepted } });
    };
    const count = drive.time.length;
    const lists =
      drive.kind === "positions"
        ? { latitude: drive.latitude, longitude: drive.longitude, elevation: drive.elevation }
        : { speed: drive.speed, grade: drive.grade };
    for (const [name, list] of Object.entries(lists)) {
      if (list.length !== count) wrong([name], `a list of ${list.length}`, `${count} numbers, as in time`);
    }
    for (const channel of drive.overlay?.channels ?? []) {
      const want = drive.overlay?.time.length ?? 0;
      if (channel.values.length !== want) {
        wrong(["overlay"], `${channel.id} has ${channel.values.length} values`, `${want}, as in its time`);
      }
    }
    if (drive.time[0] !== 0) wrong(["time", 0], "the first time is not 0", "0");
    const fall = firstFall(drive.time);
    if (fall > 0) wrong(["time", fall], "time does not go on", `more than ${drive.time[fall - 1]}`);
    const late = firstFall(drive.overlay?.time ?? []);
    if (late > 0) wrong(["overlay", "time", late], "time does not go on", "rising times");
  });

const firstFall = (time: readonly number[]): number =>
  time.findIndex((now, i) => i > 0 && now <= (time[i - 1] ?? 0));

/** A raw drive as JSON holds it. */
export type RawDriveJson = z.infer<typeof rawDriveSchema>;

const withNaN = (list: readonly (number | null)[]): Float64Array =>
  Float64Array.from(list, (value) => value ?? Number.NaN);
const withNull = (list: Float64Array): (number | null)[] =>
  Array.from(list, (value) => (Number.isNaN(value) ? null : value));

/** A recorded log as JSON holds it. */
export type RecordedLogJson = z.infer<typeof recordedLogSchema>;

/** Typed arrays of what `recordedLogSchema` has parsed. */
export const logFromJson = (json: RecordedLogJson): RecordedLog => ({
  time: Float64Array.from(json.time),
  channels: json.channels.map((channel) => ({ ...channel, values: withNaN(channel.values) })),
});

/** Plain lists; holes as null, since JSON has no NaN. */
export const logToJson = (log: RecordedLog): RecordedLogJson => ({
  time: [...log.time],
  channels: log.channels.map((channel) => ({ ...channel, values: withNull(channel.values) })),
});

/** Typed arrays of what `rawDriveSchema` has parsed. */
export function rawFromJson(json: RawDriveJson): RawDrive {
  const overlay = json.overlay && logFromJson(json.overlay);
  const common = { ...json, time: Float64Array.from(json.time), overlay };
  if (json.kind === "speeds") {
    return {
      ...common,
      kind: "speeds",
      speed: Float64Array.from(json.speed),
      grade: Float64Array.from(json.grade),
    };
  }
  return {
    ...common,
    kind: "positions",
    latitude: Float64Array.from(json.latitude),
    longitude: Float64Array.from(json.longitude),
    elevation: withNaN(json.elevation),
  };
}

/** Plain lists for `JSON.stringify`; `rawFromJson` of the parsed text gives the same to the last bit. */
export function rawToJson(drive: RawDrive): RawDriveJson {
  const overlay = drive.overlay && logToJson(drive.overlay);
  const common = { ...drive, time: [...drive.time], reading: [...drive.reading], overlay };
  if (drive.kind === "speeds") {
    return { ...common, kind: "speeds", speed: [...drive.speed], grade: [...drive.grade] };
  }
  return {
    ...common,
    kind: "positions",
    latitude: [...drive.latitude],
    longitude: [...drive.longitude],
    elevation: withNull(drive.elevation),
  };
}
