import { describe, expect, it } from "vitest";
import { firstBench, loadSituation } from "../../../renderer/state/bench.ts";
import { SITUATIONS, type SituationId, situationById } from "../../../renderer/state/situations.ts";
import { radPerSToRpm, rpmToRadPerS } from "../../../shared/units.ts";
import { benchAt } from "../../../sim/bench/bench.ts";
import { following, ringOfRoad, roadOfRing } from "../../../sim/bench/shafts.ts";
import { basicRatio } from "../../../sim/drivetrain/gear-set.ts";
import { torqueLimit } from "../../../sim/drivetrain/machine.ts";
import { PRESETS, vehicleById } from "../../../sim/vehicle/presets/registry.ts";

const pointOf = (vehicle: string, id: SituationId) => {
  const v = vehicleById(vehicle);
  return benchAt(v, loadSituation(firstBench(vehicle, v), v, situationById(id)));
};

const REGIMES: Readonly<Record<SituationId, string>> = {
  "engine-start": "cranking",
  "electric-pull-away": "electric-drive",
  "engine-pull-away": "split-below-direct",
  "one-to-one": "direct",
  "above-direct": "split-above-direct",
  "sun-at-rest": "mechanical-point",
  "sun-backward": "circulating-power",
  "charging-at-rest": "charging-at-rest",
  "slowing-down": "regenerative-braking",
  "backing-up": "electric-reverse",
};

describe("the bench's statics", () => {
  for (const { id } of PRESETS) {
    it.each(SITUATIONS.map((one) => one.id))(`of the ${id} name the regime of %s`, (name) =>
      expect(pointOf(id, name).regime).toBe(REGIMES[name]),
    );

    it.each(SITUATIONS.map((one) => one.id))(`of the ${id} add up and stay within limits: %s`, (name) => {
      const v = vehicleById(id);
      const { torques, powers, flows, limits } = pointOf(id, name);
      expect(torques.sun + torques.carrier + torques.ring).toBeCloseTo(0, 9);
      expect(powers.sun + powers.carrier + powers.ring).toBeCloseTo(0, 6);
      expect(flows.engine).toBeCloseTo(flows.sun + flows.ring, 6);
      expect(flows.outputMachine).toBeCloseTo(flows.sun + flows.battery, 6);
      expect(flows.output).toBeCloseTo(flows.ring + flows.outputMachine, 6);
      expect(Math.abs(torques.sun)).toBeLessThanOrEqual(
        torqueLimit(v.sunMachine, pointOf(id, name).speeds.sun),
      );
      expect(limits.filter((limit) => limit.id !== "below-idle")).toEqual([]);
    });
  }

  it("of the demo pull-away: −28.6 and −71.4 N·m, 25.1 = 17.7 + 7.5 kW, 70 % electrical", () => {
    const { torques, flows, shares, speeds } = pointOf("compact", "engine-pull-away");
    expect(radPerSToRpm(speeds.sun)).toBeCloseTo(5900, 6);
    expect(torques.sun).toBeCloseTo(-100 / 3.5, 9);
    expect(torques.ring).toBeCloseTo(-250 / 3.5, 9);
    expect([flows.engine, flows.sun, flows.ring].map((w) => Math.round(w / 100) / 10)).toEqual([
      25.1, 17.7, 7.5,
    ]);
    expect(flows.battery).toBeCloseTo(0, 6);
    expect(shares?.electrical).toBeCloseTo(1 - 2.5 / 3.5 / 2.4, 9);
  });

  it("cut the engine's torque to full load and to friction, and say so", () => {
    const v = vehicleById("compact");
    const state = firstBench("compact", v);
    const more = benchAt(v, { ...state, engineTorque: 300 });
    expect(more.engine.torque).toBeCloseTo(121.6, 1);
    expect(more.limits.map((limit) => limit.id)).toContain("full-load");
    const less = benchAt(v, { ...state, engineTorque: -90 });
    expect(less.engine.torque).toBeCloseTo(less.engine.least, 9);
    expect(less.limits.map((limit) => limit.id)).toContain("motored-friction");
  });

  it("let no engine pull that does not fire", () => {
    const v = vehicleById("compact");
    const speeds = following(basicRatio(v.gearSet), { sun: 0, carrier: rpmToRadPerS(500), ring: 0 }, "sun");
    const slow = benchAt(v, { speeds, engineTorque: 80, outputTorque: null });
    expect(slow.engine.torque).toBe(0);
    expect(slow.limits.map((limit) => limit.id)).toEqual(["no-firing", "below-idle"]);
  });

  it("give what the ring at rest cannot use to the battery", () => {
    const { flows } = pointOf("compact", "charging-at-rest");
    expect(flows.outputMachine).toBe(0);
    expect(flows.battery).toBeCloseTo(-flows.engine, 6);
  });

  it("turn road speeds and ring speeds into each other", () => {
    const v = vehicleById("van");
    expect(roadOfRing(v, ringOfRoad(v, 12.3))).toBeCloseTo(12.3, 12);
  });
});
