import { realAt } from "../../../shared/at.ts";
import { openAt } from "../optimum/battery.ts";
import type { Optimum } from "../optimum/optimum.ts";
import type { EnergySeries } from "./differ.ts";

/**
 * Fuel and battery energy of the least-fuel path since the start, at the stages' starts and at the end, so that a run of
 * the same cycle can be held against it (`fuelOver`). The battery's energy is that of its source, as a run's is: open
 * voltage in the middle of a stage times the charge moved.
 */
export function boundSeries({
  values,
  path,
  demand,
}: Pick<Optimum, "values" | "path" | "demand">): EnergySeries {
  const { problem } = values;
  const count = problem.stages + 1;
  const fuel = new Float64Array(count);
  const battery = new Float64Array(count);
  let running = problem.startOn;
  for (let k = 0; k < problem.stages; k += 1) {
    const runs = realAt(path.on, k) === 1;
    const start = runs && !running ? problem.startFuel : 0;
    fuel[k + 1] = realAt(fuel, k) + start + problem.stage * realAt(path.fuel, k);
    const [from, to] = [realAt(path.soc, k), realAt(path.soc, k + 1)];
    const open = openAt(problem.source, (from + to) / 2);
    battery[k + 1] = realAt(battery, k) + open * problem.source.charge * (from - to);
    running = runs;
  }
  return { time: Float64Array.from({ length: count }, (_, k) => k * demand.stage), fuel, battery };
}
