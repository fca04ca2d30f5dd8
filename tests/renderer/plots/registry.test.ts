import { beforeEach, describe, expect, it } from "vitest";
import { PLOTS, readingsOf, said, unitOf } from "../../../renderer/plots/registry.ts";
import { chosenPlots, togglePlot, wantedPlots } from "../../../renderer/plots/time/chosen-plots.ts";
import { rangeOf } from "../../../renderer/plots/time/range.ts";
import { columnOf, instantValue } from "../../../renderer/plots/time/source.ts";
import { cursorWords, readingNow } from "../../../renderer/plots/time/words.ts";
import { num, roadSpeed, shaftSpeed } from "../../../renderer/state/format.ts";
import { followInstant } from "../../../renderer/state/instant.ts";
import { asked, asking, HIDEABLE, revealed } from "../../../renderer/state/predict.ts";
import { lookAt, moveTo, now, runs } from "../../../renderer/state/road.ts";
import { readNow } from "../../../renderer/state/run.ts";
import { units } from "../../../renderer/state/settings.ts";
import { CHANNELS, type ChannelId } from "../../../sim/run/channels.ts";
import { FLOWS } from "../../../sim/run/flows.ts";
import { aRun } from "../support/a-run.ts";

const one = aRun("udds");

/** Fixed so that every run of the tests looks at the same rows. */
const ROWS = Array.from({ length: 50 }, (_, i) => (i * 7919) % one.log.rows);

beforeEach(() => {
  runs.value = [one];
  lookAt(one);
  asking.value = false;
  asked.value = [];
  revealed.value = false;
  chosenPlots.value = null;
});

describe("the registry of plots", () => {
  it("names every plot and every reading once", () => {
    expect(new Set(PLOTS.map(({ id }) => id)).size).toBe(PLOTS.length);
    for (const plot of PLOTS) {
      const ids = readingsOf(plot).map(({ id }) => id);
      expect(new Set(ids).size, plot.id).toBe(ids.length);
    }
  });

  it("reads the same number at an instant as in its column, of every curve", () => {
    for (const row of ROWS) {
      const instant = readNow(one, row);
      for (const { source, id } of PLOTS.flatMap(readingsOf)) {
        expect(instantValue(source, instant), id).toBe(columnOf(source, one.log)[row]);
      }
    }
  });

  it("takes flows out of the log as they are", () => {
    const place = FLOWS.indexOf("engine");
    const column = columnOf({ flow: "engine" }, one.log);
    for (const row of ROWS) expect(column[row]).toBe(one.log.flows[row * FLOWS.length + place]);
  });

  it("has a working for what it shows", () => {
    const channels = new Set<string>(CHANNELS.map(({ id }) => `channel:${id}`));
    const flows = new Set<string>(FLOWS.map((id) => `flow:${id}`));
    for (const { working } of PLOTS.flatMap(readingsOf)) {
      expect(channels.has(working) || flows.has(working), working).toBe(true);
    }
  });

  it("tells apart the curves of a plot without colour", () => {
    for (const plot of PLOTS) {
      const dashes = plot.curves.map(({ dash }) => dash);
      expect(new Set(dashes).size, plot.id).toBe(dashes.length);
    }
  });

  it("has room for all of its curves, and for zero where it says so", () => {
    for (const plot of PLOTS) {
      const times = plot.shown.times(units.value);
      const { least, most } = rangeOf(one.log, plot.curves, null, plot.fromZero, times);
      expect(most, plot.id).toBeGreaterThan(least);
      if (plot.fromZero) expect(least <= 0 && most >= 0, plot.id).toBe(true);
      for (const { source } of plot.curves) {
        for (const value of columnOf(source, one.log)) {
          if (value < least || value > most) expect.fail(`${plot.id}: ${value} outside ${least} … ${most}`);
        }
      }
    }
  });

  it("hides in some plot each quantity that may be asked for, but the regime", () => {
    const told = new Set(PLOTS.flatMap(readingsOf).flatMap(({ tells }) => tells));
    for (const id of HIDEABLE) if (id !== "regime") expect(told.has(id), id).toBe(true);
  });
});

describe("what stands at the cursor", () => {
  beforeEach(() => followInstant());

  const shown = (plot: string, reading: string): string => {
    const found = PLOTS.find(({ id }) => id === plot);
    const which = found && readingsOf(found).find(({ id }) => id === reading);
    return found && which ? readingNow(which, found) : "";
  };
  const log = (id: ChannelId, row: number): number => one.log.view(id)[row] ?? Number.NaN;

  it("is the log at display precision, in 50 instants", () => {
    for (const row of ROWS) {
      moveTo(row / 10);
      expect(shown("speed", "road")).toBe(num(log("speed", row) * 3.6, 1));
      expect(shown("battery", "battery")).toBe(num(log("batteryPower", row) / 1000, 1));
      expect(shown("battery", "charge")).toBe(`${num(log("soc", row) * 100, 1)} %`);
      expect(shown("shafts", "sun")).toBe(shaftSpeed(units.value, log("sunMachineSpeed", row)));
      expect(shown("recovered", "recovered")).toBe(num(log("recovered", row) / 1000, 0));
      expect(shown("recovered", "fuel")).toBe(`${num(log("fuel", row) / 1e6, 2)} MJ`);
      expect(cursorWords("x")).toContain(roadSpeed(units.value, log("speed", row)));
    }
  });

  it("says nothing of what is asked for, nor of what would tell it", () => {
    moveTo(200);
    asking.value = true;
    asked.value = ["engine-power", "road-speed", "regime"];
    expect(shown("power", "engine")).toBe("?");
    expect(shown("torques", "engineTorque")).toBe("?");
    expect(shown("power", "sunMachine")).not.toBe("?");
    expect(cursorWords("3:20.0")).toBe("3:20.0, ?, ?");
    revealed.value = true;
    expect(shown("power", "engine")).toBe(num((now.value?.flows.engine ?? 0) / 1000, 1));
  });
});

describe("the choice of plots", () => {
  it("begins with the usual ones and goes on from those that were seen", () => {
    expect(wantedPlots().map(({ id }) => id)).toEqual(["speed", "power", "battery", "shafts", "recovered"]);
    togglePlot("battery", 4);
    togglePlot("torques", 4);
    expect(wantedPlots().map(({ id }) => id)).toEqual(["speed", "power", "shafts", "torques"]);
    chosenPlots.value = new Set();
    expect(wantedPlots()).toHaveLength(1);
  });

  it("says units as their plots do", () => {
    const battery = PLOTS.find(({ id }) => id === "battery");
    expect(battery && unitOf(battery, units.value)).toBe("kW, giving is +");
    expect(battery && said(battery.shown, units.value, -10_240)).toBe("−10.2");
  });
});
