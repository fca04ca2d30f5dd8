import { describe, expect, it } from "vitest";
import { placesOf, ROOMS } from "../../../../renderer/drive/flow/places.ts";
import { demandsOf, peaksOf, scaleFor, steppedScale } from "../../../../renderer/drive/flow/scale.ts";
import { at } from "../../../../shared/at.ts";
import { FLOWS, flowsAt } from "../../../../sim/run/flows.ts";
import { runsOfAllKinds } from "./runs.ts";

const places = placesOf({ width: 842, height: 306, text: 14 });
const { log } = at(runsOfAllKinds(), 0);

describe("the scale of a flow sheet", () => {
  it("is that of the run's largest moment in each room", () => {
    const peaks = peaksOf({}, log);
    const found = ROOMS.map(() => 0);
    for (let row = 0; row < log.rows; row += 1) {
      const demands = demandsOf(flowsAt(log, row));
      ROOMS.forEach((room, i) => {
        found[i] = Math.max(found[i] ?? 0, demands[room]);
      });
    }
    ROOMS.forEach((room, i) => {
      expect(peaks[room], room).toBeCloseTo(found[i] ?? 0, 2);
    });
  });

  it("of a drive under way is the same as if all had been read at once", () => {
    const owner = {};
    const part = (rows: number) => ({ rows, flows: log.flows.subarray(0, rows * FLOWS.length) });
    peaksOf(owner, part(500));
    peaksOf(owner, part(3000));
    expect(peaksOf(owner, log)).toEqual(peaksOf({}, log));
  });

  it("of a moment is never less than the run's, but for its steps, and moves in steps", () => {
    const whole = scaleFor(places, peaksOf({}, log));
    const scales = new Set<number>();
    for (let row = 0; row < log.rows; row += 10) {
      const stepped = steppedScale(places, demandsOf(flowsAt(log, row)));
      expect(stepped).toBeGreaterThan(whole / 1.26);
      expect(stepped).toBeLessThanOrEqual(scaleFor(places, demandsOf(flowsAt(log, row))) * 1.000001);
      scales.add(stepped);
    }
    expect(scales.size).toBeGreaterThan(3);
    expect(scales.size).toBeLessThan(30);
  });
});
