import { beforeEach, describe, expect, it } from "vitest";
import { bench, ownVehicles, redo, resetStore, undo, vehicle } from "../../../renderer/state/store.ts";
import {
  backToPreset,
  duplicate,
  presetOf,
  refused,
  setParameter,
  takeBack,
  takeVehicleText,
} from "../../../renderer/vehicle/edit.ts";
import { declarationsOf, FORM_PARTS, valueAtPath } from "../../../renderer/vehicle/parts.ts";
import { SECTION, sectionBodies } from "../../../renderer/vehicle/section-layout.ts";
import { digits, shownUnit } from "../../../renderer/vehicle/shown-units.ts";
import { readTyped, textOf } from "../../../renderer/vehicle/typed.ts";
import { rpmToRadPerS } from "../../../shared/units.ts";
import { isQuantity } from "../../../sim/parameters/quantity.ts";
import { DECLARATIONS } from "../../../sim/vehicle/declarations.ts";
import { PRESETS, vehicleById } from "../../../sim/vehicle/presets/registry.ts";

beforeEach(() => {
  resetStore();
  for (const path of refused.value.keys()) takeBack(path);
});

/** Sets a parameter as its field would. */
const set = (path: string, value: unknown): boolean => setParameter(path, value, String(value));

const why = (path: string): string => refused.value.get(path)?.why ?? "";

describe("editing a vehicle", () => {
  it("turns a preset into an own vehicle with one value changed, and undo brings the preset back", () => {
    expect(set("body.mass", 1700)).toBe(true);
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
    set("body.mass", 1700);
    set("body.dragArea", 0.7);
    expect(ownVehicles.value).toHaveLength(1);
    expect(vehicle.value).toMatchObject({ id: "compact-2", body: { mass: 1700, dragArea: 0.7 } });
  });

  it("takes the name and the note that are typed, of a preset as of an own vehicle, one step of undo each", () => {
    expect(set("name", "Bench mule")).toBe(true);
    expect(vehicle.value).toMatchObject({ id: "compact-2", name: "Bench mule" });
    expect(set("note", "Measured by\nthe class of 12b.")).toBe(true);
    expect(vehicle.value).toMatchObject({ id: "compact-2", name: "Bench mule" });
    expect(vehicle.value.note).toBe("Measured by\nthe class of 12b.");
    undo();
    expect(vehicle.value.note).toBe(vehicleById("compact").note);
    undo();
    expect(vehicle.value).toBe(vehicleById("compact"));
    // A note alone leaves the preset's name, marked as changed.
    set("note", "Ours.");
    expect(vehicle.value.name).toBe(`${vehicleById("compact").name}, changed`);
  });

  it("refuses a name of nothing or of too much, and copies the longest", () => {
    for (const name of ["", "n".repeat(81)]) expect(set("name", name)).toBe(false);
    expect(why("name")).toContain("1 to 80 characters");
    expect(vehicle.value.id).toBe("compact");
    set("name", "n".repeat(80));
    duplicate();
    expect(vehicle.value).toMatchObject({ id: "compact-3", name: "n".repeat(80) });
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
      expect(set(path, value), path).toBe(false);
      expect(why(path)).toMatch(words);
      expect(vehicle.value.id).toBe("compact");
    }
  });

  it("takes teeth one by one: they wait until they fit together, and count as one edit; the bench follows", () => {
    expect(set("gearSet.sunTeeth", 30)).toBe(false);
    expect(why("gearSet.sunTeeth")).toMatch(/sun \+ 2 × planet = 90/);
    expect(set("gearSet.planets", 3)).toBe(false);
    expect(set("gearSet.planetTeeth", 24)).toBe(false);
    expect([...refused.value.values()].every(({ waits }) => waits)).toBe(true);
    expect(vehicle.value.id).toBe("compact");
    expect(set("gearSet.ringTeeth", 78)).toBe(true);
    expect(refused.value.size).toBe(0);
    expect(vehicle.value.gearSet).toMatchObject({
      sunTeeth: 30,
      planetTeeth: 24,
      ringTeeth: 78,
      planets: 3,
    });
    const { sun, carrier, ring } = bench.value.speeds;
    expect(Math.abs(sun + 2.6 * ring - 3.6 * carrier)).toBeLessThan(1e-9);
    undo();
    expect(vehicle.value.id).toBe("compact");
  });

  it("says once what is wrong with all that waits, and takes them when the one that was wrong is taken back", () => {
    for (const [path, value] of [
      ["gearSet.sunTeeth", 26],
      ["gearSet.ringTeeth", 62],
      ["gearSet.planetTeeth", 18],
    ] as const)
      expect(set(path, value)).toBe(false);
    expect(why("gearSet.planetTeeth")).toMatch(/^Gear set, teeth of one planet: the ring's tips would dig/);
    for (const path of ["gearSet.sunTeeth", "gearSet.ringTeeth"])
      expect(why(path)).toBe("Not in force: it waits for “Gear set, teeth of one planet”.");
    takeBack("gearSet.planetTeeth");
    expect(why("gearSet.ringTeeth")).toMatch(
      /^Gear set, teeth of the ring .*the ring does not fit.* = 86 teeth/,
    );
    expect(why("gearSet.sunTeeth")).toMatch(/^Not in force.* teeth of the ring \(internal\)”\.$/);
    takeBack("gearSet.ringTeeth");
    expect(why("gearSet.sunTeeth")).toMatch(
      /^Gear set, teeth of the ring .*the ring does not fit.* = 86 teeth/,
    );
    expect(set("gearSet.planets", 7)).toBe(false);
    for (const [path, value] of [
      ["gearSet.sunTeeth", 30],
      ["gearSet.planetTeeth", 24],
      ["gearSet.ringTeeth", 78],
    ] as const)
      expect(set(path, value)).toBe(false);
    expect(vehicle.value.id).toBe("compact");
    takeBack("gearSet.planets");
    expect(refused.value.size).toBe(0);
    expect(vehicle.value.gearSet).toMatchObject({ sunTeeth: 30, planetTeeth: 24, ringTeeth: 78, planets: 4 });
  });

  it("takes a curve's two lists one after the other", () => {
    expect(set("engine.fullLoadSpeed", [100, 300, 530])).toBe(false);
    expect(set("engine.fullLoadTorque", [98, 127, 126])).toBe(true);
    expect(vehicle.value.engine.fullLoadSpeed).toEqual([100, 300, 530]);
  });

  it("goes on with other edits while one waits, and forgets what is out of range", () => {
    expect(set("battery.socFloor", 0.85)).toBe(false);
    expect(set("body.mass", "heavy")).toBe(false);
    expect(refused.value.get("body.mass")?.waits).toBe(false);
    expect(set("body.dragArea", 0.7)).toBe(true);
    expect(vehicle.value.battery.socFloor).toBe(0.35);
    expect([...refused.value.keys()]).toEqual(["battery.socFloor", "body.mass"]);
    expect(set("control.crankReserve", 50_000)).toBe(false);
    expect(why("control.crankReserve")).toMatch(/cannot hold this reserve/);
    takeBack("control.crankReserve");
    takeBack("battery.socFloor");
    expect([...refused.value.keys()]).toEqual(["body.mass"]);
  });

  it("ends a refusal with the vehicle it was typed for", () => {
    set("body.mass", 1700);
    set("body.mass", 1);
    expect(why("body.mass")).toMatch(/too small/);
    undo();
    expect(refused.value.size).toBe(0);
    set("body.mass", 1);
    duplicate();
    expect(refused.value.size).toBe(0);
    undo();
    expect(refused.value.size).toBe(0);
  });

  it("says why in the names and units of the form", () => {
    set("engine.idleSpeed", (200 * Math.PI) / 3);
    expect(why("engine.idleSpeed")).toBe(
      "Engine, idle speed: too large. Found: 2000 rev/min. Accepted: 478 … 1520 rev/min.",
    );
    set("body.mass", 12_000.000_01);
    expect(why("body.mass")).toMatch(/too large\. Found: 12000\.00001 kg\. Accepted: 300 … 12000 kg/);
    set("battery.socFloor", 0.85);
    expect(why("battery.socFloor")).toBe(
      "Battery, state of charge below which nothing is discharged: the charge window is empty. Found: 85 %. Accepted: below “state of charge above which nothing is charged” = 80 %. It is not in force: it waits for what it must fit to be typed too. Escape takes it back.",
    );
    set("engine.noStopBelow", 370);
    expect(why("engine.noStopBelow")).toMatch(/Found: 96\.85 °C\. Accepted: below “.*” = 90 °C\. It is/);
    set("sunMachine.maxSpeed", 300);
    // 367.5 rad/s of the vehicle's own fault, in rev/min.
    expect(why("sunMachine.maxSpeed")).toMatch(
      /= 3509 rev\/min\. Found: 2864\.79 rev\/min\. Accepted: above 3694/,
    );
    set("battery.cellSoc", [0, 2]);
    expect(why("battery.cellSoc")).toMatch(
      /place 2 of the list: too large\. Found: 200 %\. Accepted: 0 … 100 %\.$/,
    );
    set("fuel.name", "");
    expect(why("fuel.name")).toMatch(/^Fuel, name of the fuel.*Found: ""\. Accepted: a text: .*1 to 80/);
  });

  it("duplicates, and goes back to the preset it began as", () => {
    set("body.mass", 1700);
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
  it("keep the numbers of a list that are not touched to the last digit", () => {
    const meta = DECLARATIONS.find(({ path }) => path === "engine.fullLoadSpeed")?.meta;
    if (!meta || !isQuantity(meta)) throw new Error("no such list");
    const now = vehicleById("compact").engine.fullLoadSpeed;
    const text = textOf("engine.fullLoadSpeed", meta, now);
    expect(text).toBe("1000  1500  2000  3000  4000  5000");
    expect(readTyped("engine.fullLoadSpeed", meta, text, now)).toEqual(now);
    const typed = readTyped("engine.fullLoadSpeed", meta, "1000; 1600 2000 3000 4000,0 x", now);
    expect(typed).toEqual([now[0], rpmToRadPerS(1600), now[2], now[3], rpmToRadPerS(4000), "x"]);
  });

  it("each come back from their shown unit, and every one belongs to a part", () => {
    const named = new Set(FORM_PARTS.flatMap((part) => declarationsOf(part).map(({ path }) => path)));
    for (const { path, meta } of DECLARATIONS) {
      expect(named.has(path), path).toBe(path !== "id" && path !== "schemaVersion");
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
