import { describe, expect, it } from "vitest";
import { cycleById, listCycles } from "../../cycles/catalogue.ts";
import { MAX_GRADE, MAX_SPEED } from "../../cycles/limits.ts";
import { at } from "../../shared/at.ts";
import { faultsOf } from "./faults-of.ts";

const infos = listCycles();

describe("the list of cycles", () => {
  it("has every standard cycle, its composites and the manoeuvres, each id once", () => {
    const ids = infos.map((info) => info.id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids).toEqual(
      expect.arrayContaining([
        "udds",
        "hwfet",
        "us06",
        "sc03",
        "nycc",
        "la92",
        "wltc-class3b",
        "nedc",
        "jc08",
      ]),
    );
    expect(ids).toEqual(expect.arrayContaining(["ftp75", "wltc-class3b-extra-high", "launch", "back-up"]));
  });

  it.each(infos)("$id: says where it is published", (info) => {
    expect(info.title).not.toBe("");
    expect(info.publishedIn).not.toBe("");
    if (info.kind !== "manoeuvre") expect(info.standing).not.toBe("");
  });
});

describe.each(infos)("$id", (info) => {
  const trace = cycleById(info.id);

  it("is a sound trace", () => {
    const { time, speed, grade } = trace;
    expect(time.length).toBeGreaterThanOrEqual(2);
    expect(speed.length).toBe(time.length);
    expect(grade.length).toBe(time.length);
    expect(at(time, 0)).toBe(0);
    for (let i = 1; i < time.length; i += 1) expect(at(time, i)).toBeGreaterThan(at(time, i - 1));
    expect(speed.every((v) => Math.abs(v) <= MAX_SPEED)).toBe(true);
    expect(grade.every((g) => Math.abs(g) <= MAX_GRADE)).toBe(true);
    expect(trace.id).toMatch(/^[a-z0-9-]+$/);
  });

  it("starts and ends at rest and goes backwards only when backing up", () => {
    expect(at(trace.speed, 0)).toBe(0);
    expect(at(trace.speed, trace.speed.length - 1)).toBe(0);
    expect(trace.speed.some((v) => v < 0)).toBe(info.id === "back-up");
  });

  it("has phases and soaks in order within it", () => {
    const end = at(trace.time, trace.time.length - 1);
    for (const parts of [trace.phases, trace.soaks]) {
      let before = 0;
      for (const part of parts) {
        expect(part.start).toBeGreaterThanOrEqual(before);
        expect(part.end).toBeGreaterThan(part.start);
        before = part.end;
      }
      expect(before).toBeLessThanOrEqual(end);
    }
  });

  it("lasts as long as the list says", () => {
    if (info.duration !== null) expect(at(trace.time, trace.time.length - 1)).toBe(info.duration);
    else expect(info.kind).toBe("manoeuvre");
  });
});

describe("cycleById", () => {
  it("reads a table once", () => {
    expect(cycleById("udds")).toBe(cycleById("udds"));
  });

  it("draws a manoeuvre with its parameters", () => {
    expect(cycleById("cruise:speed=50km/h,for=60s").id).toBe("cruise-speed-50kmh-for-60s");
  });

  it("names the known ids for an unknown one", () => {
    const [fault] = faultsOf(() => cycleById("moon-cycle"));
    expect(fault).toMatchObject({ where: "cycle", value: "moon-cycle" });
    for (const info of infos) expect(fault?.accepted).toContain(info.id);
  });

  it.each(["", "toString", "__proto__", "udds:speed=1km/h"])("refuses %j", (id) => {
    expect(faultsOf(() => cycleById(id))).toHaveLength(1);
  });

  it("offers the phases of the worldwide cycle on a clock of their own", () => {
    const phase = cycleById("wltc-class3b-medium");
    expect(phase.time.length).toBe(434);
    expect(phase.phases).toEqual([]);
    expect(phase.treatment).toEqual(["Cut to 589 to 1022 s; time counted from the cut."]);
  });
});
