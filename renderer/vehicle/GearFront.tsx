import type { Teeth } from "../../sim/drivetrain/gear-set.ts";
import type { Outline } from "../scene/gears/outline.ts";
import { planetSet, setOutlines } from "../scene/gears/planetSet.ts";

/** Width of the ring's rim beyond its teeth, modules. */
const RIM = 5;

const path = (outline: Outline): string => {
  const points: string[] = [];
  for (let i = 0; i < outline.length; i += 2) {
    points.push(`${outline[i]?.toFixed(3)} ${(-(outline[i + 1] ?? 0)).toFixed(3)}`);
  }
  return `M${points.join("L")}Z`;
};

const degrees = (angle: number): number => (-angle * 180) / Math.PI;

interface Props {
  readonly teeth: Teeth;
  readonly width: number;
  readonly height: number;
}

/** The gear set from the front, in the true outlines of its teeth. */
export function GearFront({ teeth, width, height }: Props) {
  const set = planetSet(teeth);
  const outlines = setOutlines(teeth);
  const radius = teeth.ringTeeth / 2 + RIM;
  const scale = Math.min(width, height) / (2 * radius + 2);
  return (
    <svg class="gear-front" width={width} height={height} aria-hidden="true">
      <g transform={`translate(${width / 2} ${height / 2}) scale(${scale})`} stroke-width={1.1 / scale}>
        <g transform={`rotate(${degrees(set.ringPhase)})`}>
          <path
            class="front ring"
            fill-rule="evenodd"
            d={`M${-radius} 0a${radius} ${radius} 0 1 0 ${2 * radius} 0a${radius} ${radius} 0 1 0 ${-2 * radius} 0Z${path(outlines.ring)}`}
          />
        </g>
        {set.planets.map(({ position, phase }) => (
          <g
            key={position}
            transform={`translate(${set.centreDistance * Math.cos(position)} ${-set.centreDistance * Math.sin(position)}) rotate(${degrees(phase)})`}
          >
            <path class="front planet" d={path(outlines.planet)} />
            <circle class="front carrier" r={teeth.planetTeeth / 6} />
          </g>
        ))}
        <path class="front sun" d={path(outlines.sun)} />
        <circle class="front bore" r={teeth.sunTeeth / 6} />
      </g>
    </svg>
  );
}
