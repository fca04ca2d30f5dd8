import { radPerSToRpm } from "../../shared/units.ts";
import { SHAFTS, type ShaftValues } from "../../sim/bench/shafts.ts";

interface GlyphProps {
  readonly k: number;
  /** rad/s */
  readonly speeds: ShaftValues;
}

const WIDTH = 74;
const HEIGHT = 34;
const INSET = 6;
/** rev/min at the edge of the glyph */
const EDGE = 7600;

/** A situation's glyph: the line alone, at k : 1. */
export function Glyph({ k, speeds }: GlyphProps) {
  const span = WIDTH - 2 * INSET;
  const x = { sun: INSET, carrier: INSET + (span * k) / (1 + k), ring: INSET + span };
  const middle = HEIGHT / 2 + 1;
  const y = (shaft: keyof ShaftValues): number => {
    const rpm = Math.max(-EDGE, Math.min(EDGE, radPerSToRpm(speeds[shaft])));
    return middle - (rpm * 12) / 6000;
  };
  return (
    <svg class="glyph" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
      <line x1="0" x2={WIDTH} y1={middle} y2={middle} class="plotax" />
      {SHAFTS.map((shaft) => (
        <line key={shaft} x1={x[shaft]} x2={x[shaft]} y1="3" y2={HEIGHT - 1} class="miniaxis" />
      ))}
      <line x1={x.sun} y1={y("sun")} x2={x.ring} y2={y("ring")} class="minihero" />
      {SHAFTS.map((shaft) => (
        <circle key={shaft} cx={x[shaft]} cy={y(shaft)} r="3.4" class={`fillline ${shaft}`} />
      ))}
    </svg>
  );
}
