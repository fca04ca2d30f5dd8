import { useMemo } from "preact/hooks";
import { num } from "../../state/format.ts";
import { t } from "../../texts/catalogue.ts";
import { fontsReady, measure } from "../../ui/measure.ts";
import type { EnergyScale } from "./energy-units.ts";
import { type Patterned, patternOf } from "./FlowPatterns.tsx";
import type { Owner } from "./kinds.ts";
import type { SheetSize } from "./places.ts";

const ITEMS: readonly (readonly [Patterned, Owner])[] = [
  ["mech", "ring"],
  ["elec", "ring"],
  ["chem", "battery"],
  ["heat", "loss"],
];

/** The largest of 1, 2 and 5 in any power of ten whose bar stays short. */
function roundAmount(perUnit: number, text: number): number {
  const most = (text * 2.6) / perUnit;
  const decade = 10 ** Math.floor(Math.log10(most));
  return [5, 2, 1].map((times) => times * decade).find((step) => step <= most) ?? decade;
}

interface KeyProps extends SheetSize {
  /** px a watt or a joule */
  readonly perUnit: number;
}

/** Scale bar and key of the powers. */
export function Key(props: KeyProps) {
  const watts = roundAmount(props.perUnit, props.text);
  const said = t.roadFlow.scale(num(watts / 1000, watts < 1000 ? 1 : 0));
  return <Foot {...props} amount={watts} said={said} />;
}

/** Scale bar and key of the energies. */
export function EnergyKey({ units, ...props }: KeyProps & { units: EnergyScale }) {
  const amount = roundAmount(props.perUnit * units.per, props.text);
  const decimals = Math.max(0, -Math.floor(Math.log10(amount)));
  return <Foot {...props} amount={amount * units.per} said={`${num(amount, decimals)} ${units.unit}`} />;
}

interface FootProps extends KeyProps {
  readonly amount: number;
  readonly said: string;
}

/** Drawn again only when the scale, the size or the face of the text changes. */
function Foot({ width, height, text, perUnit, amount, said }: FootProps) {
  const long = amount * perUnit;
  const face = fontsReady.value;
  return useMemo(
    () => drawFoot({ width, height, text }, long, said),
    [width, height, text, long, said, face],
  );
}

function drawFoot({ width, height, text }: SheetSize, long: number, said: string) {
  const y = height - text * 0.25;
  const swatch = text * 1.85;
  const wide = (kind: Patterned): number => swatch + 6 + measure(t.roadFlow.kinds[kind], text) + text;
  const start = width - ITEMS.reduce((sum, [kind]) => sum + wide(kind), 0) + text;
  const from = start - measure(said, text) - text * 1.6 - long;
  let x = start;
  return (
    <g class="key" aria-hidden="true">
      <path class="scalebar" d={`M${from} ${y - 7}v7h${long}v-7`} />
      <text class="label" x={from + long + 8} y={y}>
        {said}
      </text>
      {ITEMS.map(([kind, owner]) => {
        const left = x;
        x += wide(kind);
        return (
          <g key={kind}>
            <rect
              x={left}
              y={y - text * 0.8}
              width={swatch}
              height={text * 0.86}
              style={{ fill: patternOf(kind, owner, 1) }}
            />
            <text class="label" x={left + swatch + 6} y={y}>
              {t.roadFlow.kinds[kind]}
            </text>
          </g>
        );
      })}
    </g>
  );
}
