import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { followInstant, instant, TURNS } from "../../../renderer/state/instant.ts";
import { held, lookAt, moveTo, now, playing, runs } from "../../../renderer/state/road.ts";
import { aRun } from "../support/a-run.ts";

const [one, other] = [aRun("udds"), aRun("hwfet")];

let asked: (() => void) | null = null;
/** The next picture. */
const frame = (): void => {
  const call = asked;
  asked = null;
  call?.();
};
const rows = (): (number | undefined)[] => TURNS.map((turn) => instant[turn].value?.row);

let stop = (): void => undefined;
beforeEach(() => {
  vi.stubGlobal("requestAnimationFrame", (call: () => void) => {
    asked = call;
    return 1;
  });
  vi.stubGlobal("cancelAnimationFrame", () => {
    asked = null;
  });
  runs.value = [one, other];
  lookAt(one);
  stop = followInstant();
});
afterEach(() => {
  stop();
  playing.value = false;
  held.value = false;
  vi.unstubAllGlobals();
});

describe("the instant as the drawings show it", () => {
  it("is the same everywhere at once while the cursor rests", () => {
    moveTo(12);
    expect(rows()).toEqual([120, 120, 120]);
    expect(asked).toBeNull();
  });

  it("goes round one group a frame while a run plays, and all come to where it is", () => {
    playing.value = true;
    moveTo(20);
    expect(rows().filter((row) => row === 200)).toHaveLength(1);
    frame();
    expect(rows().filter((row) => row === 200)).toHaveLength(2);
    moveTo(21);
    for (let i = 0; i < TURNS.length; i += 1) frame();
    expect(rows()).toEqual([210, 210, 210]);
    frame();
    expect(asked).toBeNull();
  });

  it("never leaves a group out while the cursor goes on every frame", () => {
    playing.value = true;
    for (let i = 1; i <= 12; i += 1) {
      moveTo(30 + i);
      frame();
      if (i < TURNS.length) continue;
      for (const row of rows()) expect(row).toBeGreaterThan((30 + i - TURNS.length) * 10);
    }
  });

  it("shows all at once when play ends, the cursor is let go, or another run is looked at", () => {
    playing.value = true;
    moveTo(40);
    playing.value = false;
    expect(rows()).toEqual([400, 400, 400]);
    held.value = true;
    moveTo(50);
    held.value = false;
    expect(rows()).toEqual([500, 500, 500]);
    playing.value = true;
    moveTo(60);
    lookAt(other);
    for (const turn of TURNS) expect(instant[turn].value).toBe(now.value);
  });
});
