import { cycleById } from "../../cycles/catalogue.ts";
import { at } from "../../shared/at.ts";
import { basicRatio } from "../../sim/drivetrain/gear-set.ts";
import type { Lesson, RunScene } from "../../sim/lesson/lesson.ts";
import { speedsOf } from "../../sim/lesson/stage.ts";
import { vehicleOf } from "../../sim/lesson/vehicle-spec.ts";
import { Glyph } from "../lever/Glyph.tsx";

const WIDTH = 74;
const HEIGHT = 34;
/** Points of the small curve. */
const POINTS = 60;

/** The speed that a drive asks for, from its start to its end. */
function Curve({ of }: { of: RunScene }) {
  const { time, speed } = cycleById(of.cycle);
  const end = at(time, time.length - 1);
  const most = Math.max(...speed);
  const points = Array.from({ length: POINTS }, (_, i) => {
    const sample = Math.round((i / (POINTS - 1)) * (speed.length - 1));
    const x = (at(time, sample) / end) * WIDTH;
    return `${x.toFixed(1)},${(HEIGHT - 3 - (at(speed, sample) / most) * (HEIGHT - 6)).toFixed(1)}`;
  });
  return (
    <svg class="glyph" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
      <line x1="0" x2={WIDTH} y1={HEIGHT - 2} y2={HEIGHT - 2} class="plotax" />
      <polyline points={points.join(" ")} class="minicurve" />
    </svg>
  );
}

/** A lesson's glyph: what stands on its stage first, the lever line or the drive. */
export function LessonGlyph({ lesson }: { lesson: Lesson }) {
  const first = lesson.steps.find(({ scenes }) => scenes.length > 0)?.scenes.at(-1);
  if (!first) return null;
  if (first.kind === "run") return <Curve of={first} />;
  return <Glyph k={basicRatio(vehicleOf(first.vehicle).gearSet)} speeds={speedsOf(first)} />;
}
