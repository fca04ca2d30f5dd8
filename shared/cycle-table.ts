import { z } from "zod";
import type { CycleTrace } from "./cycle.ts";

const MOST_SAMPLES = 1_000_000;

/** Lower-case words joined by hyphens, as ids of cycles, strategies and the like are written in files. */
export const idSchema = z
  .string()
  .min(1)
  .max(80)
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, "lower-case words joined by hyphens");

/** A name for people. */
export const titleSchema = z.string().min(1).max(200);

const samples = z.array(z.number()).min(2).max(MOST_SAMPLES);
const span = { start: z.number().nonnegative(), end: z.number().nonnegative() };

/** A cycle's table as it is embedded in a file: the fields of `CycleTrace`. */
export const tableSchema = z
  .strictObject({
    kind: z.literal("table"),
    id: idSchema,
    title: titleSchema,
    source: z.string().max(500),
    /** s */
    time: samples,
    /** m/s */
    speed: samples,
    /** Rise over run. */
    grade: samples,
    phases: z
      .array(z.strictObject({ id: idSchema, title: titleSchema, ...span }))
      .max(100)
      .default([]),
    soaks: z.array(z.strictObject(span)).max(100).default([]),
    treatment: z.array(z.string().max(1000)).max(200).default([]),
  })
  .superRefine((cycle, context) => {
    const fault = tableFault(cycle);
    if (fault) context.addIssue({ code: "custom", path: fault.path, params: fault });
  });

/** A table as JSON holds it. */
export type CycleTable = z.infer<typeof tableSchema>;

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

/** The cycle of a table that `tableSchema` has parsed. */
export function traceOfTable({ kind: _, time, speed, grade, ...rest }: CycleTable): CycleTrace {
  return {
    ...rest,
    time: Float64Array.from(time),
    speed: Float64Array.from(speed),
    grade: Float64Array.from(grade),
  };
}

/** Plain lists for a file; `traceOfTable` of the parsed text gives the same cycle to the last bit. */
export const tableOf = (trace: CycleTrace): CycleTable => ({
  kind: "table",
  id: trace.id,
  title: trace.title,
  source: trace.source,
  time: [...trace.time],
  speed: [...trace.speed],
  grade: [...trace.grade],
  phases: trace.phases.map((phase) => ({ ...phase })),
  soaks: trace.soaks.map((soak) => ({ ...soak })),
  treatment: [...trace.treatment],
});
