import { expect, test } from "vitest";
import { ringFace, wheelFace } from "../../../../renderer/scene/gears/faces.ts";
import { circleOutline, reversed, signedArea } from "../../../../renderer/scene/gears/outline.ts";
import { setOutlines } from "../../../../renderer/scene/gears/planetSet.ts";

const { sun, ring } = setOutlines({ sunTeeth: 40, planetTeeth: 30, ringTeeth: 100 });

test("a wheel: outline counter-clockwise, bore clockwise", () => {
  const face = wheelFace(sun, 6);
  expect(face.outline).toBe(sun);
  expect(face.holes.map(signedArea).every((area) => area < 0)).toBe(true);
  expect(-signedArea(face.holes[0] ?? sun)).toBeCloseTo(Math.PI * 36, 0);
  expect(wheelFace(sun, 0).holes).toEqual([]);
});

test("a ring: round outside counter-clockwise, teeth clockwise inside", () => {
  const face = ringFace(ring, 56);
  expect(signedArea(face.outline)).toBeGreaterThan(0);
  expect(face.holes).toHaveLength(1);
  expect(face.holes[0]).toEqual(reversed(ring));
  const metal = [face.outline, ...face.holes].reduce((sum, line) => sum + signedArea(line), 0);
  expect(metal).toBeGreaterThan(Math.PI * (55.9 ** 2 - 51.25 ** 2));
  expect(metal).toBeLessThan(Math.PI * (56 ** 2 - 49 ** 2));
});

test("reversing twice gives the same line, once the opposite area", () => {
  expect(reversed(reversed(sun))).toEqual(sun);
  expect(signedArea(reversed(sun))).toBeCloseTo(-signedArea(sun), 9);
});

test("a circle starts on the x axis and runs counter-clockwise", () => {
  expect([...circleOutline(2, 4)].map((value) => Math.round(value) + 0)).toEqual([2, 0, 0, 2, -2, 0, 0, -2]);
});

test.each([
  ["a bore in the teeth", () => wheelFace(sun, 18.8), /bore radius/],
  ["a negative bore", () => wheelFace(sun, -1), /bore radius/],
  ["an outside in the teeth", () => ringFace(ring, 51.26), /outer radius/],
  ["a circle of no size", () => circleOutline(0, 8), /radius is 0/],
  ["a circle of two points", () => circleOutline(1, 2), /points is 2/],
])("refuses %s", (_, make, message) => {
  expect(make).toThrow(message);
});
