import { beforeEach, describe, expect, it } from "vitest";
import { bench, ownVehicles, redo, resetStore, undo, vehicle } from "../../../renderer/state/store.ts";
import {
  backToPreset,
  duplicate,
  presetOf,
  refused,
  setParameters,
  takeVehicleText,
} from "../../../renderer/vehicle/edit.ts";
import { declarationsOf, VEHICLE_PARTS, valueAtPath } from "../../../renderer/vehicle/parts.ts";
import { SECTION, sectionBodies } from "../../../renderer/vehicle/section-layout.ts";
import { digits, shownUnit } from "../../../renderer/vehicle/shown-units.ts";
import { isQuantity } from "../../../sim/parameters/quantity.ts";
import { DECLARATIONS } from "../../../sim/vehicle/declarations.ts";
import { PRESETS, vehicleById } from "../../../sim/vehicle/presets/registry.ts";

beforeEach(() => {
  resetStore();
  refused.value = null;
});

describe("editing a vehicle", () => {
  it("turns a preset into an own vehicle with one value changed, and undo brings the preset back", () => {
    expect(setParameters({ "body.mass": 1700 })).toBe(true);
    expect(vehicle.value.id).toBe("compact-2");
    expect(vehicle.value.body.mass).toBe(1700);
    expect(vehicleById("compact").body.mass).not.toBe(1700);
    undo();
    expect(vehicle.value.id).toBe("compact");
    expect(ownVehicles.value).toHaveLength(0);
    redo();
    expect(vehicle.value.body.mass).toBe(1700);
  });

  it("keeps the own vehicle's id from the second edit on", () => {
    setParameters({ "body.mass": 1700 });
    setParameters({ "body.dragArea": 0.7 });
    expect(ownVehicles.value).toHaveLength(1);
    expect(vehicle.value).toMatchObject({ id: "compact-2", body: { mass: 1700, dragArea: 0.7 } });
  });

  it("refuses what breaks a rule, says why at the field, and stays as it was", () => {
    for (const [path, value, words] of [
      ["body.mass", 10, /too small/],
      ["body.mass", "heavy", /not a number/],
      ["gearSet.sunTeeth", 41, /ring|whole/],
      ["gearSet.planets", 3, /whole/],
      ["battery.socFloor", 0.9, /./],
      ["engine.fullLoadTorque", [1, 2], /./],
    ] as const) {
      expect(setParameters({ [path]: value }), path).toBe(false);
      expect(refused.value?.path).toBe(path);
      expect(refused.value?.text).toMatch(words);
      expect(vehicle.value.id).toBe("compact");
    }
  });

  it("changes teeth together, and the bench follows them", () => {
    const teeth = {
      "gearSet.sunTeeth": 30,
      "gearSet.planetTeeth": 24,
      "gearSet.ringTeeth": 78,
      "gearSet.planets": 3,
    };
    expect(setParameters(teeth)).toBe(true);
    const { sun, carrier, ring } = bench.value.speeds;
    expect(Math.abs(sun + 2.6 * ring - 3.6 * carrier)).toBeLessThan(1e-9);
  });

  it("duplicates, and goes back to the preset it began as", () => {
    setParameters({ "body.mass": 1700 });
    duplicate();
    expect(vehicle.value).toMatchObject({ id: "compact-3", body: { mass: 1700 } });
    backToPreset();
    expect(vehicle.value.id).toBe("compact");
    expect(presetOf("van-12")).toBe("van");
    expect(presetOf("unheard-of")).toBe("compact");
  });

  it("takes a vehicle file and refuses a broken one", () => {
    takeVehicleText(JSON.stringify({ id: "mine", name: "Mine", body: { mass: 1234 } }), "mine.json");
    expect(vehicle.value).toMatchObject({ id: "mine", body: { mass: 1234 } });
    for (const text of ["{", '{"body":{"mass":-1}}', '{"nose":1}']) {
      expect(() => takeVehicleText(text, "broken.json")).toThrow(/broken\.json/);
      expect(vehicle.value.id).toBe("mine");
    }
  });
});

describe("parameters as they are shown", () => {
  it("each come back from their shown unit, and every one belongs to a part", () => {
    const named = new Set(VEHICLE_PARTS.flatMap((part) => declarationsOf(part).map(({ path }) => path)));
    for (const { path, meta } of DECLARATIONS) {
      if (path.includes(".")) expect(named.has(path), path).toBe(true);
      const value = valueAtPath(vehicleById("compact"), path);
      if (!isQuantity(meta) || typeof value !== "number") continue;
      const { toShown, fromShown } = shownUnit(path, meta);
      const back = fromShown(Number(digits(toShown(value))));
      expect(Math.abs(back - value), path).toBeLessThanOrEqual(
        2e-5 * Math.max(1e-12, Math.abs(value)) + 1e-9,
      );
    }
  });
});

describe("the side section", () => {
  it("keeps every body on the sheet and lets sun, planet and ring meet at their teeth", () => {
    for (const { id } of PRESETS) {
      const bodies = sectionBodies(vehicleById(id));
      for (const body of bodies) {
        expect(body.height, JSON.stringify(body)).toBeGreaterThanOrEqual(0);
        expect(body.x).toBeGreaterThanOrEqual(0);
        expect(body.x + body.width).toBeLessThanOrEqual(SECTION.width);
        expect(body.y + body.height).toBeLessThanOrEqual(SECTION.height + 1);
      }
      const planet = bodies.find((body) => body.part === "gearSet" && body.fill === "steel");
      const ring = bodies.find((body) => body.part === "gearSet" && body.colour === "ring");
      expect(planet && ring && Math.abs(planet.y - (ring.y + ring.height))).toBeLessThan(1e-9);
    }
  });
});
