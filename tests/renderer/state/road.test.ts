import { beforeEach, describe, expect, it } from "vitest";
import {
  chosen,
  cursor,
  cycleId,
  duration,
  fits,
  frame,
  kept,
  lookAt,
  looping,
  MOST_BYTES,
  MOST_RUNS,
  moveTo,
  now,
  playFor,
  playing,
  rate,
  row,
  run,
  runOptions,
  runs,
  setRoad,
  strategyId,
  toMoment,
} from "../../../renderer/state/road.ts";
import { anglesAt, metresPerRing, type Run, readNow } from "../../../renderer/state/run.ts";
import { aRun } from "../support/a-run.ts";

const one = aRun("udds");

beforeEach(() => {
  runs.value = [one];
  lookAt(one);
  rate.value = 1;
  playing.value = false;
});

describe("what is chosen and what is looked at", () => {
  it("are the same drive only with vehicle, cycle, strategy and options the same", () => {
    const { request } = one;
    const choose = (): void => {
      lookAt(one);
      setRoad({ cycle: request.cycle.id, own: [], strategy: request.strategy, options: request.options });
    };
    choose();
    expect(fits.value).toBe(true);
    lookAt({ ...one, request: { ...request, vehicle: structuredClone(request.vehicle) } });
    expect(fits.value).toBe(true);
    lookAt({ ...one, request: { ...request, vehicle: { ...request.vehicle, name: "Another" } } });
    expect(fits.value).toBe(false);
    choose();
    cycleId.value = "hwfet";
    expect(fits.value).toBe(false);
    choose();
    strategyId.value = "thermostat";
    expect(fits.value).toBe(false);
    choose();
    runOptions.value = { ...request.options, payload: 80 };
    expect(fits.value).toBe(false);
    choose();
    lookAt({ ...one, request: { ...request, own: { title: "Mine", text: "another text" } } });
    expect(fits.value).toBe(false);
    choose();
    cycleId.value = "gone";
    expect(fits.value).toBe(false);
    choose();
    run.value = null;
    expect(fits.value).toBe(false);
  });
});

describe("the cursor", () => {
  it("stays within the run", () => {
    moveTo(-5);
    expect(cursor.value).toBe(0);
    moveTo(1e9);
    expect(cursor.value).toBe(duration.value);
    expect(row.value).toBe(one.log.rows - 1);
  });

  it("reads the row at or before it, also where times are no exact sums", () => {
    for (let i = 0; i < one.log.rows; i += 97) {
      moveTo(one.log.view("time")[i] ?? 0);
      expect(row.value).toBe(i);
      expect(now.value?.at.speed).toBe(one.log.view("speed")[i]);
    }
  });

  it("goes frame by frame and stops the playing", () => {
    playing.value = true;
    moveTo(10.04);
    frame(1);
    expect(row.value).toBe(101);
    expect(playing.value).toBe(false);
    frame(-1);
    expect(row.value).toBe(100);
  });

  it("jumps to every moment on the way on, and on the way back", () => {
    const times = one.summary?.moments.map((moment) => moment.time) ?? [];
    const seen: number[] = [];
    while (cursor.value < duration.value) {
      toMoment(1);
      seen.push(cursor.value);
    }
    expect(seen.slice(0, -1)).toEqual([...new Set(times)].filter((time) => time > 0.05));
    toMoment(-1);
    expect(cursor.value).toBe(times.at(-1));
  });
});

describe("playing", () => {
  it("moves the cursor at its rate and stops at the end", () => {
    rate.value = 20;
    playing.value = true;
    playFor(0.5);
    expect(cursor.value).toBeCloseTo(10, 12);
    playFor(1e6);
    expect(cursor.value).toBe(duration.value);
    expect(playing.value).toBe(false);
  });

  it("goes round in the chosen stretch", () => {
    chosen.value = { from: 20, to: 30 };
    looping.value = true;
    moveTo(29.5);
    playFor(1);
    expect(cursor.value).toBeCloseTo(20.5, 12);
    playFor(25);
    expect(cursor.value).toBeGreaterThanOrEqual(20);
    expect(cursor.value).toBeLessThan(30);
  });
});

describe("an instant", () => {
  it("obeys the gear equation in every row that is shown", () => {
    const k = 2.5;
    for (let i = 0; i < one.log.rows; i += 53) {
      const { sun, carrier, ring } = readNow(one, i).speeds;
      expect(Math.abs(sun + k * ring - (1 + k) * carrier)).toBeLessThan(1e-9);
    }
  });

  it("turns the gear set by integrated angles: over an hour and between rows", () => {
    const { log, request } = one;
    const end = anglesAt(log, request.vehicle, duration.value);
    const metres = log.view("distance")[log.rows - 1] ?? 0;
    expect(end.ring * metresPerRing(request.vehicle)).toBeCloseTo(metres, 6);
    const [a, b, c] = [100, 100.05, 100.1].map((time) => anglesAt(log, request.vehicle, time).ring);
    expect(b).toBeCloseTo(((a ?? 0) + (c ?? 0)) / 2, 9);
  });

  it("knows since when its regime holds", () => {
    for (let i = 200; i < one.log.rows; i += 301) {
      const instant = readNow(one, i);
      const first = Math.round(instant.since * 10);
      expect(readNow(one, first).regime).toBe(instant.regime);
      if (first > 0) expect(readNow(one, first - 1).regime).not.toBe(instant.regime);
    }
  });
});

describe("the runs kept", () => {
  const many = (count: number, bytes: number): Run[] =>
    Array.from({ length: count }, (_, i) => ({ ...one, id: i + 1, bytes }));

  it("are the newest ones, by number and by bytes, and never none", () => {
    expect(kept(many(30, 1)).map((each) => each.id)[0]).toBe(30 - MOST_RUNS + 1);
    expect(kept(many(5, MOST_BYTES / 2))).toHaveLength(2);
    expect(kept(many(3, MOST_BYTES * 2)).map((each) => each.id)).toEqual([3]);
  });

  it("can be looked at from their start", () => {
    moveTo(50);
    lookAt(one);
    expect(run.value).toBe(one);
    expect(cursor.value).toBe(0);
  });
});
