import Papa from "papaparse";
import { describe, expect, it } from "vitest";
import { cycleById } from "../../../cycles/catalogue.ts";
import { curvesCsv } from "../../../renderer/compare/curves-csv.ts";
import { compareJobs } from "../../../sim/study/compare/job.ts";
import { runJob } from "../../../sim/study/compare/run-job.ts";
import { vehicleById } from "../../../sim/vehicle/presets/registry.ts";

const ids = ["rules", "thermostat"].map((id) => ({ kind: "built-in" as const, id }));
const results = compareJobs([vehicleById("compact")], [cycleById("stop-and-go")], ids).map((job) =>
  runJob(job),
);
const [rules, thermostat] = results;

describe("the curves of a comparison as CSV", () => {
  it("are read back by another reader as what was drawn, to the last bit", () => {
    if (!rules || !thermostat) throw new Error("no lines");
    const over = { result: rules, series: rules.series, slope: rules.row.slope };
    const { data, errors } = Papa.parse<Record<string, string>>(curvesCsv(results, over).trimEnd(), {
      header: true,
    });
    expect(errors).toEqual([]);
    expect(data).toHaveLength(rules.series.time.length);
    data.forEach((row, i) => {
      expect(Number(row.time_s)).toBe(rules.series.time[i]);
      expect(Number(row.soc_2_thermostat)).toBe(thermostat.series.soc[i]);
      expect(Number(row.fuel_j_1_rules)).toBe(rules.series.fuel[i]);
    });
    const last = data.at(-1);
    const counted =
      Number(last?.fuel_j_2_thermostat) -
      Number(last?.fuel_j_1_rules) +
      rules.row.slope *
        (Number(last?.battery_source_j_2_thermostat) - Number(last?.battery_source_j_1_rules));
    expect(Number(last?.fuel_over_j_2_thermostat)).toBeCloseTo(counted, 6);
    expect(last).not.toHaveProperty("fuel_over_j_1_rules");
  });
});
