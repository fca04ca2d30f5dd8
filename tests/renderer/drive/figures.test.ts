import { describe, expect, it } from "vitest";
import { runFigures } from "../../../renderer/drive/figures.ts";
import { roadSource } from "../../../renderer/drive/working/source.ts";
import { roadWorkingOf } from "../../../renderer/drive/working/working.ts";
import { FIGURES } from "../../../renderer/state/road-working.ts";
import { roadRun } from "../support/road-run.ts";

const run = roadRun("compact", "us06");
const { summary } = run;
if (!summary) throw new Error("no summary");

describe("the figures of a run", () => {
  it("stand on the sheet once each", () => {
    const ids = runFigures(summary, null, { shaft: "rpm", road: "kmh" }).flatMap(({ figures }) =>
      figures.map(({ id }) => id),
    );
    expect([...ids].sort()).toEqual([...FIGURES].sort());
  });

  for (const road of ["kmh", "mph"] as const) {
    it(`are the results of their workings: ${road}`, () => {
      const units = { shaft: "rpm", road } as const;
      const from = roadSource(run, 100, units, null);
      for (const { figures } of runFigures(summary, null, units)) {
        for (const { id, value } of figures) {
          expect(roadWorkingOf(`figure:${id}`, from)?.result.text, id).toBe(value);
        }
      }
    });
  }

  it("are the summary's numbers", () => {
    const all = runFigures(summary, null, { shaft: "rpm", road: "kmh" }).flatMap(({ figures }) => figures);
    const value = (id: string): string => all.find((one) => one.id === id)?.value ?? "";
    expect(value("fuel-raw")).toBe(`${summary.fuel.l_per_100km.toFixed(2)} L/100 km`);
    expect(value("recovery-share")).toBe(`${(summary.recovered.share * 100).toFixed(1)} %`);
    expect(value("engine-starts")).toBe(String(summary.engine.starts));
    expect(value("trace-outside")).toBe(`${summary.trace.secondsOutside.toFixed(1)} s`);
  });

  it("say that the balance is being found, or cannot be", () => {
    const said = (balance: Parameters<typeof runFigures>[1]): string =>
      runFigures(summary, balance, { shaft: "rpm", road: "kmh" })[0]?.figures[1]?.value ?? "";
    expect(said("under way")).toBe("being found");
    expect(said(null)).toBe("–");
  });
});
