import { describe, expect, it } from "vitest";
import {
  axisTitle,
  readAxis,
  type Sweepable,
  shownValue,
  sweepables,
  usualForm,
} from "../../../../renderer/compare/sweep/axis-choice.ts";
import { en } from "../../../../renderer/texts/en.ts";
import { checkAxes, OPTION_PATHS } from "../../../../sim/study/sweep/axis.ts";
import { DECLARATIONS } from "../../../../sim/vehicle/declarations.ts";
import { vehicleById } from "../../../../sim/vehicle/presets/registry.ts";

const compact = vehicleById("compact");
const all = sweepables({ ...en.road.options, step: en.compare.sweep.step });
const at = (path: string): Sweepable => {
  const found = all.find((one) => one.path === path);
  if (!found) throw new Error(`${path} is not there`);
  return found;
};

describe("what can be swept", () => {
  it("is every run option and every declared number, choice and flag, each once", () => {
    const paths = all.map(({ path }) => path);
    expect(new Set(paths).size).toBe(paths.length);
    for (const path of OPTION_PATHS) expect(paths).toContain(path);
    const declared = DECLARATIONS.filter(
      ({ path, meta }) => path.includes(".") && !["column", "grid", "text"].includes(meta.kind),
    );
    expect(declared.length).toBeGreaterThan(80);
    for (const { path } of declared) expect(paths).toContain(path);
  });

  it("is every list of every vehicle too, as a whole by a factor", () => {
    const lists = all.filter(({ path }) => path.startsWith("factor."));
    const declared = DECLARATIONS.filter(
      ({ path, meta }) => meta.kind === "column" && !path.startsWith("engine.map."),
    );
    expect(lists.map(({ path }) => path)).toEqual(declared.map(({ path }) => `factor.${path}`));
    const entry = at("factor.engine.fullLoadTorque");
    expect(axisTitle(entry)).toMatch(/, ×$/);
    expect(readAxis(entry, usualForm(entry, compact))).toEqual({
      ok: true,
      axis: { path: entry.path, values: ["0.8", "0.9", "1", "1.1", "1.2"] },
    });
    expect(readAxis(entry, { ...usualForm(entry, compact), from: "0" })).toMatchObject({ field: "from" });
  });

  it("is proposed with values that the engine takes, for every preset", () => {
    for (const id of ["compact", "family", "van"]) {
      for (const entry of all) {
        const read = readAxis(entry, usualForm(entry, vehicleById(id)));
        expect(read.ok, `${id} ${entry.path}`).toBe(true);
        if (read.ok) expect(() => checkAxes([read.axis])).not.toThrow();
      }
    }
  });
});

describe("a typed axis", () => {
  it("counts in the unit shown and gives SI, without crumbs of the conversion", () => {
    const read = readAxis(at("run.headWind"), { path: "run.headWind", from: "−36", to: "36", steps: "3" });
    expect(read).toEqual({ ok: true, axis: { path: "run.headWind", values: ["-10", "0", "10"] } });
    expect(shownValue(at("run.headWind"), "-10")).toBe("-36");
    expect(axisTitle(at("run.headWind"))).toBe("Head wind, km/h");
  });

  it("takes a decimal comma, and whole numbers once each", () => {
    const charge = readAxis(at("run.startSoc"), { path: "run.startSoc", from: "47,5", to: "60", steps: "2" });
    expect(charge.ok && charge.axis.values).toEqual(["0.475", "0.6"]);
    const teeth = { path: "gearSet.planets", from: "3", to: "4", steps: "5" };
    const read = readAxis(at("gearSet.planets"), teeth);
    expect(read.ok && read.axis.values).toEqual(["3", "4"]);
  });

  it("takes all words of a choice or a flag", () => {
    const read = readAxis(at("run.coldStart"), { path: "run.coldStart", from: "", to: "", steps: "" });
    expect(read.ok && read.axis.values).toEqual(["false", "true"]);
  });

  it("says which field is wrong and why", () => {
    const entry = at("run.payload");
    const form = usualForm(entry, compact);
    expect(readAxis(entry, { ...form, from: "much" })).toEqual({ ok: false, field: "from", why: "number" });
    expect(readAxis(entry, { ...form, to: "99999" })).toEqual({ ok: false, field: "to", why: "range" });
    for (const steps of ["1", "2.5", "", "1001"])
      expect(readAxis(entry, { ...form, steps })).toEqual({ ok: false, field: "steps", why: "steps" });
  });
});
