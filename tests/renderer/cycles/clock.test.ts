import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parseClock } from "../../../renderer/cycles/plot/clock.ts";
import { clockTime } from "../../../renderer/ui/time.ts";

describe("a typed time", () => {
  it.each([
    ["90", 90],
    ["90 s", 90],
    ["1:30", 90],
    ["1:02:03.5", 3723.5],
    ["0,5", 0.5],
    [" 2:00 ", 120],
  ])("%s is %d s", (text, seconds) => expect(parseClock(text)).toBe(seconds));

  it.each(["", "x", "-5", "1:75", "1.5:00", "1:2:3:4", "1:", "5 km"])("%s is none", (text) =>
    expect(parseClock(text)).toBeNull(),
  );

  it("reads back what is shown", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 3_600_000 }), (tenths) => {
        expect(parseClock(clockTime(tenths / 10))).toBeCloseTo(tenths / 10, 9);
      }),
    );
  });
});
