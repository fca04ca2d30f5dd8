import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { timeText } from "../../../cycles/demo/gpx-text.ts";
import { readTime } from "../../../cycles/import/gpx/time.ts";

const instant = fc.integer({ min: 0, max: 4_102_444_799_000 });

describe("readTime", () => {
  it("agrees with the runtime's calendar for any time from 1970 to 2099", () => {
    fc.assert(
      fc.property(instant, (ms) => {
        expect(readTime(new Date(ms).toISOString())).toEqual({ seconds: ms / 1000, hasZone: true });
      }),
      { numRuns: 1000 },
    );
  });

  it.each([
    ["2024-05-01T07:30:00Z", 1_714_548_600, true],
    ["2024-05-01T09:30:00+02:00", 1_714_548_600, true],
    ["2024-05-01T02:00:00-0530", 1_714_548_600, true],
    ["2024-05-01T07:30:00.25Z", 1_714_548_600.25, true],
    [" 2024-05-01 07:30:00 ", 1_714_548_600, false],
    ["2000-02-29T00:00:00Z", 951_782_400, true],
    ["2016-12-31T23:59:60Z", 1_483_228_800, true],
  ])("reads %s", (text, seconds, hasZone) => {
    expect(readTime(text)).toEqual({ seconds, hasZone });
  });

  it.each([
    "",
    "yesterday",
    "2024-05-01",
    "07:30:00",
    "2024-13-01T00:00:00Z",
    "2023-02-29T00:00:00Z",
    "1900-02-29T00:00:00Z",
    "2024-04-31T00:00:00Z",
    "2024-05-01T24:00:00Z",
    "2024-05-01T07:60:00Z",
    "2024-05-01T07:30:61Z",
    "2024-05-01T07:30:00+15:00",
    "01/05/2024 07:30",
    "1714548600",
  ])("refuses %j", (text) => {
    expect(readTime(text)).toBeNull();
  });
});

describe("timeText", () => {
  it("writes what the runtime's calendar writes", () => {
    fc.assert(
      fc.property(instant, (ms) => {
        expect(timeText(ms / 1000)).toBe(new Date(ms).toISOString().replace(".000Z", "Z"));
      }),
      { numRuns: 1000 },
    );
  });
});
