import { describe, expect, it } from "vitest";
import { type RunSpec, recentRuns } from "../../../sim/lesson/runs.ts";

const spec = (speed: number): RunSpec => ({
  vehicle: { preset: "compact", settings: [] },
  cycle: `cruise:speed=${speed}km/h,for=5s`,
  strategy: "rules",
  options: {},
});

describe("runs kept for lessons", () => {
  it("are made once while they are among the last, and made again after that", () => {
    const made: string[] = [];
    const runs = recentRuns(2, ({ cycle }) => made.push(cycle));
    const first = runs(spec(30));
    runs(spec(40));
    expect(runs(spec(30))).toBe(first);
    expect(made).toHaveLength(2);
    // 40 was asked for longest ago, so it goes.
    runs(spec(50));
    expect(runs(spec(30))).toBe(first);
    runs(spec(40));
    expect(made.map((line) => /speed=(\d+)/.exec(line)?.[1])).toEqual(["30", "40", "50", "40"]);
  });

  it("can be copied to another thread: as many rows as the log has", () => {
    const { parts, log } = recentRuns(1)(spec(30));
    expect(parts().rows).toBe(log.rows);
  });
});
