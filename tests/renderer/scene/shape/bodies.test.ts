import { describe, expect, it } from "vitest";
import type { SceneModel } from "../../../../renderer/scene/contract.ts";
import { circleOutline, reversed } from "../../../../renderer/scene/gears/outline.ts";
import { type SceneBodies, sceneBodies } from "../../../../renderer/scene/graph/bodies.ts";
import { openAnnulus } from "../../../../renderer/scene/parts/carrier.ts";
import type { Body } from "../../../../renderer/scene/shape/body.ts";
import { circle } from "../../../../renderer/scene/shape/loop.ts";
import { plate } from "../../../../renderer/scene/shape/plate.ts";
import { tube } from "../../../../renderer/scene/shape/round.ts";
import { sweep } from "../../../../renderer/scene/shape/sweep.ts";
import { compact, withTeeth } from "../models.ts";
import { normalOf, openEdges, trianglesOf, volumeOf, worstFacing } from "./solid.ts";

/** Area of a regular polygon inscribed in a circle: what a drawn circle encloses. */
const disc = (radius: number): number => {
  const pieces = circle(radius).points.length / 2;
  return (pieces / 2) * radius ** 2 * Math.sin((2 * Math.PI) / pieces);
};

/** Bodies that enclose a room, paint left out: it has no back. */
function solids(model: SceneModel): (readonly [string, Body])[] {
  const built: SceneBodies = sceneBodies(model);
  const pieces = [...built.set, ...built.train()].flatMap(({ name, pieces: own }) =>
    own.filter(({ mark }) => mark !== true).map(({ body }) => [name, body] as const),
  );
  return [...pieces, ...built.planet.map(({ body }) => ["planet", body] as const)];
}

describe("swept bodies", () => {
  it("a tube is closed and encloses its volume", () => {
    const body = tube({ inner: 4, outer: 9, back: -3, front: 5 }, "sun");
    expect(openEdges(body)).toBe(0);
    expect(volumeOf(body)).toBeCloseTo((disc(9) - disc(4)) * 8, 9);
    expect(worstFacing(body)).toBeGreaterThan(0.98);
  });

  it("loops of unequal point numbers and starts are joined without gaps", () => {
    const body = sweep(
      [
        { loop: circle(30), z: 0 },
        { loop: circle(30), z: 4 },
        { loop: circle(7), z: 4 },
        { loop: circle(7), z: 0 },
      ],
      { tone: "ring" },
    );
    expect(openEdges(body)).toBe(0);
    expect(volumeOf(body)).toBeCloseTo((disc(30) - disc(7)) * 4, 9);
  });

  it("draws a sharp edge where the surface turns, and contours of outer cylinders only", () => {
    const { lines } = tube({ inner: 4, outer: 9, back: 0, front: 5 }, "sun");
    const rows = Array.from({ length: lines.length / 10 }, (_, i) => lines.values.slice(10 * i, 10 * i + 10));
    const contours = rows.filter((row) => row[8] !== 0);
    expect(contours.map((row) => row[8])).toEqual([9, -9]);
    expect(rows.length - contours.length).toBe((2 * (circle(9).points.length + circle(4).points.length)) / 2);
  });
});

describe("plates", () => {
  it("a plate with a hole is closed and encloses its volume", () => {
    const face = { outline: circleOutline(10, 64), holes: [reversed(circleOutline(4, 32))] };
    const body = plate(face, { back: 1, front: 3, tone: "carrier" });
    const area = 32 * 100 * Math.sin((2 * Math.PI) / 64) - 16 * 16 * Math.sin((2 * Math.PI) / 32);
    expect(openEdges(body)).toBe(0);
    expect(volumeOf(body)).toBeCloseTo(2 * area, 9);
    expect(worstFacing(body)).toBeGreaterThan(0.98);
  });

  it("a band is divided straight across and keeps its area", () => {
    const outline = openAnnulus(20, 30, 0.5, 5.5);
    const common = { back: 0, front: 1, tone: "carrier" } as const;
    const band = plate({ outline, holes: [] }, { ...common, band: true });
    const general = plate({ outline, holes: [] }, common);
    expect(openEdges(band)).toBe(0);
    expect(volumeOf(band)).toBeCloseTo(volumeOf(general), 9);
  });
});

describe("bodies of a model", () => {
  for (const [name, model] of [
    ["demo compact", compact],
    ["three planets, machine on the ring's shaft", { ...withTeeth(42, 33, 108, 3), outputReduction: 1 }],
    ["few teeth", withTeeth(18, 18, 54, 3)],
  ] as const) {
    it(`are closed, face outward, and have unit normals (${name})`, () => {
      for (const [part, body] of solids(model)) {
        if (body.triangles.length === 0) continue;
        expect(volumeOf(body), part).toBeGreaterThan(0);
        const triangles = trianglesOf(body);
        for (let i = 0; i < triangles.length; i += 97) {
          const corner = triangles[i]?.[0] ?? 0;
          expect(Math.hypot(...normalOf(body, corner)), part).toBeCloseTo(1, 6);
        }
      }
    });
  }

  it("gears and ring are watertight", () => {
    for (const [part, body] of solids(compact)) {
      if (part === "sun" || part === "ring") expect(openEdges(body), part).toBe(0);
    }
  });
});
