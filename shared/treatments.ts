import { z } from "zod";

const time = z.number().min(0).max(360_000);
/** Standard deviation, or found from the data. */
const jitter = (least: number, most: number) => z.union([z.number().min(least).max(most), z.literal("auto")]);

/**
 * What can be done to a recorded drive. The order of the list is the order in which it is done. Every number has a unit
 * in its comment; every treatment can be left out.
 */
export const treatmentSchema = z.discriminatedUnion("kind", [
  /** Keeps a part; its clock starts at 0 again. */
  z.strictObject({
    kind: z.literal("crop"),
    /** s, on the clock that the step before left. */
    start: time,
    /** s; more than start. */
    end: time,
  }),
  /** Speed and grade from positions, or calmer speed and grade of a recorded speed. */
  z.strictObject({
    kind: z.literal("smooth"),
    /** m for positions, m/s for speeds: how far off one recorded value usually is. */
    jitter: jitter(0.05, 30).default("auto"),
    /** m for positions; rise over run for a recorded grade. */
    elevationJitter: jitter(0.0005, 30).default("auto"),
    /** s between the samples of the result; for positions only. */
    step: z.number().min(0.1).max(10).default(1),
  }),
  /** Bridges stretches in which nothing was recorded. */
  z.strictObject({
    kind: z.literal("fillGaps"),
    /** s; a longer gap is taken out instead, and the drive stands still where it was. */
    longest: z.number().min(0).max(3_600).default(300),
  }),
  /** Even samples by straight lines. */
  z.strictObject({
    kind: z.literal("resample"),
    /** s. */
    step: z.number().min(0.01).max(60),
  }),
  /** Takes off what no road vehicle does. Way is lost where it binds. */
  z.strictObject({
    kind: z.literal("limitAcceleration"),
    /** m/s² when speeding up. */
    acceleration: z.number().min(0.1).max(20).default(4),
    /** m/s² when slowing down, as a positive number. */
    deceleration: z.number().min(0.1).max(20).default(6),
  }),
  /** Slow creeping that is only noise becomes standing. */
  z.strictObject({
    kind: z.literal("setToRest"),
    /** m/s. */
    below: z.number().min(0).max(5).default(0.3),
    /** s; shorter slow moments stay. */
    atLeast: z.number().min(0).max(600).default(2),
    /** s; only from here on … */
    start: time.default(0),
    /** … up to here. */
    end: time.default(360_000),
  }),
  /** Puts a start from standstill in front and a stop behind, where the recording begins or ends while moving. */
  z.strictObject({
    kind: z.literal("startAndEndAtRest"),
    /** m/s². */
    acceleration: z.number().min(0.1).max(5).default(1),
  }),
  /** No grade beyond this. */
  z.strictObject({
    kind: z.literal("limitGrade"),
    /** Rise over run. */
    steepest: z.number().min(0).max(0.5).default(0.15),
  }),
  /** A level road, where the elevations are not to be believed. */
  z.strictObject({ kind: z.literal("level") }),
]);

/** One treatment, complete. */
export type Treatment = z.output<typeof treatmentSchema>;

/** One treatment as a person writes it: what has a usual value may be left out. */
export type TreatmentInput = z.input<typeof treatmentSchema>;

/** Names of the treatments. */
export type TreatmentKind = Treatment["kind"];

/** A list as it is kept with a cycle. */
export const treatmentsSchema = z.array(treatmentSchema).max(50);
