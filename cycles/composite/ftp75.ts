import { at } from "../../shared/at.ts";
import type { CycleTrace } from "../../shared/cycle.ts";

/** Title in lists. */
export const FTP75_TITLE = "EPA city test (FTP-75): cold start, soak, hot start";

/** s; end of the first bag, where the vehicle stands. */
export const BAG_BOUNDARY = 505;

/** s; the vehicle stands switched off between the second and the third bag. */
export const SOAK = 600;

/**
 * The Federal Test Procedure's city test: the urban schedule from a cold start, ten minutes switched off, and its
 * first 505 seconds again. The soak carries no samples of its own; the straight line through it is at rest.
 *
 * There is no separate "hot" version: driven warm and without a soak, the city test is the urban schedule itself
 * (`udds`), and whether a run starts cold is an option of the run, not of the speeds.
 * @param udds the urban schedule, one sample a second
 * @returns 2474 s with phases `cold-transient`, `stabilised`, `hot-transient` and one soak
 */
export function buildFtp75(udds: CycleTrace): CycleTrace {
  const end = at(udds.time, udds.time.length - 1);
  const restart = end + SOAK;
  const repeated = BAG_BOUNDARY + 1;
  const join = (values: Float64Array, again: Float64Array): Float64Array => {
    const joined = new Float64Array(values.length + repeated);
    joined.set(values);
    joined.set(again.subarray(0, repeated), values.length);
    return joined;
  };
  const finish = restart + BAG_BOUNDARY;
  return {
    id: "ftp75",
    title: FTP75_TITLE,
    source: "40 CFR Part 86, Appendix I(a) and section 86.135",
    time: join(
      udds.time,
      udds.time.map((t) => t + restart),
    ),
    speed: join(udds.speed, udds.speed),
    grade: join(udds.grade, udds.grade),
    phases: [
      { id: "cold-transient", title: "Bag 1, cold transient", start: 0, end: BAG_BOUNDARY },
      { id: "stabilised", title: "Bag 2, stabilised", start: BAG_BOUNDARY, end },
      { id: "hot-transient", title: "Bag 3, hot transient", start: restart, end: finish },
    ],
    soaks: [{ start: end, end: restart }],
    treatment: [],
  };
}
