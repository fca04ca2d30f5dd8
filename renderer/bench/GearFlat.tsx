import { effect } from "@preact/signals";
import { useEffect, useMemo } from "preact/hooks";
import type { Teeth } from "../../sim/drivetrain/gear-set.ts";
import { zeroTurn } from "../scene/angles.ts";
import type { Outline } from "../scene/gears/outline.ts";
import { planetSet, setOutlines } from "../scene/gears/planetSet.ts";
import { shaftAnglesFromCarrier } from "../scene/gears/shaftAngles.ts";
import { t } from "../texts/catalogue.ts";
import { metrics } from "../ui/metrics.ts";
import type { GearSource } from "./gear-source.ts";

/** Width of the ring's rim beyond its teeth, modules. */
const RIM = 5;

const path = (outline: Outline): string => {
  const points: string[] = [];
  for (let i = 0; i < outline.length; i += 2)
    points.push(`${outline[i]?.toFixed(3)} ${(-(outline[i + 1] ?? 0)).toFixed(3)}`);
  return `M${points.join("L")}Z`;
};

/** rad to degrees, turned the way that a page counts them. */
const turn = (angle: number): string => `rotate(${((-angle * 180) / Math.PI) % 360})`;

/** All that does not turn: outlines and places. */
function shapesOf(teeth: Teeth) {
  const outlines = setOutlines(teeth);
  return {
    set: planetSet(teeth),
    sun: path(outlines.sun),
    planet: path(outlines.planet),
    ring: path(outlines.ring),
    radius: teeth.ringTeeth / 2 + RIM,
  };
}

/** Runs the source's own turning while it is on, frame by frame. */
function useTurning({ turning }: GearSource): void {
  useEffect(
    () =>
      effect(() => {
        if (!turning?.on.value) return;
        let last = performance.now();
        let frame = requestAnimationFrame(function step(now) {
          turning.runFor(Math.min(1, (now - last) / 1000));
          last = now;
          frame = requestAnimationFrame(step);
        });
        return () => cancelAnimationFrame(frame);
      }),
    [turning],
  );
}

interface Props {
  readonly source: GearSource;
  readonly width: number;
  readonly height: number;
}

/** The gear set from the front in the true outlines of its teeth, for devices that cannot draw in three dimensions. */
export function GearFlat({ source, width, height }: Props) {
  const teeth = source.vehicle.value.gearSet;
  const { set, sun, planet, ring, radius } = useMemo(() => shapesOf(teeth), [teeth]);
  const { carrier, ring: ringAngle } = source.angles.value;
  const angles = shaftAnglesFromCarrier(carrier, ringAngle, teeth);
  useTurning(source);
  const foot = metrics.value.text * 4.6;
  const scale = Math.max(0.1, Math.min(width, height - foot) / (2 * radius + 2));
  const up = Math.PI / teeth.planets;
  const mark = (from: number, to: number) => (
    <path class="flat-mark" d={`M${from} 0H${to}`} transform={turn(up)} />
  );
  return (
    <>
      <svg
        class="flat"
        width={width}
        height={height}
        role="img"
        aria-label={t.bench.flat.title}
        aria-describedby={source.words}
      >
        <g
          transform={`translate(${width / 2} ${(height - foot) / 2}) scale(${scale}) ${turn(zeroTurn(teeth))}`}
          stroke-width={1 / scale}
        >
          <g transform={turn(angles.ring)}>
            <path
              class="flat-body ring"
              fill-rule="evenodd"
              transform={turn(set.ringPhase)}
              d={`M${-radius} 0a${radius} ${radius} 0 1 0 ${2 * radius} 0a${radius} ${radius} 0 1 0 ${-2 * radius} 0Z${ring}`}
            />
            {mark(radius - RIM + 1.5, radius - 0.7)}
          </g>
          <g transform={turn(angles.carrier)}>
            <circle class="flat-plate" r={set.centreDistance} stroke-width={teeth.planetTeeth * 0.3} />
          </g>
          {set.planets.map(({ position, phase }) => (
            <g key={position} transform={turn(position + angles.carrier)}>
              <g transform={`translate(${set.centreDistance} 0)`}>
                <path
                  class="flat-body planet"
                  d={planet}
                  transform={turn(phase + angles.planet - position - angles.carrier)}
                />
                <circle class="flat-body carrier" r={teeth.planetTeeth / 6} />
              </g>
            </g>
          ))}
          <g transform={turn(angles.carrier)}>
            {mark(set.centreDistance - teeth.planetTeeth * 0.1, set.centreDistance + teeth.planetTeeth * 0.1)}
          </g>
          <g transform={turn(angles.sun)}>
            <path class="flat-body sun" d={sun} />
            {mark(teeth.sunTeeth * 0.24, teeth.sunTeeth * 0.42)}
          </g>
          <circle class="flat-bore" r={teeth.sunTeeth / 6} />
        </g>
      </svg>
      <p class="flat-note">{t.bench.flat.none}</p>
    </>
  );
}
