import type { CycleTrace } from "../../shared/cycle.ts";
import { kmhToMps, mphToMps } from "../../shared/units.ts";
import type { StandardTable } from "./table.ts";

const HEADERS = {
  mph: { header: "time_s,speed_mph", toMps: mphToMps },
  "km/h": { header: "time_s,speed_kmh", toMps: kmhToMps },
} as const;

/**
 * Reads a table of `cycles/data/`. These files are part of the program, so anything unexpected in them is a
 * programming error; files of people go through `importCsv`.
 * @returns the trace in m/s on a level road, one sample a second
 * @throws Error naming table and line
 */
export function readTable(table: StandardTable): CycleTrace {
  const { header, toMps } = HEADERS[table.unit];
  // A checkout on some systems puts a carriage return before every line feed.
  const [first, ...lines] = table.csv.trimEnd().split(/\r?\n/);
  if (first !== header) throw new Error(`${table.id}: header "${first}" instead of "${header}"`);
  const time = new Float64Array(lines.length);
  const speed = new Float64Array(lines.length);
  lines.forEach((line, k) => {
    const match = /^(\d+),(\d+\.\d+)$/.exec(line);
    if (Number(match?.[1]) !== k) throw new Error(`${table.id}: line ${k + 2} reads "${line}"`);
    time[k] = k;
    speed[k] = toMps(Number(match?.[2]));
  });
  return {
    id: table.id,
    title: table.title,
    source: table.publishedIn,
    time,
    speed,
    grade: new Float64Array(lines.length),
    phases: table.phases,
    soaks: [],
    treatment: table.treatment,
  };
}
