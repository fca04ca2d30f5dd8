import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Balance, type BarSpec, balance } from "../../../../renderer/drive/flow/balance.ts";
import { BARS } from "../../../../renderer/drive/flow/bars.ts";
import type { FlowId } from "../../../../sim/run/flows.ts";

/** Heights of both sides of a bar: what turns round stands on the other side. */
function sidesOf<F extends string>(bar: BarSpec<F>, power: (flow: F) => number, split: Balance<F>) {
  const sum = (flows: readonly F[]): number =>
    flows.reduce((total, flow) => total + Math.abs(power(flow)), 0);
  const over = bar.turns ? (split.turned.get(bar.turns) ?? 0) : 0;
  const onLeft = bar.turns !== null && bar.left.includes(bar.turns);
  const free = (side: "left" | "right"): number =>
    bar.free.reduce((total, flow) => total + (split.free.get(flow)?.[side] ?? 0), 0);
  return {
    left: sum(bar.left) + free("left") + (onLeft ? -over : over),
    right: sum(bar.right) + free("right") + (onLeft ? over : -over),
  };
}

const size = fc.integer({ min: -60_000, max: 60_000 });
const loss = fc.integer({ min: 0, max: 20_000 });

/** Flows that add up at every node, from those that are free to choose. */
const added = fc
  .record({
    engineLoss: loss,
    engine: size,
    gearSetSpin: size,
    meshLoss: loss,
    sun: size,
    sunLoss: loss,
    batteryLoss: loss,
    auxiliary: loss,
    outputElectric: size,
    outputLoss: loss,
    gearsLoss: loss,
    ringSpin: size,
    air: size,
    rolling: loss,
    climbing: size,
    brake: loss,
  })
  .map((f) => {
    const sunElectric = f.sun - f.sunLoss;
    const battery = f.auxiliary + f.outputElectric - sunElectric;
    const outputShaft = f.outputElectric - f.outputLoss;
    const ring = f.engine - f.sun - f.meshLoss - f.gearSetSpin;
    const wheels = ring + outputShaft - f.gearsLoss - f.ringSpin;
    return {
      ...f,
      // An engine that is turned over may lose more than its fuel brings: fuel is never below nothing.
      fuel: Math.max(0, f.engine + f.engineLoss),
      engineLoss: Math.max(f.engineLoss, -f.engine),
      sunElectric,
      battery,
      source: battery + f.batteryLoss,
      outputShaft,
      ring,
      wheels,
      speedingUp: wheels - f.air - f.rolling - f.climbing - f.brake,
    } satisfies Record<FlowId, number>;
  });

describe("flows at a bar", () => {
  it("stand as tall on its left as on its right, whatever runs which way (seed 41)", () => {
    fc.assert(
      fc.property(added, (flows) => {
        const power = (id: FlowId): number => flows[id];
        const split = balance<FlowId>(BARS, power);
        for (const bar of BARS) {
          const { left, right } = sidesOf<FlowId>(bar, power, split);
          expect(left, bar.id).toBeCloseTo(right, 3);
        }
      }),
      { seed: 41, numRuns: 2000 },
    );
  });

  it("divide into parts that are their own size, none below nothing (seed 42)", () => {
    fc.assert(
      fc.property(added, (flows) => {
        const { free, turned } = balance<FlowId>(BARS, (id) => flows[id]);
        for (const [id, { left, right }] of free) {
          expect(left).toBeGreaterThanOrEqual(0);
          expect(right).toBeGreaterThanOrEqual(-1e-6);
          expect(left + right).toBeCloseTo(Math.abs(flows[id]), 6);
        }
        for (const [id, part] of turned) expect(part).toBeLessThanOrEqual(Math.abs(flows[id]) + 1e-6);
      }),
      { seed: 42, numRuns: 500 },
    );
  });

  it("turn round only when both sides cannot be equal otherwise", () => {
    const power = (f: Partial<Record<FlowId, number>>) => (id: FlowId) => f[id] ?? 0;
    const driven = power({ engine: 20, sun: 8, ring: 12 });
    expect(balance<FlowId>(BARS, driven).turned.get("sun")).toBe(0);
    const circulating = power({ engine: 9, sun: -9, ring: 18 });
    expect(balance<FlowId>(BARS, circulating).turned.get("sun")).toBe(9);
    const charging = power({ sunElectric: 26, battery: -10, outputElectric: 16 });
    expect(balance<FlowId>(BARS, charging).turned.get("battery")).toBe(10);
    const recovering = power({ battery: -19, outputElectric: -19 });
    expect(balance<FlowId>(BARS, recovering).turned.get("battery")).toBe(0);
  });

  it("do not tell by turning round what is asked", () => {
    const flows: Partial<Record<FlowId, number>> = { engine: 9, sun: -9, ring: 18 };
    const split = balance<FlowId>(BARS, (id) => flows[id] ?? 0, new Set<FlowId>(["sun"]));
    expect(split.turned.get("sun")).toBe(0);
  });
});
