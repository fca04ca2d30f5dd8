import { expect, it } from "vitest";
import { cycleById } from "../../../cycles/catalogue.ts";
import { treat, usualTreatments } from "../../../cycles/clean/treat.ts";
import { writeGpx } from "../../../cycles/demo/gpx-text.ts";
import { receive } from "../../../cycles/demo/receiver.ts";
import { trueDrive } from "../../../cycles/demo/true-drive.ts";
import { importGpx } from "../../../cycles/import/gpx/gpx.ts";
import { at } from "../../../shared/at.ts";

it("a whole day at one place a second, 86,400 points, is read and cleaned", () => {
  const { time, speed } = cycleById("udds");
  const period = time.length;
  const plan = {
    time: Float64Array.from({ length: 86_400 }, (_, t) => t),
    speed: Float64Array.from({ length: 86_400 }, (_, t) => at(speed, t % period)),
  };
  const truth = trueDrive(plan, [{ height: 60, length: 5000 }], 3);
  const faults = { jitter: 1.5, wander: 1, elevationJitter: 2 };
  const points = receive(truth, 1, { latitude: 47, longitude: -30 }, faults, 4);
  const segments = [points.map((point) => ({ ...point, time: point.time + 1_714_545_000 }))];
  const { raw, report } = importGpx(writeGpx({ name: "Day", description: "", segments }), {
    fileName: "day.gpx",
  });
  expect(report.points).toBe(86_400);
  const { figuresAfter } = treat(raw, usualTreatments(raw));
  expect(Math.abs(figuresAfter.distance / at(truth.way, truth.way.length - 1) - 1)).toBeLessThan(0.005);
  expect(Math.abs(figuresAfter.ascent / truth.ascent - 1)).toBeLessThan(0.05);
});
