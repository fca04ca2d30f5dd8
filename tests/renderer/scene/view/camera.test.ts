import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  basisOf,
  boundsOf,
  dot,
  eyeOf,
  framed,
  orbited,
  PITCH_LIMIT,
  projected,
  ZOOM_LIMITS,
} from "../../../../renderer/scene/view/camera.ts";
import { dragTurn } from "../../../../renderer/scene/view/drag.ts";

const angle = fc.double({ min: -3, max: 3, noNaN: true });
const size = { width: 800, height: 600 };

describe("the eye", () => {
  it("looks at the gear set from 24° left and 17° up", () => {
    const { yaw, pitch } = eyeOf("three-quarter", "gear set");
    expect((yaw * 180) / Math.PI).toBeCloseTo(24, 12);
    expect((pitch * 180) / Math.PI).toBeCloseTo(17, 12);
    const { toEye } = basisOf({ yaw, pitch });
    expect(toEye[0]).toBeLessThan(0);
    expect(toEye[1]).toBeGreaterThan(0);
    expect(toEye[2]).toBeGreaterThan(0);
  });

  it("has a right-handed frame of unit directions", () => {
    fc.assert(
      fc.property(angle, angle, (yaw, pitch) => {
        const { right, up, toEye } = basisOf({ yaw, pitch });
        for (const [a, b, wanted] of [
          [right, right, 1],
          [up, up, 1],
          [toEye, toEye, 1],
          [right, up, 0],
          [right, toEye, 0],
          [up, toEye, 0],
        ] as const) {
          expect(dot(a, b)).toBeCloseTo(wanted, 12);
        }
        expect(right[0] * up[1] - right[1] * up[0]).toBeCloseTo(toEye[2], 12);
      }),
    );
  });

  it("stays within its limits, whatever it is asked", () => {
    let eye = eyeOf("side", "drivetrain");
    for (const [dx, dy, zoom] of [
      [1e4, 1e4, 1e6],
      [-3e4, -9e4, 0],
      [0, 0, Number.NaN],
      [0, 0, 1e-9],
    ] as const) {
      eye = orbited(eye, dx, dy, zoom);
      expect(Math.abs(eye.pitch)).toBeLessThanOrEqual(PITCH_LIMIT);
      expect(eye.zoom).toBeGreaterThanOrEqual(ZOOM_LIMITS[0]);
      expect(eye.zoom).toBeLessThanOrEqual(ZOOM_LIMITS[1]);
    }
  });

  it("sees points of a drum's rims only inside the drum's bounds, and some at them", () => {
    const drum = { x: 5, y: -7, radius: 20, back: -4, front: 30 };
    fc.assert(
      fc.property(angle, angle, (yaw, pitch) => {
        const basis = basisOf({ yaw, pitch });
        const bounds = boundsOf([drum], basis);
        let most = Number.NEGATIVE_INFINITY;
        for (let i = 0; i < 360; i += 1) {
          for (const z of [drum.back, drum.front]) {
            const place = [drum.x + 20 * Math.cos(i), drum.y + 20 * Math.sin(i), z] as const;
            const u = dot(basis.right, place);
            expect(u).toBeLessThanOrEqual(bounds.right + 1e-9);
            expect(u).toBeGreaterThanOrEqual(bounds.left - 1e-9);
            most = Math.max(most, u);
          }
        }
        expect(most).toBeGreaterThan(bounds.right - 0.01);
      }),
      { numRuns: 40 },
    );
  });
});

describe("dragging a disc", () => {
  const grip = { middle: [0, 0, 12], radius: 40 } as const;
  const viewOf = (yaw: number, pitch: number) => {
    const basis = basisOf({ yaw, pitch });
    const drum = { x: 0, y: 0, radius: 60, back: 0, front: 30 };
    return { basis, framing: framed(boundsOf([drum], basis), size.width, size.height, 1), size };
  };
  const onDisc = (view: ReturnType<typeof viewOf>, turn: number) =>
    projected([30 * Math.cos(turn), 30 * Math.sin(turn), 12], view.basis, view.framing, size);

  it("turns it by the angle the pointer goes round its axis, from any side", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1.2, max: 1.2, noNaN: true }),
        fc.double({ min: -0.5, max: 0.5, noNaN: true }),
        angle,
        fc.double({ min: -1.5, max: 1.5, noNaN: true }),
        (yaw, pitch, from, turn) => {
          const view = viewOf(yaw, pitch);
          fc.pre(view.basis.toEye[2] > 0.3);
          const got = dragTurn(grip, view, onDisc(view, from), onDisc(view, from + turn));
          expect(got).not.toBeNull();
          expect(got ?? Number.NaN).toBeCloseTo(turn, 9);
        },
      ),
    );
  });

  it("takes no hold beside the disc or on its axis", () => {
    const view = viewOf(0.4, 0.3);
    const middle = projected([0, 0, 12], view.basis, view.framing, size);
    expect(dragTurn(grip, view, { x: 1, y: 1 }, { x: 30, y: 1 })).toBeNull();
    expect(dragTurn(grip, view, middle, { x: middle.x + 50, y: middle.y })).toBeNull();
  });

  it("rolls a disc seen from its edge the way its near side goes", () => {
    for (const yaw of [Math.PI / 2, -Math.PI / 2]) {
      const view = viewOf(yaw, 0);
      const middle = projected([0, 0, 12], view.basis, view.framing, size);
      const turn = dragTurn(grip, view, middle, { x: middle.x, y: middle.y + 10 }) ?? 0;
      // Seen from the left a counter-clockwise disc comes down toward the eye, seen from the right it goes up.
      expect(Math.sign(turn)).toBe(Math.sign(yaw));
    }
  });
});
