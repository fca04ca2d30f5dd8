import { describe, expect, test } from "vitest";
import { externalDiameters, internalDiameters } from "../../../../renderer/scene/gears/dimensions.ts";
import { externalGearOutline, externalInvolute } from "../../../../renderer/scene/gears/externalOutline.ts";
import { FILLET_RESERVE } from "../../../../renderer/scene/gears/fillet.ts";
import { halfAngleAt } from "../../../../renderer/scene/gears/flank.ts";
import { internalGearOutline, internalInvolute } from "../../../../renderer/scene/gears/internalOutline.ts";
import { type Outline, radiusBounds, signedArea } from "../../../../renderer/scene/gears/outline.ts";
import { at } from "../../../../shared/at.ts";
import { placed } from "./meshing.ts";

interface Polar {
  readonly radius: number;
  readonly angle: number;
}

function polarPoints(outline: Outline): Polar[] {
  return Array.from({ length: outline.length / 2 }, (_, index) => {
    const [x, y] = [at(outline, 2 * index), at(outline, 2 * index + 1)];
    return { radius: Math.hypot(x, y), angle: Math.atan2(y, x) };
  });
}

const KINDS = [
  {
    kind: "external",
    outlineOf: externalGearOutline,
    diametersOf: externalDiameters,
    involuteOf: externalInvolute,
    counts: [18, 22, 30, 40, 61, 200],
  },
  {
    kind: "internal",
    outlineOf: internalGearOutline,
    diametersOf: internalDiameters,
    involuteOf: internalInvolute,
    counts: [34, 54, 74, 100, 104, 161],
  },
] as const;

describe.each(KINDS)("$kind outline", ({ outlineOf, diametersOf, involuteOf, counts, kind }) => {
  const cases = counts.flatMap((teeth) => [0, 0.04, 0.2].map((backlash) => ({ teeth, backlash })));

  test.each(cases)(
    "$teeth teeth, backlash $backlash: counter-clockwise, closed, within tip and root",
    ({ teeth, backlash }) => {
      const outline = outlineOf(teeth, { backlash });
      const { tip, root } = diametersOf(teeth);
      const bounds = radiusBounds(outline);
      expect(bounds.least).toBeCloseTo(Math.min(tip, root) / 2, 11);
      expect(bounds.greatest).toBeCloseTo(Math.max(tip, root) / 2, 11);
      expect(signedArea(outline)).toBeGreaterThan(Math.PI * bounds.least ** 2 * 0.99);
      expect(signedArea(outline)).toBeLessThan(Math.PI * bounds.greatest ** 2);
      const points = polarPoints(outline);
      points.forEach((point, index) => {
        const next = points[(index + 1) % points.length] ?? point;
        // Angles never run back, so the line cannot cross itself; the way round is one turn.
        const step = Math.sin(next.angle - point.angle);
        expect(step).toBeGreaterThan(-1e-12);
        expect(Math.hypot(step * point.radius, next.radius - point.radius)).toBeGreaterThan(1e-6);
        expect(Math.hypot(step * point.radius, next.radius - point.radius)).toBeLessThan(1);
      });
    },
  );

  test.each(cases)(
    "$teeth teeth, backlash $backlash: flank points satisfy the involute equation",
    ({ teeth, backlash }) => {
      const { base, pitch, tip } = diametersOf(teeth);
      const outline = outlineOf(teeth, { backlash, flankPoints: 12 });
      const pressure = Math.PI / 9;
      const inv = (a: number): number => Math.tan(a) - a;
      // Written out again here from the definition: half angle on the pitch circle plus or minus the involutes.
      const pitchHalf = (Math.PI / 2 - backlash / 2) / pitch;
      const sense = kind === "external" ? 1 : -1;
      const clear = pitch / 2 - sense * (1 + FILLET_RESERVE * 0.25);
      const deepest = kind === "external" ? Math.max(base / 2, clear) : clear;
      const onFlank = polarPoints(outline).filter(
        ({ radius }) => sense * (radius - deepest) >= -1e-12 && sense * (tip / 2 - radius) > 1e-9,
      );
      expect(onFlank).toHaveLength(teeth * 2 * 11);
      for (const { radius, angle } of onFlank) {
        const tooth = (angle * teeth) / (2 * Math.PI);
        const fromMiddle = Math.abs(tooth - Math.round(tooth)) * ((2 * Math.PI) / teeth);
        const roll = Math.acos(Math.min(1, base / 2 / radius));
        // At the base circle the profile angle is an inverse cosine at 1: compare the angle itself, not the roll.
        expect(Math.abs(fromMiddle - (pitchHalf + sense * (inv(pressure) - inv(roll))))).toBeLessThan(1e-12);
      }
      expect(involuteOf(teeth, { backlash }).pitchHalfAngle).toBeCloseTo(pitchHalf, 15);
    },
  );

  test("all teeth are alike and each is its own mirror image", () => {
    for (const teeth of counts) {
      const outline = outlineOf(teeth);
      const perTooth = outline.length / teeth;
      expect(perTooth % 4).toBe(0);
      const turned = placed(outline, (2 * Math.PI) / teeth);
      for (let index = 0; index < outline.length; index += 1) {
        const ahead = at(outline, (index + perTooth) % outline.length);
        expect(Math.abs(at(turned, index) - ahead)).toBeLessThan(1e-12 * teeth);
      }
      for (let index = 2; index < perTooth; index += 2) {
        expect(at(outline, index)).toBe(at(outline, perTooth - index));
        expect(at(outline, index + 1)).toBeCloseTo(-at(outline, perTooth - index + 1), 14);
      }
    }
  });

  test("the fillet starts deeper than the mate's tips reach and touches flank and root circle smoothly", () => {
    for (const teeth of counts) {
      const { pitch, root } = diametersOf(teeth);
      const outline = outlineOf(teeth, { arcPieces: 400, flankPoints: 400 });
      const points = polarPoints(outline).slice(0, outline.length / 2 / teeth / 2);
      const depth = ({ radius }: Polar): number => Math.abs(pitch / 2 - radius);
      const corner = points.map((point, index) => {
        const [a, b] = [points[index - 1], points[index + 1]];
        if (a === undefined || b === undefined) return 0;
        const heading = (p: Polar, q: Polar): number =>
          Math.atan2(q.radius - p.radius, p.radius * (q.angle - p.angle));
        return Math.abs(heading(point, b) - heading(a, point));
      });
      const sharp = points.filter((_, index) => (corner[index] ?? 0) > 0.05);
      // The only corner of the half tooth lies at the tip.
      expect(sharp.every(({ radius }) => Math.abs(radius - diametersOf(teeth).tip / 2) < 1e-9)).toBe(true);
      const filletPoints = points.slice(200, 601);
      expect(filletPoints.every((point) => depth(point) >= 1 + FILLET_RESERVE * 0.25 - 1e-9)).toBe(true);
      expect(Math.abs((filletPoints[0]?.radius ?? 0) - root / 2)).toBeLessThan(1e-9);
    }
  });

  test("more points lie on the same curve: the area converges", () => {
    const teeth = counts[2];
    const [coarse, fine, finest] = [10, 40, 160].map((flankPoints) =>
      signedArea(outlineOf(teeth, { flankPoints, arcPieces: 40 })),
    );
    if (coarse === undefined || fine === undefined || finest === undefined) throw new Error("no areas");
    // Two flanks of about 2.3 modules, each within 0.004 modules.
    expect(Math.abs(coarse - finest) / teeth).toBeLessThan(2 * 2.3 * 0.004);
    expect(Math.abs(fine - finest)).toBeLessThan(Math.abs(coarse - finest) / 10);
  });
});

test("the default fineness keeps a flank within 0.004 modules of the involute", () => {
  for (const { kind, outlineOf, diametersOf, involuteOf, counts } of KINDS) {
    for (const teeth of counts) {
      const curve = involuteOf(teeth);
      const { base, pitch, tip } = diametersOf(teeth);
      const foot = kind === "external" ? Math.max(base, pitch - 2.1) : pitch + 2.1;
      const outline = outlineOf(teeth);
      const half = polarPoints(outline).slice(0, outline.length / teeth / 4);
      const flank = half.filter(({ radius }) => (radius - foot / 2 + 1e-9) * (tip / 2 - radius + 1e-9) >= 0);
      for (const [index, point] of flank.entries()) {
        const next = flank[index + 1];
        if (next === undefined || Math.abs(point.radius - tip / 2) < 1e-9) continue;
        const x = (point.radius * Math.cos(point.angle) + next.radius * Math.cos(next.angle)) / 2;
        const y = (point.radius * Math.sin(point.angle) + next.radius * Math.sin(next.angle)) / 2;
        const radius = Math.hypot(x, y);
        // Along the circle the gap is wider than square to the flank, by the cosine of the profile angle.
        const round = radius * Math.abs(-Math.atan2(y, x) - halfAngleAt(curve, radius));
        expect((round * base) / 2 / radius).toBeLessThan(0.004);
      }
    }
  }
});

test("a tip diameter replaces the standard one", () => {
  expect(radiusBounds(externalGearOutline(30, { tipDiameter: 31.8 })).greatest).toBeCloseTo(15.9, 12);
  expect(radiusBounds(internalGearOutline(100, { tipDiameter: 98.3 })).least).toBeCloseTo(49.15, 12);
});

test.each([
  ["a tooth that is not whole", () => externalGearOutline(30.5), /number of teeth is 30.5/],
  ["too few teeth", () => externalGearOutline(4), /number of teeth is 4/],
  ["a tip inside the base circle", () => internalGearOutline(33), /inside the base circle/],
  ["a pointed tooth", () => externalGearOutline(30, { tipDiameter: 36 }), /pointed/],
  ["fillets that overlap", () => externalGearOutline(30, { dedendum: 2, addendum: 1 }), /overlap/],
  ["one flank point", () => externalGearOutline(30, { flankPoints: 1 }), /flankPoints is 1/],
  ["odd arc pieces", () => externalGearOutline(30, { arcPieces: 3 }), /arcPieces is 3/],
  ["a module of zero", () => externalGearOutline(30, { module: 0 }), /module is 0/],
  ["a steep pressure angle", () => externalGearOutline(30, { pressureAngle: 20 }), /pressure angle is 20/],
  ["no clearance", () => externalGearOutline(30, { dedendum: 1 }), /dedendum is 1/],
  ["no addendum", () => externalGearOutline(30, { addendum: 0 }), /addendum is 0/],
  ["negative backlash", () => externalGearOutline(30, { backlash: -0.1 }), /backlash is -0.1/],
])("refuses %s", (_, make, message) => {
  expect(make).toThrow(message);
});
