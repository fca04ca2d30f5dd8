import { z } from "zod";
import { idSchema as id, tableSchema as table, titleSchema as title } from "./cycle-table.ts";
import { ownCycleSchema } from "./own-cycles.ts";

/** Version that is written. */
export const SCHEMA_VERSION = 1;

/** The places of the app, in the order of the rail. */
export const PLACES = ["bench", "road", "compare", "lessons", "vehicle", "cycles"] as const;

/** rad/s: far beyond any shaft here; keeps nonsense out. */
const FASTEST = 5_000;

const vehicle = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("preset"), id }),
  /** `readVehicle` of the engine checks what is inside. */
  z.strictObject({ kind: z.literal("own"), title, parameters: z.record(z.string(), z.unknown()) }),
]);

const cycle = z.discriminatedUnion("kind", [
  /** What `cycleById` takes: an id, or a manoeuvre's line such as `cruise:speed=100km/h`. */
  z.strictObject({ kind: z.literal("catalogue"), line: z.string().min(1).max(500) }),
  table,
]);

const strategy = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("built-in"), id }),
  /** One module's text with `decide(now, memory)`. */
  z.strictObject({ kind: z.literal("own"), title, text: z.string().max(200_000) }),
]);

const shaft = z.strictObject({
  /** Two are given (driven or held), the third follows. */
  mode: z.enum(["drive", "hold", "follow"]),
  /** rad/s; what a following shaft does comes from the other two, its number here is only the last one shown. */
  speed: z.number().min(-FASTEST).max(FASTEST),
});

const bench = z
  .strictObject({
    sun: shaft.prefault({ mode: "follow", speed: 0 }),
    carrier: shaft.prefault({ mode: "drive", speed: 0 }),
    ring: shaft.prefault({ mode: "hold", speed: 0 }),
    /** N·m at the carrier. */
    engineTorque: z.number().min(-2_000).max(2_000).default(0),
    /** N·m of the output machine on its own shaft; null: it uses what the sun machine makes. */
    outputTorque: z.number().min(-5_000).max(5_000).nullable().default(null),
    /** The situation last loaded and not yet left. */
    situation: id.nullable().default(null),
  })
  .superRefine(({ sun, carrier, ring }, context) => {
    const followers = [sun, carrier, ring].filter((one) => one.mode === "follow").length;
    if (followers === 1) return;
    const what = `${followers} shafts follow`;
    const accepted = "two shafts given (drive or hold) and one that follows";
    context.addIssue({ code: "custom", path: [], params: { what, accepted } });
  });

const lesson = z.strictObject({
  id,
  /** From 0. */
  step: z.int().min(0).max(1_000),
  /** What was answered, by the question's name. */
  answers: z.record(z.string().max(80), z.union([z.number(), z.string().max(10_000)])).default({}),
  /** Of the numbers that differ from student to student. */
  seed: z.int().min(0).max(4_294_967_295).default(1),
});

/** A lesson of one's own, as the text that is written; `readLesson` of the engine checks what is inside. */
const ownLesson = z.strictObject({ id, title, text: z.string().max(500_000) });

const view = z.strictObject({
  place: z.enum(PLACES).default("bench"),
  theme: z.enum(["system", "light", "dark"]).default("system"),
  projector: z.boolean().default(false),
  units: z
    .strictObject({
      speed: z.enum(["km/h", "mph"]).default("km/h"),
      consumption: z.enum(["L/100 km", "mpg"]).default("L/100 km"),
      rotation: z.enum(["rev/min", "rad/s"]).default("rev/min"),
    })
    .prefault({}),
  /** The gear set is shown this many times slower than it turns. */
  slowdown: z.number().min(1).max(1_000).default(60),
  /** s from the start of the run. */
  cursor: z.number().nonnegative().default(0),
  /** Names of the plots shown, top to bottom; empty takes the usual ones. */
  plots: z.array(id).max(40).default([]),
});

/** A project file of the newest version. SI units throughout. */
export const projectSchema = z.strictObject({
  schemaVersion: z.literal(SCHEMA_VERSION),
  title: z.string().max(200).default(""),
  vehicle,
  cycle,
  /** Cycles that are in no catalogue, whether Road is set to one of them or not. */
  ownCycles: z.array(ownCycleSchema).max(100).default([]),
  /** The first is the one that runs on Road; all are compared. */
  strategies: z.array(strategy).max(50).default([]),
  /** Payload, wind and the like, by the engine's names; it checks them. */
  runOptions: z.record(z.string(), z.unknown()).default({}),
  bench: bench.prefault({}),
  /** The lesson that is open. */
  lesson: lesson.nullable().default(null),
  /** Other lessons that were begun. */
  lessonsBegun: z.array(lesson).max(500).default([]),
  /** Lessons of one's own. */
  lessons: z.array(ownLesson).max(200).default([]),
  view: view.prefault({}),
});

/** A project, complete. */
export type Project = z.infer<typeof projectSchema>;
/** A preset by its id, or own parameters that the engine has yet to check. */
export type VehicleChoice = Project["vehicle"];
/** A line for the catalogue, or a table of its own. */
export type CycleChoice = Project["cycle"];
/** One of ours, or a person's own text. */
export type StrategyChoice = Project["strategies"][number];
/** What stands on the bench. */
export type BenchState = Project["bench"];
/** How far a lesson is. */
export type LessonState = NonNullable<Project["lesson"]>;
/** A lesson of one's own. */
export type OwnLesson = Project["lessons"][number];
/** How the app shows it. */
export type ViewSettings = Project["view"];

/** A project with everything but these two as a new one has it. */
export const newProject = (vehicle: VehicleChoice, cycle: CycleChoice): Project =>
  projectSchema.parse({ schemaVersion: SCHEMA_VERSION, vehicle, cycle });
