import { num } from "../../state/format.ts";
import { t } from "../../texts/catalogue.ts";
import { measure } from "../../ui/measure.ts";
import { patternOf } from "./FlowPatterns.tsx";
import type { Kind, Owner } from "./kinds.ts";
import type { SheetSize } from "./places.ts";

const ITEMS: readonly (readonly [Kind, Owner])[] = [
  ["mech", "ring"],
  ["elec", "ring"],
  ["chem", "battery"],
  ["heat", "loss"],
];

const STEPS = [100_000, 50_000, 20_000, 10_000, 5000, 2000, 1000, 500, 200, 100];

/** The largest round power whose bar stays short. */
function scaleBar(perWatt: number, text: number): { watts: number; long: number } {
  const watts = STEPS.find((step) => step * perWatt <= text * 2.6) ?? 100;
  return { watts, long: watts * perWatt };
}

interface KeyProps extends SheetSize {
  readonly perWatt: number;
}

/** Scale bar and key at the foot. */
export function Key({ width, height, text, perWatt }: KeyProps) {
  const { watts, long } = scaleBar(perWatt, text);
  const y = height - text * 0.25;
  const swatch = text * 1.85;
  const wide = (kind: Kind): number => swatch + 6 + measure(t.roadFlow.kinds[kind], text) + text;
  const scale = t.roadFlow.scale(num(watts / 1000, watts < 1000 ? 1 : 0));
  let x = width - ITEMS.reduce((sum, [kind]) => sum + wide(kind), 0) + text;
  const from = x - measure(scale, text) - text * 1.6 - long;
  return (
    <g class="key" aria-hidden="true">
      <path class="scalebar" d={`M${from} ${y - 7}v7h${long}v-7`} />
      <text class="label" x={from + long + 8} y={y}>
        {scale}
      </text>
      {ITEMS.map(([kind, owner]) => {
        const start = x;
        x += wide(kind);
        return (
          <g key={kind}>
            <rect
              x={start}
              y={y - text * 0.8}
              width={swatch}
              height={text * 0.86}
              style={{ fill: patternOf(kind, owner, 1) }}
            />
            <text class="label" x={start + swatch + 6} y={y}>
              {t.roadFlow.kinds[kind]}
            </text>
          </g>
        );
      })}
    </g>
  );
}
