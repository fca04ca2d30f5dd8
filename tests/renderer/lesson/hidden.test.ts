import { describe, expect, it } from "vitest";
import { hiddenParts, hiddenQuantities } from "../../../renderer/lesson/hidden.ts";
import { worked } from "../../sim/lesson/works.ts";

const lesson = worked("torque-split");
const none = (): boolean => false;
const all = (): boolean => true;

describe("what a step hides", () => {
  it("is what its stage hides, until its number is given or every question there that asks for it is settled", () => {
    // Steps 1 to 3 share one stage, which hides both torques; one question asks for both, one for each alone.
    for (const step of [0, 1, 2]) {
      expect([...hiddenQuantities(lesson, step, none)].sort()).toEqual(["ring torque", "sun torque"]);
      expect([...hiddenQuantities(lesson, step, all)]).toEqual([]);
    }
    const direction = (name: string): boolean => name === "direction";
    expect([...hiddenQuantities(lesson, 1, direction)].sort()).toEqual(["ring torque", "sun torque"]);
    const number = (name: string): boolean => name === "sun-torque";
    expect([...hiddenQuantities(lesson, 2, number)]).toEqual(["ring torque"]);
    // The first step still asks which way both push.
    expect([...hiddenQuantities(lesson, 0, number)].sort()).toEqual(["ring torque", "sun torque"]);
  });

  it("is what its own open questions are about, also where the stage hides nothing", () => {
    const [power] = lesson.steps.flatMap(({ asks }, i) =>
      asks.some(({ name }) => name === "electrical-power") ? [i] : [],
    );
    expect([...hiddenQuantities(lesson, power ?? -1, none)]).toContain("electrical power");
    expect([...hiddenQuantities(lesson, power ?? -1, all)]).not.toContain("electrical power");
  });

  it("stays hidden where nobody asks for it", () => {
    const three = worked("three-shafts");
    // The first step hides the sun's speed; the second, on the same stage, asks for it.
    expect([...hiddenQuantities(three, 0, (name) => name === "basic-ratio")]).toContain("sun speed");
    expect([...hiddenQuantities(three, 0, (name) => name === "ring-held")]).not.toContain("sun speed");
  });

  it("is nothing beyond the lesson", () => {
    expect(hiddenQuantities(lesson, 99, none).size).toBe(0);
  });
});

describe("what the views leave out", () => {
  it("is the number itself and what would give it away at a glance", () => {
    const parts = hiddenParts(new Set(["sun torque", "ring speed", "charge"]));
    expect(parts.torques).toEqual(["sun"]);
    expect(parts.speeds).toEqual(["ring"]);
    // Power over speed is torque.
    expect(parts.ribbons.has("sun")).toBe(true);
    expect(parts.flows.has("sunElectric")).toBe(true);
    expect(parts.charge).toBe(true);
    expect(parts.roadSpeed).toBe(false);
  });

  it("is the mechanical path where its power or its share is asked for", () => {
    expect(hiddenParts(new Set(["mechanical power"])).ribbons.has("mechanical")).toBe(true);
    expect(hiddenParts(new Set(["electrical share"])).shares).toBe(true);
    expect(hiddenParts(new Set(["regime"])).regime).toBe(true);
  });

  it("is nothing when nothing is hidden", () => {
    const parts = hiddenParts(new Set());
    expect([parts.torques.length, parts.speeds.length, parts.ribbons.size, parts.flows.size]).toEqual([
      0, 0, 0, 0,
    ]);
  });
});
