import { describe, expect, it } from "vitest";
import { roadSource } from "../../../../renderer/drive/working/source.ts";
import { ROAD_WORKINGS, roadWorkingOf } from "../../../../renderer/drive/working/working.ts";
import type { RoadWorkingId } from "../../../../renderer/state/road-working.ts";
import type { BalanceState, Run } from "../../../../renderer/state/run.ts";
import type { Token } from "../../../../renderer/ui/WorkingLines.tsx";
import { CHANNELS } from "../../../../sim/run/channels.ts";
import { consumption } from "../../../../sim/run/fuel.ts";
import { evaluate, resultSpan } from "../../support/formula.ts";
import { roadRun } from "../../support/road-run.ts";

const plain = (tokens: readonly Token[]): string =>
  tokens
    .map(({ text, sub }) => text + (sub ?? ""))
    .join("")
    .replaceAll("\u202f", "");

const found = ({ request, summary }: Run): BalanceState => {
  const fuelEnergy = (summary?.fuel.energy_j ?? 0) * 1.02 + 1;
  const used = consumption(request.vehicle.fuel, fuelEnergy, summary?.distance_m ?? 0);
  const { litresPer100Km, mpg, co2PerKm } = used;
  return {
    balanced: true,
    reason: "",
    fuelEnergy,
    litresPer100Km,
    mpg,
    co2PerKm,
    netShare: -0.004,
    slope: 2.71,
    runs: 9,
  };
};

const at = (run: Run, row: number, road: "kmh" | "mph" = "kmh") =>
  roadSource(run, row, { shaft: row % 2 === 0 ? "rpm" : "radps", road }, found(run));

const RUNS = [
  roadRun("compact", "udds"),
  roadRun("compact", "us06", { coldStart: true }),
  roadRun("family", "hwfet", { headWind: -8, payload: 200 }, "equivalent-adapted"),
  roadRun("van", "hill-down", { headWind: 5 }),
  roadRun("compact", "back-up"),
];

/** Rows of a run: its first and last, and evenly between. */
const rowsOf = ({ log }: Run, count: number): number[] =>
  Array.from({ length: count }, (_, i) => Math.floor(((log.rows - 1) * i) / (count - 1)));

describe("the workings of Road", () => {
  it("are there for every channel, flow, node, ledger line, figure and map", () => {
    expect(ROAD_WORKINGS.length).toBe(CHANNELS.length + 24 + 8 + 21 + 18 + 4);
    expect(new Set(ROAD_WORKINGS).size).toBe(ROAD_WORKINGS.length);
  });

  for (const run of RUNS) {
    it(`come to their results from the numbers shown, within rounding: ${run.name}`, () => {
      let evaluated = 0;
      for (const row of rowsOf(run, 41)) {
        const from = at(run, row, row % 3 === 0 ? "mph" : "kmh");
        for (const id of ROAD_WORKINGS) {
          const shown = roadWorkingOf(id, from);
          if (!shown) throw new Error(`${id} has no working`);
          const said = [shown.title, plain(shown.formula), plain(shown.live), shown.result.text, shown.note];
          for (const text of said) {
            expect(text, id).not.toBe("");
            expect(text, id).not.toMatch(/NaN|undefined|Infinity/);
          }
          if (shown.result.text === "–") continue;
          const live = evaluate(shown.live);
          const result = resultSpan(shown.result, live.units);
          evaluated += 1;
          if (!(live.low <= result.high && result.low <= live.high)) {
            expect.fail(`${id} at row ${row}: ${plain(shown.live)} is not ${shown.result.text}`);
          }
        }
      }
      expect(evaluated).toBeGreaterThan(3500);
    });
  }

  it("show what the log says, in the views' own units", () => {
    const [udds] = RUNS;
    if (!udds) throw new Error("no run");
    const row = 2000;
    const shown = (id: RoadWorkingId): string =>
      roadWorkingOf(id, at(udds, row))?.result.text.replaceAll("\u202f", "") ?? "";
    const value = (id: "speed" | "soc" | "engineSpeed"): number => udds.log.view(id)[row] ?? Number.NaN;
    expect(shown("channel:speed")).toBe(`${(value("speed") * 3.6).toFixed(1)} km/h`);
    expect(shown("channel:soc")).toBe(`${(value("soc") * 100).toFixed(1)} %`);
    expect(shown("channel:engineSpeed")).toBe(
      `${((value("engineSpeed") * 30) / Math.PI).toFixed(0)} rev/min`,
    );
  });

  it("show a formula only where it holds: the warm map, then the sum", () => {
    const [udds, cold] = RUNS;
    if (!udds || !cold) throw new Error("no run");
    const on = (run: Run, from: number): number => run.log.view("engineOn").indexOf(1, from);
    const formula = (run: Run, row: number): string =>
      plain(roadWorkingOf("flow:fuel", at(run, row))?.formula ?? []);
    // One second into a start the engine of the cold drive is still cold; that of the other is warm by then.
    const warm = [...Array(400).keys()].map((i) => formula(udds, on(udds, 2000) + i));
    expect(warm).toContain("(Te + Tfric) ω̄c / e");
    expect(formula(cold, on(cold, 0) + 15)).toBe("Pheat + Pe");
  });
});

describe("the check of the workings", () => {
  it("fails when a number or a result is off", () => {
    const live: Token[] = [{ text: "100.0 N·m" }, { text: " × " }, { text: "250.0 rad/s" }];
    const { low, high, units } = evaluate(live);
    expect(units).toBe(true);
    expect(low).toBeLessThan(25_000);
    expect(high).toBeGreaterThan(25_000);
    const off = resultSpan({ text: "25.1 kW" }, true);
    expect(off.low > high || off.high < low).toBe(true);
    const right = resultSpan({ text: "25.0 kW" }, true);
    expect(right.low <= high && right.high >= low).toBe(true);
  });

  it("reads brackets, powers, roots and small numbers", () => {
    expect(evaluate([{ text: "(2.00 + 3.00) × 4.00² − √(9.00 / 1.00)" }]).low).toBeCloseTo(76.4, 0);
    expect(evaluate([{ text: "8.3 × 10⁻⁷ J / 2.0 J" }]).high).toBeCloseTo(4.3e-7, 8);
    expect(() => evaluate([{ text: "2.00 + apples" }])).toThrow("cannot read");
  });
});
