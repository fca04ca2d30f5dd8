import { z } from "zod";

/** Version that is written. */
export const SCHEMA_VERSION = 1;

/** The places of the app, in the order of the rail. */
export const PLACES = ["bench", "road", "compare", "lessons", "vehicle", "cycles"] as const;

const MOST_SAMPLES = 1_000_000;
/** rad/s: far beyond any shaft here; keeps nonsense out. */
const FASTEST = 5_000;

const id = z
  .string()
  .min(1)
  .max(80)
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, "lower-case words joined by hyphens");
const title = z.string().min(1).max(200);
const samples = z.array(z.number()).min(2).max(MOST_SAMPLES);

const vehicle = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("preset"), id }),
  /** `readVehicle` of the engine checks what is inside. */
  z.strictObject({ kind: z.literal("own"), title, parameters: z.record(z.string(), z.unknown()) }),
]);

const span = { start: z.number().nonnegative(), end: z.number().nonnegative() };

/** A table as it is embedded: the fields of `CycleTrace`. */
const table = z
  .strictObject({
    kind: z.literal("table"),
    id,
    title,
    source: z.string().max(500),
    /** s */
    time: samples,
    /** m/s */
    speed: samples,
    /** Rise over run. */
    grade: samples,
    phases: z
      .array(z.strictObject({ id, title, ...span }))
      .max(100)
      .default([]),
    soaks: z.array(z.strictObject(span)).max(100).default([]),
    treatment: z.array(z.string().max(1000)).max(100).default([]),
  })
  .superRefine((cycle, context) => {
    const fault = tableFault(cycle);
    if (fault) context.addIssue({ code: "custom", path: fault.path, params: fault });
  });

interface TableFault {
  readonly path: (string | number)[];
  readonly what: string;
  readonly accepted: string;
}

function tableFault(cycle: Record<"time" | "speed" | "grade", number[]>): TableFault | null {
  const { time } = cycle;
  for (const name of ["speed", "grade"] as const) {
    if (cycle[name].length !== time.length) {
      return {
        path: [name],
        what: `a list of ${cycle[name].length}, but time has ${time.length}`,
        accepted: `${time.length} numbers`,
      };
    }
  }
  if (time[0] !== 0) return { path: ["time", 0], what: "the first time is not 0", accepted: "0" };
  const fall = time.findIndex((now, i) => i > 0 && now <= (time[i - 1] ?? 0));
  if (fall < 0) return null;
  return { path: ["time", fall], what: "time does not go on", accepted: `more than ${time[fall - 1]}` };
}

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
  /** The first is the one that runs on Road; all are compared. */
  strategies: z.array(strategy).max(50).default([]),
  /** Payload, wind and the like, by the engine's names; it checks them. */
  runOptions: z.record(z.string(), z.unknown()).default({}),
  bench: bench.prefault({}),
  lesson: lesson.nullable().default(null),
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
/** How the app shows it. */
export type ViewSettings = Project["view"];

/** A project with everything but these two as a new one has it. */
export const newProject = (vehicle: VehicleChoice, cycle: CycleChoice): Project =>
  projectSchema.parse({ schemaVersion: SCHEMA_VERSION, vehicle, cycle });
