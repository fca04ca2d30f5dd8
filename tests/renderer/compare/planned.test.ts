import { beforeEach, describe, expect, it } from "vitest";
import { jobsNow, planned, titleOf } from "../../../renderer/compare/planned.ts";
import {
  chosenCycles,
  chosenStrategies,
  chosenVehicles,
  failures,
  jobs,
  under,
} from "../../../renderer/compare/state.ts";

const names = (): readonly string[] =>
  planned.value.map((job) => `${titleOf(job)}, ${job.vehicle.id}, ${job.cycle.id}`);

beforeEach(() => {
  jobs.value = [];
  failures.value = [];
  under.value = null;
  chosenVehicles.value = ["compact", "van"];
  chosenCycles.value = ["udds"];
  chosenStrategies.value = ["rules", "thermostat"];
});

describe("lines still to be driven", () => {
  it("are all that is chosen before the first comparison, in its order", () => {
    expect(names()).toEqual([
      "Rules, compact, udds",
      "Thermostat, compact, udds",
      "Rules, van, udds",
      "Thermostat, van, udds",
    ]);
    chosenStrategies.value = ["thermostat"];
    expect(names()).toEqual(["Thermostat, compact, udds", "Thermostat, van, udds"]);
  });

  it("are none where something chosen is no longer there", () => {
    chosenCycles.value = ["gone"];
    expect(names()).toEqual([]);
  });

  it("are the unfinished ones while a comparison is under way, and none after it", () => {
    jobs.value = jobsNow();
    under.value = { done: 1, all: 4 };
    failures.value = [{ index: 1, strategy: "", vehicle: "", cycle: "", why: "" }];
    chosenVehicles.value = ["family"];
    expect(planned.value.map(({ index }) => index)).toEqual([0, 2, 3]);
    under.value = null;
    expect(names()).toEqual([]);
  });
});
