import { at } from "../shared/at.ts";
import type { CycleTrace } from "../shared/cycle.ts";

/**
 * A trace as CSV that `importCsv` reads back to the last bit: its treatment as comments, then time, speed and grade in
 * SI. A trace steeper than 0.35 somewhere cannot be read back without naming the grade's unit.
 */
export function* traceCsv(trace: CycleTrace): Generator<string> {
  const about = [`${trace.title}; from ${trace.source}`, ...trace.treatment];
  // A line break would end the comment.
  yield about.map((line) => `# ${line.replace(/[\r\n]+/g, " ")}\n`).join("");
  yield "time_s,speed_mps,grade\n";
  for (let i = 0; i < trace.time.length; i += 1) {
    yield `${at(trace.time, i)},${at(trace.speed, i)},${at(trace.grade, i)}\n`;
  }
}
