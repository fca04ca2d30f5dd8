import { listCycles } from "../../cycles/catalogue.ts";
import { SITUATIONS } from "../../sim/bench/situations.ts";
import { STRATEGIES } from "../../sim/control/strategies/registry.ts";
import { ASK_FIELDS } from "../../sim/lesson/fields/ask.ts";
import { BENCH_FIELDS } from "../../sim/lesson/fields/bench.ts";
import { LESSON_FIELDS } from "../../sim/lesson/fields/head.ts";
import { POINT_FIELDS } from "../../sim/lesson/fields/point.ts";
import { RUN_FIELDS } from "../../sim/lesson/fields/run.ts";
import { FREE, LESSON_PARTS, VIEWS } from "../../sim/lesson/lesson.ts";
import type { Quantity } from "../../sim/lesson/quantities/quantity.ts";
import { QUANTITIES } from "../../sim/lesson/quantities/registry.ts";
import type { BLOCKS } from "../../sim/lesson/read.ts";

/** Name of a fenced block. */
export type BlockName = (typeof BLOCKS)[number];

/** A field of a block. */
export interface BlockField {
  readonly name: string;
  readonly many: boolean;
}

const fields = (names: readonly string[]): readonly BlockField[] =>
  names.map((name) => ({ name: name.replace("*", ""), many: name.endsWith("*") }));

/** The fields of every block, as the reader of lessons knows them. */
export const FIELDS: Readonly<Record<BlockName, readonly BlockField[]>> = {
  lesson: fields(LESSON_FIELDS),
  bench: fields(BENCH_FIELDS),
  run: fields(RUN_FIELDS),
  point: fields(POINT_FIELDS),
  ask: fields(ASK_FIELDS),
};

/** On which stages a quantity can be read. */
export const stagesOf = ({ bench, moment, run }: Quantity): readonly ("bench" | "moment" | "run")[] => [
  ...(bench ? (["bench"] as const) : []),
  ...(moment ? (["moment"] as const) : []),
  ...(run ? (["run"] as const) : []),
];

/** Every quantity. */
export const QUANTITY_LIST: readonly Quantity[] = QUANTITIES;

/** Words that fields take, from the registries. */
export const NAMES = {
  situations: SITUATIONS.map(({ id }) => id),
  strategies: STRATEGIES.map(({ id }) => id),
  cycles: listCycles().map(({ id }) => id),
  parts: LESSON_PARTS,
  views: VIEWS,
  free: FREE,
} as const satisfies Readonly<Record<string, readonly string[]>>;
