import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { LANES, laneMarks, type Spells, spellAt, spellsOf } from "../../../../renderer/plots/time/lanes.ts";
import { regimeIndex, regimeLook } from "../../../../renderer/plots/time/regime-look.ts";
import { REGIMES } from "../../../../sim/run/regimes.ts";
import { aRun } from "../../support/a-run.ts";

const one = aRun("udds");
const spells = spellsOf(one.regime, one.log.rows);

const lane = (regime: number): number => LANES.indexOf(REGIMES[regime]?.family ?? "rest");

const someSpells = fc
  .array(fc.tuple(fc.nat(REGIMES.length - 1), fc.integer({ min: 1, max: 400 })), {
    minLength: 1,
    maxLength: 300,
  })
  .map((list): Spells => {
    const rows = list.flatMap(([regime, length]) => Array.from({ length }, () => regime));
    return spellsOf(Uint8Array.from(rows), rows.length);
  });

describe("spells", () => {
  it("cover the drive: each holds one regime, the next one another", () => {
    spells.starts.forEach((start, i) => {
      const end = spells.starts[i + 1] ?? one.log.rows;
      expect(end).toBeGreaterThan(start);
      expect(spells.regimes[i]).not.toBe(spells.regimes[i + 1]);
      expect(one.regime.subarray(start, end).every((regime) => regime === spells.regimes[i])).toBe(true);
    });
    expect(spells.starts[0]).toBe(0);
  });

  it("are found by a row", () => {
    for (let row = 0; row < one.log.rows; row += 61) {
      const i = spellAt(spells, row);
      expect(spells.regimes[i]).toBe(one.regime[row]);
    }
  });
});

describe("marks in the lanes", () => {
  it("of a wide window are the spells themselves, in their lanes and at their places", () => {
    const marks = laneMarks(spells, 0, one.log.rows - 1, one.log.rows - 1);
    expect(marks).toHaveLength(spells.starts.length);
    marks.forEach((mark, i) => {
      expect(mark.from).toBeCloseTo(spells.starts[i] ?? -1, 6);
      expect(mark.lane).toBe(lane(mark.regime));
    });
  });

  it("never let a spell vanish, however short it is: its lane is marked where it lies", () => {
    fc.assert(
      fc.property(someSpells, fc.integer({ min: 20, max: 200 }), (list, columns) => {
        const marks = laneMarks(list, 0, list.rows, columns);
        list.starts.forEach((start, i) => {
          const end = list.starts[i + 1] ?? list.rows;
          const middle = (((start + end) / 2) * columns) / list.rows;
          const covered = marks.some(
            (mark) =>
              mark.lane === lane(list.regimes[i] ?? 0) && mark.from <= middle + 1e-9 && mark.to >= middle - 1,
          );
          expect(covered).toBe(true);
        });
      }),
      { numRuns: 60 },
    );
  });

  it("are at most two a lane and column however often the regime changes", () => {
    const day = Uint8Array.from({ length: 200_001 }, (_, i) => (i * 7919) % REGIMES.length);
    const marks = laneMarks(spellsOf(day, day.length), 0, 200_000, 840);
    expect(marks.length).toBeLessThanOrEqual(LANES.length * 2 * 840);
    const seen = new Set(marks.map((mark) => mark.lane));
    expect(seen.size).toBe(LANES.length);
  });

  it("of a column shared by short spells show the one that lasts longest", () => {
    const [assist, drive] = [regimeIndex("assist"), regimeIndex("split-below-direct")];
    const spell = (regime: number, rows: number): number[] => Array.from({ length: rows }, () => regime);
    const rows = [...spell(assist, 20), ...spell(drive, 60), ...spell(assist, 20)];
    const marks = laneMarks(spellsOf(Uint8Array.from(rows), 100), 0, 1000, 10);
    expect(marks).toEqual([{ lane: 0, regime: drive, from: 0, to: 1 }]);
  });
});

describe("the looks of regimes", () => {
  it("differ within each lane", () => {
    for (const family of LANES) {
      const looks = REGIMES.flatMap((rule, i) => (rule.family === family ? [regimeLook(i)] : []));
      expect(new Set(looks.map(({ fill, ink }) => `${fill} ${ink}`)).size).toBe(looks.length);
    }
  });
});
