import { describe, expect, it } from "vitest";
import { energyLabels } from "../../../../renderer/drive/flow/energy-labels.ts";
import { energyLayout, energyScale } from "../../../../renderer/drive/flow/energy-layout.ts";
import { energyText, energyUnits } from "../../../../renderer/drive/flow/energy-units.ts";
import {
  ENERGY_BARS,
  energiesOf,
  LINES,
  ledgerAt,
  ledgerTotal,
} from "../../../../renderer/drive/flow/ledger-flows.ts";
import { placesOf } from "../../../../renderer/drive/flow/places.ts";
import { overlap, roughMeasure } from "../../../../renderer/ui/labels.ts";
import { at } from "../../../../shared/at.ts";
import { LEDGER_LINES } from "../../../../sim/run/ledger.ts";
import { runsOfAllKinds, spread } from "./runs.ts";

const size = { width: 842, height: 306, text: 14 };
const runs = runsOfAllKinds();

describe("the energies so far", () => {
  it("have every line of the ledger, once", () => {
    const drawn = Object.values(LINES).flat();
    expect([...drawn].sort()).toEqual(LEDGER_LINES.map(({ id }) => id).sort());
  });

  it("add up at every bar: what reaches the road is what the road and its stores took", () => {
    for (const { name, log } of runs) {
      for (const row of spread(log.rows, 40)) {
        const ledger = ledgerAt(log, row);
        const e = energiesOf(ledger);
        const { total, rest } = ledgerTotal(ledger);
        const scale = 1e-9 * Math.max(1000, total);
        expect(Math.abs(rest), name).toBeLessThan(scale);
        for (const { id, left, right, free } of ENERGY_BARS) {
          const sum = (ids: readonly (keyof typeof e)[]): number => ids.reduce((all, one) => all + e[one], 0);
          expect(Math.abs(sum(left) - sum(right) - sum(free)), `${name}: ${id}`).toBeLessThan(scale * 4);
        }
      }
    }
  });

  it("are the ledger's columns, exactly", () => {
    const { log } = at(runs, 0);
    const row = log.rows - 1;
    const line = (id: string): number =>
      at(log.ledgerLine(LEDGER_LINES.findIndex((one) => one.id === id)), row);
    const e = energiesOf(ledgerAt(log, row));
    expect(e.fuel).toBe(line("running_fuel") + line("start_fuel"));
    expect(e.heat).toBe(line("engine_heat"));
    expect(e.brake).toBe(line("friction_brake"));
    expect(e.stored).toBe(-(line("battery_change") + line("polarisation_change")));
  });

  it("are drawn in their box, with equal sides and labels apart", () => {
    const places = placesOf(size);
    const faults: string[] = [];
    for (const { name, log } of runs) {
      for (const row of spread(log.rows, 30)) {
        const energies = energiesOf(ledgerAt(log, row));
        const perJoule = energyScale(places, energies);
        const layout = energyLayout({ ...size, energies, perJoule, asked: new Set() });
        const say = (what: string): number => faults.push(`${name}, row ${row}: ${what}`);
        for (const { id, left, right } of layout.bars)
          if (Math.abs(left - right) > 0.05) say(`${id} unequal`);
        for (const { id, middle, width } of layout.ribbons) {
          const inside = middle.every(
            ([x, y]) => x <= size.width && y - width / 2 > -3 && y + width / 2 < places.foot + 5,
          );
          if (!inside) say(`${id} leaves the box`);
        }
        const labels = energyLabels(layout, energyUnits("joule", 2e7), roughMeasure);
        for (const [i, a] of labels.entries()) {
          for (const b of labels.slice(i + 1)) if (overlap(a.box, b.box) > 3) say(`${a.id} over ${b.id}`);
        }
      }
    }
    expect(faults).toEqual([]);
  });

  it("read well in their unit", () => {
    expect(energyText(energyUnits("joule", 268_000), 94_700)).toBe("94.7");
    expect(energyText(energyUnits("joule", 12.7e6), 12_746_000)).toBe("12\u202f746");
    expect(energyUnits("joule", 3e8)).toMatchObject({ unit: "MJ", decimals: 1 });
    expect(energyText(energyUnits("kwh", 12.7e6), -3.6e6)).toBe("\u22121.000");
  });
});
