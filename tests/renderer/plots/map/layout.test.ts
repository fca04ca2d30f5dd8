import { describe, expect, it } from "vitest";
import { MAPS } from "../../../../renderer/plots/map/kinds.ts";
import { type MapLayout, mapLayout } from "../../../../renderer/plots/map/layout.ts";
import { held, powerLabel, powerLine, trailPath } from "../../../../renderer/plots/map/live.ts";
import { map as texts } from "../../../../renderer/texts/map-en.ts";
import { overlap, roughMeasure } from "../../../../renderer/ui/labels.ts";
import { fullLoadTorque } from "../../../../sim/drivetrain/engine.ts";
import { runSettings } from "../../../../sim/options.ts";
import { PRESETS, vehicleById } from "../../../../sim/vehicle/presets/registry.ts";
import { traction } from "../../../../sim/vehicle/traction.ts";

const SIZES = [
  { width: 258, height: 150, text: 14 },
  { width: 340, height: 190, text: 14 },
  { width: 520, height: 420, text: 20 },
];

const settingsOf = (id: string) => {
  const v = vehicleById(id);
  return runSettings({}, { startSoc: v.battery.socStart, auxiliaryPower: v.auxiliary.power });
};

const layoutOf = (
  id: string,
  map: (typeof MAPS)[number],
  size = SIZES[1] ?? { width: 340, height: 190, text: 14 },
  road: "kmh" | "mph" = "kmh",
): MapLayout =>
  mapLayout({
    map,
    vehicle: vehicleById(id),
    settings: settingsOf(id),
    extent: { back: 0, least: -4000, most: 3000 },
    ...size,
    units: { shaft: "rpm", road },
    measure: roughMeasure,
    names: texts.lines,
    families: texts.families,
  });

describe("the layout of a map", () => {
  for (const { id } of PRESETS) {
    for (const map of MAPS) {
      it(`keeps its labels apart and inside, and its numbers clear of each other: ${id}, ${map}`, () => {
        for (const size of SIZES) {
          const { frame, labels, key } = layoutOf(id, map, size);
          const { box } = frame;
          for (const label of labels) {
            expect(label.box.x).toBeGreaterThanOrEqual(box.x - 0.5);
            expect(label.box.x + label.box.width).toBeLessThanOrEqual(box.x + box.width + 0.5);
            for (const other of labels) {
              if (other !== label) expect(overlap(label.box, other.box)).toBe(0);
            }
            for (const entry of key) expect(overlap(label.box, entry.box)).toBe(0);
          }
          const wide = (text: string): number => roughMeasure(text, size.text);
          frame.ticksX.forEach((tick, i) => {
            const next = frame.ticksX[i + 1];
            if (next) expect(next.at - tick.at).toBeGreaterThan((wide(tick.text) + wide(next.text)) / 2);
          });
          expect(frame.ticksX.length).toBeGreaterThan(1);
          expect(frame.ticksY.length).toBeGreaterThan(1);
        }
      });
    }
  }

  it("names its best contours", () => {
    const { labels, contours } = layoutOf("compact", "engine");
    expect(labels.length).toBeGreaterThan(3);
    expect(contours.filter(({ best }) => best).length).toBe(2);
  });

  it("draws full load where the engine has it", () => {
    const { frame, limits } = layoutOf("compact", "engine");
    const { engine } = vehicleById("compact");
    const [first = ""] = limits.map(({ d }) => d);
    const places = [...first.matchAll(/([\d.]+) ([\d.]+)/g)].map(
      (m) => [Number(m[1]), Number(m[2])] as const,
    );
    expect(places.length).toBeGreaterThan(20);
    for (const [x, y] of places) {
      const speed = ((x - frame.x(0)) / (frame.x(1) - frame.x(0))) * 1;
      expect(Math.abs(y - frame.y(fullLoadTorque(engine, speed)))).toBeLessThan(0.4);
    }
  });

  it("draws the wheels' limit where traction has it, whichever unit the road is read in", () => {
    for (const road of ["kmh", "mph"] as const) {
      const { frame, limits } = layoutOf("van", "wheels", SIZES[1], road);
      const own = traction(vehicleById("van"), settingsOf("van"));
      const places = [...(limits[0]?.d ?? "").matchAll(/([\d.]+) ([\d.]+)/g)];
      expect(places.length).toBeGreaterThan(20);
      for (const m of places.slice(3, -3)) {
        const speed = (Number(m[1]) - frame.x(0)) / (frame.x(1) - frame.x(0));
        expect(Math.abs(Number(m[2]) - frame.y(own.most(speed)))).toBeLessThan(2);
      }
    }
  });
});

describe("what moves on a map", () => {
  const { frame } = layoutOf("compact", "sunMachine");

  it("stays at equal power along the line, in all quadrants", () => {
    for (const point of [
      [500, 20],
      [-500, 20],
      [500, -20],
      [-500, -20],
    ] as const) {
      const line = powerLine(frame, point, frame.range);
      expect(line?.places.length).toBeGreaterThan(10);
      for (const [px, py] of line?.places ?? []) {
        const speed = (px - frame.x(0)) / (frame.x(1) - frame.x(0));
        const torque = (py - frame.y(0)) / (frame.y(1) - frame.y(0));
        expect(speed * torque).toBeCloseTo(point[0] * point[1], 3);
      }
    }
  });

  it("has no line of equal power without power", () => {
    expect(powerLine(frame, [0, 20], frame.range)).toBeNull();
    expect(powerLine(frame, [500, 0], frame.range)).toBeNull();
  });

  it("writes the power clear of other labels and of the point, inside the plot", () => {
    const line = powerLine(frame, [600, 25], frame.range);
    if (!line) throw new Error("no line");
    const { box } = frame;
    const end = line.places.at(-1) ?? [0, 0];
    const taken = [{ x: end[0] - 60, y: end[1] - 40, width: 70, height: 80 }];
    const free = powerLabel(frame, line, [], 50, 14);
    const pushed = powerLabel(frame, line, taken, 50, 14);
    for (const place of [free, pushed]) {
      expect(place?.x).toBeGreaterThanOrEqual(box.x);
      expect((place?.x ?? 0) + 50).toBeLessThanOrEqual(box.x + box.width + 1);
    }
    expect(pushed).not.toEqual(free);
    const own = { x: pushed?.x ?? 0, y: (pushed?.y ?? 0) - 11, width: 50, height: 14 };
    for (const box2 of taken) expect(overlap(own, box2)).toBe(0);
  });

  it("writes no power against a line that would read as its minus", () => {
    const zero = frame.y(0);
    let written = 0;
    for (let speed = 120; speed < 520; speed += 40) {
      for (let torque = 5; torque < 120; torque += 5) {
        const line = powerLine(frame, [speed, torque], frame.range);
        const place = line && powerLabel(frame, line, [], 50, 14);
        if (!line || !place) continue;
        written += 1;
        const about = { x: place.x - 5, y: place.y - 11.2, width: 60, height: 14 };
        expect(about.y > zero || about.y + about.height < zero, `${speed} ${torque}`).toBe(true);
        for (const [x, y] of line.places) {
          const within =
            x > about.x && x < about.x + about.width && y > about.y && y < about.y + about.height;
          expect(within, `${speed} ${torque}`).toBe(false);
        }
      }
    }
    expect(written).toBeGreaterThan(200);
  });

  it("keeps the point on the plot", () => {
    const { box } = frame;
    const [x, y] = held(frame, [1e6, -1e6]);
    expect(x).toBeCloseTo(box.x + box.width, 6);
    expect(y).toBeCloseTo(box.y + box.height, 6);
  });

  it("trails five seconds, a dot each 0.2 s, and less at the start", () => {
    const dots = (row: number): number => (trailPath(frame, (i) => [i, 1], row, 10).match(/M/g) ?? []).length;
    expect(dots(500)).toBe(25);
    expect(dots(10)).toBe(5);
    expect(dots(0)).toBe(0);
  });
});
