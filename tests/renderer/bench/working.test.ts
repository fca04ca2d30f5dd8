import { describe, expect, it } from "vitest";
import { dockPanel } from "../../../renderer/bench/dock.ts";
import { vernierLayout } from "../../../renderer/bench/vernier.ts";
import { type Token, workingOf } from "../../../renderer/bench/working.ts";
import { firstBench } from "../../../renderer/state/bench.ts";
import type { WorkingId } from "../../../renderer/state/working.ts";
import { crosses, overlap } from "../../../renderer/ui/labels.ts";
import { benchAt } from "../../../sim/bench/bench.ts";
import { SHAFTS } from "../../../sim/bench/shafts.ts";
import { vehicleById } from "../../../sim/vehicle/presets/registry.ts";

const vehicle = vehicleById("compact");
const state = firstBench("compact", vehicle);
const source = {
  state,
  vehicle,
  point: benchAt(vehicle, state),
  units: { shaft: "rpm", road: "kmh" },
  turns: { sun: 29.5, carrier: 12, ring: 5 },
  perOf: { sun: 29.5, carrier: 12, ring: 5 },
} as const;

const plain = (tokens: readonly Token[]): string =>
  tokens
    .map(({ text, sub }) => text + (sub ?? ""))
    .join("")
    .replaceAll("\u202f", "");

describe("the working", () => {
  it("of the sun's speed: formula, live numbers, result, source, point", () => {
    const shown = workingOf("speed:sun", source);
    expect(plain([shown.left])).toBe("ωs");
    expect(plain(shown.formula)).toBe("(1 + k) ωc − k ωr");
    expect(plain(shown.live)).toBe("3.5 × 2400 − 2.5 × 1000");
    expect(plain([shown.result])).toBe("5900 rev/min");
    expect(shown.note).toContain("100 / 40 = 2.5");
    expect(shown.point).toBe("speed:sun");
  });

  it("of the ring's torque", () => {
    const shown = workingOf("torque:ring", source);
    expect(plain(shown.live)).toBe("−2.5 × 100.0 / 3.5");
    expect(plain([shown.result])).toBe("−71.4 N·m");
  });

  it("of the torques on the line: neither sum nor moment", () => {
    const shown = workingOf("balance", source);
    expect(plain(shown.live)).toBe("−28.6 + 100.0 + (−71.4)");
    expect(plain([shown.result])).toBe("0.0 N·m");
    expect(plain(shown.also?.formula ?? [])).toBe("k Ts − Tr");
    expect(plain(shown.also?.live ?? [])).toBe("2.5 × (−28.6) − (−71.4)");
    expect(shown.also?.result.text).toBe("0.0 N·m");
  });

  it("of turns for one of the carrier", () => {
    const shown = workingOf("per:sun", source);
    expect(plain(shown.live)).toBe("29.50 / 12.00");
    expect(plain([shown.result])).toBe("2.458");
  });

  it("exists for every number", () => {
    const kinds = ["speed", "torque", "power", "turns", "limit", "per"] as const;
    const ids: WorkingId[] = kinds.flatMap((kind) => SHAFTS.map((shaft) => `${kind}:${shaft}` as const));
    const single = [
      "full-load",
      "electrical",
      "output",
      "output-power",
      "output-most",
      "battery",
      "ratio",
      "road",
      "balance",
    ] as const;
    for (const id of [...ids, ...single]) {
      const shown = workingOf(id, source);
      for (const text of [
        shown.title,
        plain(shown.formula),
        plain(shown.live),
        shown.result.text,
        shown.note,
      ]) {
        expect(text, id).not.toBe("");
        expect(text, id).not.toMatch(/NaN|undefined/);
      }
    }
  });

  it("docks clear of handles and line, under zero first", () => {
    const scene = {
      bounds: { x: 0, y: 0, width: 730, height: 480 },
      zero: 260,
      handles: [
        { x: 88, y: 120, width: 24, height: 24 },
        { x: 420, y: 200, width: 24, height: 24 },
        { x: 560, y: 230, width: 24, height: 24 },
      ],
      arrows: [],
      labels: [],
      axes: [],
      line: { x1: 60, y1: 120, x2: 600, y2: 250 },
      point: { x: 100, y: 132 },
    };
    const at = dockPanel(300, 130, scene);
    const box = { ...at, width: 300, height: 130 };
    expect(at.y).toBeGreaterThanOrEqual(260);
    expect(crosses(scene.line, box)).toBe(false);
    for (const handle of scene.handles) expect(overlap(handle, box)).toBe(0);
  });
});

describe("the vernier", () => {
  const layout = vernierLayout({
    width: 330,
    text: 14,
    value: 2400,
    least: 0,
    most: 5000,
    perPixel: 20,
    fine: 100,
  });

  it("has its value under the index and ten fine marks to a full one", () => {
    const mark = layout.marks.find((one) => one.value === 2400);
    expect(mark?.x).toBeCloseTo(165, 9);
    expect(layout.marks.filter((one) => one.kind === "full").map((one) => one.value + 0)).toEqual([
      0, 1000, 2000, 3000, 4000, 5000,
    ]);
  });

  it("ends at the limits", () => {
    expect(layout.below).toBeCloseTo(45, 9);
    expect(layout.above).toBeCloseTo(295, 9);
    expect(Math.max(...layout.marks.map((one) => one.value))).toBe(5000);
  });
});
