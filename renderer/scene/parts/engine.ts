import { polar } from "../gears/outline.ts";
import { addBody, addVertex, type Body, emptyBody, joined } from "../shape/body.ts";
import { polarOutline } from "../shape/loop.ts";
import { plate } from "../shape/plate.ts";
import { revolved, tube } from "../shape/round.ts";
import { around, radialMark, spot } from "./marks.ts";
import { Z } from "./stations.ts";

/** Outside of the flywheel. */
export const FLYWHEEL = 58;
const RIM = 43;
const SPRING_CIRCLE = 29;
const SPRINGS = 6;
const COIL = 4.2;
const CRANK_THROW = 15;

/** Flywheel with its damper springs seen in the web, and one throw of the crankshaft in front of it. */
export function engineBody(carrierShaft: number): Body {
  const { back, front } = Z.flywheel;
  const wheel = revolved(
    [
      [FLYWHEEL - 1, back],
      [FLYWHEEL, back + 1],
      [FLYWHEEL, front - 1],
      [FLYWHEEL - 1, front],
      [RIM, front],
      [RIM - 1.5, front - 7, 0.7],
      [RIM - 7, front - 7, 0.72],
      [RIM - 7, front - 9.5, 0.5],
      [SPRING_CIRCLE - 7, front - 9.5, 0.5],
      [SPRING_CIRCLE - 7, front - 5, 0.85],
      [13, front - 5, 0.8],
      [Math.min(12, carrierShaft), front - 5, 0.8],
      [Math.min(12, carrierShaft), back, 0.4],
    ],
    { tone: "carrier", contour: 1.5 },
  );
  return joined(
    wheel,
    springs(front - 7),
    around(8, (a) => spot(18 * Math.cos(a), 18 * Math.sin(a), 1.7, front - 5, "bearing")),
    crank(front - 5),
  );
}

/** The flywheel's mark, on its rim. */
export const engineMark = (): Body => radialMark(RIM + 2, FLYWHEEL - 2.5, Z.flywheel.front);

/** Springs lying round the web between stops. */
function springs(z: number): Body {
  const body = emptyBody();
  const spring = coil(20, COIL, 1.05, 5.5);
  const stop = tube({ inner: 0, outer: 2.1, back: z - 3, front: z + 1.2, chamfer: 0.4 }, "carrier");
  for (let i = 0; i < SPRINGS; i += 1) {
    const direction = (2 * Math.PI * i) / SPRINGS;
    addBody(body, spring, { ...polar(SPRING_CIRCLE, direction), z, turn: direction });
    addBody(body, stop, polar(SPRING_CIRCLE + 0.6, direction + Math.PI / SPRINGS));
  }
  return body;
}

/** A helical spring along y. */
export function coil(length: number, radius: number, wire: number, turns: number): Body {
  const body = emptyBody();
  const perTurn = 16;
  const sides = 6;
  const steps = Math.round(perTurn * turns);
  for (let i = 0; i <= steps; i += 1) {
    const angle = (2 * Math.PI * i) / perTurn;
    const y = length * (i / steps - 0.5);
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    for (let k = 0; k < sides; k += 1) {
      const [u, v] = [Math.cos((2 * Math.PI * k) / sides), Math.sin((2 * Math.PI * k) / sides)];
      const out = radius + wire * u;
      addVertex(body, [out * c, y + wire * v, out * s], [u * c, v, u * s], "planet", 0.62 + 0.38 * u);
    }
  }
  for (let i = 0; i < steps; i += 1) {
    for (let k = 0; k < sides; k += 1) {
      const [a, b] = [i * sides + k, i * sides + ((k + 1) % sides)];
      body.triangles.push(a, b, a + sides);
      body.triangles.push(b, b + sides, a + sides);
    }
  }
  return body;
}

/** How far out the web reaches round the pin: the far side of a circle about it. */
function lobe(angle: number): number {
  const [up, aside] = [CRANK_THROW * Math.sin(angle), CRANK_THROW * Math.cos(angle)];
  const square = 11 ** 2 - aside ** 2;
  return square > 0 && up > 0 ? up + Math.sqrt(square) : 0;
}

/** The web's heavy side: a sector below with softened ends. */
function counterweight(angle: number): number {
  const fromBelow = Math.acos(Math.min(1, Math.max(-1, -Math.sin(angle))));
  const share = Math.min(1, Math.max(0, (1.16 - fromBelow) / 0.2));
  return 13 + 12 * Math.sqrt(share * (2 - share));
}

/** Main bearing, web with counterweight, and the pin of one throw. */
function crank(start: number): Body {
  const web = polarOutline(120, (angle) => Math.max(13, lobe(angle), counterweight(angle)));
  return joined(
    tube({ inner: 0, outer: 12, back: start, front: start + 14, chamfer: 0.6 }, "carrier", { contour: 1.2 }),
    plate({ outline: web, holes: [] }, { back: start + 14, front: start + 21, tone: "carrier", weight: 1.2 }),
    moved(tube({ inner: 0, outer: 7.5, back: start + 21, front: Z.crankEnd - 6, chamfer: 0.8 }, "carrier")),
  );
}

function moved(body: Body): Body {
  const all = emptyBody();
  addBody(all, body, { y: CRANK_THROW });
  return all;
}
