import { z } from "zod";
import type { CycleTrace } from "../../../shared/cycle.ts";
import { InputError } from "../../../shared/errors.ts";
import { readVehicle } from "../../vehicle/read.ts";
import { countIn, countJobs, isIn, type Part, type SweepPlan, WHOLE } from "./plan.ts";
import { sweepRowSchema } from "./row-schema.ts";
import type { SweepRow } from "./run-sweep-job.ts";

/** Results of a plan or of a part of it: with the plan inside, everything that is needed to repeat them. */
export interface SweepResults {
  readonly plan: SweepPlan;
  /** which runs these are; null for merged parts */
  readonly part: Part | null;
  readonly rows: readonly SweepRow[];
  /** of the program that made them */
  readonly version: string;
}

const FORMAT = "trishaft-runs";

/** How many runs the results should hold, and how many are missing. */
export function missing({ plan, part, rows }: SweepResults): {
  readonly of: number;
  readonly missing: number;
} {
  const of = countIn(plan, part ?? WHOLE);
  return { of, missing: of - rows.length };
}

const plain = (trace: CycleTrace) => ({
  ...trace,
  time: [...trace.time],
  speed: [...trace.speed],
  grade: [...trace.grade],
});

/** The plan as plain data; two plans are the same when this is. */
const planJson = (plan: SweepPlan) => ({ ...plan, cycles: plan.cycles.map(plain) });

/** Results as JSON, rows in the order of their indices. The same results give the same text. */
export function resultsJson(results: SweepResults): string {
  const { plan, part, rows, version } = results;
  const count = missing(results);
  const file = {
    format: FORMAT,
    format_version: 1,
    program_version: version,
    complete: count.missing === 0,
    runs: count.of,
    part: part ? [part.number, part.of] : null,
    plan: planJson(plan),
    rows: [...rows].sort((a, b) => a.index - b.index),
  };
  return `${JSON.stringify(file, null, 1)}\n`;
}

const numbers = z
  .array(z.number())
  .min(2)
  .transform((list) => Float64Array.from(list));
const span = { start: z.number(), end: z.number() };

const cycleSchema = z
  .object({
    id: z.string(),
    title: z.string(),
    source: z.string(),
    time: numbers,
    speed: numbers,
    grade: numbers,
    phases: z.array(z.object({ id: z.string(), title: z.string(), ...span })),
    soaks: z.array(z.object(span)),
    treatment: z.array(z.string()),
  })
  .refine(
    ({ time, speed, grade }) => time.length === speed.length && time.length === grade.length,
    "time, speed and grade are of different length",
  );

const optionsSchema = z.strictObject({
  step: z.number().exactOptional(),
  startSoc: z.number().exactOptional(),
  payload: z.number().exactOptional(),
  airDensity: z.number().exactOptional(),
  airTemperature: z.number().exactOptional(),
  headWind: z.number().exactOptional(),
  auxiliaryPower: z.number().exactOptional(),
  coldStart: z.boolean().exactOptional(),
  logEvery: z.enum(["control", "step"]).exactOptional(),
});

const fileSchema = z.object({
  format: z.literal(FORMAT),
  format_version: z.literal(1),
  program_version: z.string(),
  part: z.tuple([z.number().int().min(1), z.number().int().min(1)]).nullable(),
  plan: z.object({
    vehicles: z.array(z.unknown()).min(1),
    axes: z.array(z.object({ path: z.string(), values: z.array(z.string()).min(1) })).max(2),
    cycles: z.array(cycleSchema).min(1),
    strategies: z
      .array(
        z.discriminatedUnion("kind", [
          z.object({ kind: z.literal("built-in"), id: z.string() }),
          z.object({ kind: z.literal("own"), title: z.string(), text: z.string() }),
        ]),
      )
      .min(1),
    options: optionsSchema,
    optimum: z.boolean().exactOptional(),
  }),
  rows: z.array(sweepRowSchema),
});

/**
 * Reads results back.
 * @param input parsed JSON
 * @param where name of the file, for messages
 * @throws InputError naming the first thing that is not as it should be
 */
export function readResults(input: unknown, where: string): SweepResults {
  const parsed = fileSchema.safeParse(input);
  if (!parsed.success) {
    const [issue] = parsed.error.issues;
    throw new InputError({
      what: `not the results of runs: ${issue?.message ?? "unreadable"}`,
      where: [where, issue?.path.join(".")].filter((part) => part).join(", "),
      value: "",
      accepted: "a JSON file that sweep, compare or merge has written",
    });
  }
  const { plan, part, rows, program_version: version } = parsed.data;
  const vehicles = plan.vehicles.map((vehicle) => readVehicle(vehicle, where));
  const results: SweepResults = {
    plan: { ...plan, vehicles },
    part: part ? { number: part[0], of: part[1] } : null,
    rows,
    version,
  };
  checkRows(results, where);
  return results;
}

function checkRows({ plan, part, rows }: SweepResults, where: string): void {
  const count = countJobs(plan);
  const seen = new Set<number>();
  for (const { index } of rows) {
    const belongs = index < count && (!part || isIn(part, index));
    if (belongs && !seen.has(index)) {
      seen.add(index);
      continue;
    }
    throw new InputError({
      what: belongs ? "a run stands twice" : "a run that is not of this plan and part",
      where,
      value: `index ${index}`,
      accepted: `indices below ${count}, each once`,
    });
  }
}

/**
 * Puts parts together, in the order of their runs. Parts may be missing: `missing` tells how many runs. A run that
 * stands in several files must be the same in all.
 * @param parts results and the name of each one's file
 * @throws InputError for results of another plan or program version, or runs that disagree
 */
export function mergeResults(
  parts: readonly { readonly name: string; readonly results: SweepResults }[],
): SweepResults {
  const [first] = parts;
  if (!first) throw new Error("nothing to merge");
  const { plan, version } = first.results;
  const wanted = JSON.stringify(planJson(plan));
  const rows = new Map<number, { text: string; row: SweepRow; name: string }>();
  for (const { name, results } of parts) {
    const refuse = (what: string, value: string, accepted: string): never => {
      throw new InputError({ what, where: name, value, accepted });
    };
    if (results.version !== version)
      refuse("made by another version of the program", results.version, version);
    if (JSON.stringify(planJson(results.plan)) !== wanted)
      refuse(`this is not the plan of ${first.name}`, "", "parts of one plan");
    for (const row of results.rows) {
      const text = JSON.stringify(row);
      const other = rows.get(row.index);
      if (other && other.text !== text)
        refuse(`this run is another one in ${other.name}`, `index ${row.index}`, "the same figures");
      rows.set(row.index, { text, row, name });
    }
  }
  const sorted = [...rows.values()].map(({ row }) => row).sort((a, b) => a.index - b.index);
  return { plan, part: null, rows: sorted, version };
}
