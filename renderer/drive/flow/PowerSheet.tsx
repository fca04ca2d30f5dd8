import type { FlowId } from "../../../sim/run/flows.ts";
import { flowScale } from "../../state/flow-look.ts";
import { hidden } from "../../state/predict.ts";
import { now, run } from "../../state/road.ts";
import type { Now, Run } from "../../state/run.ts";
import { t } from "../../texts/catalogue.ts";
import { measure } from "../../ui/measure.ts";
import { patternOf } from "./FlowPatterns.tsx";
import { Key } from "./Key.tsx";
import { askedFlows } from "./kinds.ts";
import { Numbers } from "./Numbers.tsx";
import { type Places, placesOf, type SheetSize } from "./places.ts";
import { powerLabels } from "./power-labels.ts";
import { type Bar, powerLayout, type Ribbon, type TurnOff } from "./power-layout.ts";
import { demandsOf, peaksOf, scaleFor, steppedScale } from "./scale.ts";

/** Ribbons thinner than this, px, are solid: no pattern could be told on them. */
const SOLID_BELOW = 4;

/** Ribbons from this width on have a chevron. */
const CHEVRON_FROM = 9;

function fillOf({ kind, owner, width, asked }: Ribbon | TurnOff, way: 1 | -1): string | undefined {
  if (asked || width < SOLID_BELOW) return undefined;
  return patternOf(kind, owner, way);
}

const classOf = (base: string, { owner, width, asked }: Ribbon | TurnOff): string =>
  `${base} ${owner}${width < SOLID_BELOW ? " thin" : ""}${asked ? " asked" : ""}`;

/** One ribbon: its pattern drifts the way its power runs, its chevron stands. */
function RibbonShape({ ribbon, text }: { ribbon: Ribbon; text: number }) {
  const { legs, outline, mark, width, backward, head, loop, asked } = ribbon;
  const q = Math.min(text * 0.57, width * 0.3);
  return (
    <g class={classOf(loop ? "fr loop" : "fr", ribbon)}>
      {!asked &&
        width >= SOLID_BELOW &&
        legs.map(({ d, way }, i) => (
          <path key={i} class="tile" d={d} style={{ fill: fillOf(ribbon, backward ? ((-way) as 1 | -1) : way) }} />
        ))}
      <path class="edge" d={outline} />
      {head && <path class="head" d={head} />}
      {width >= CHEVRON_FROM && !asked && !head && (
        <path
          class="chevron"
          transform={`translate(${mark.x} ${mark.y}) rotate(${mark.angle})`}
          d={`M${-q * 0.6} ${-q}l${q * 1.2} ${q}l${-q * 1.2} ${q}`}
        />
      )}
    </g>
  );
}

const TurnShape = ({ turn }: { turn: TurnOff }) => (
  <g class={classOf("ft", turn)}>
    <path class="body" d={turn.body} style={{ fill: turn.owner === "steel" ? fillOf(turn, 1) : undefined }} />
    <path class="head" d={turn.head} />
  </g>
);

/** A plain bar as tall as what goes through; a mark where nothing does. */
function BarShape({ bar, text }: { bar: Bar; text: number }) {
  const half = text / 7;
  return (
    <rect
      class={`nodebar ${bar.height === 0 ? "still" : ""}`}
      x={bar.x - half}
      y={bar.y - half}
      width={2 * half}
      height={bar.height + 2 * half}
    />
  );
}

function scaleNow(places: Places, one: Run, at: Now): number {
  return flowScale.value === "run"
    ? scaleFor(places, peaksOf(one, one.log))
    : steppedScale(places, demandsOf(at.flows));
}

/** The powers of the instant at the cursor. */
export function PowerSheet({ width, height, text }: SheetSize) {
  const one = run.value;
  const at = now.value;
  if (!one || !at) return null;
  const size = { width, height, text };
  const places = placesOf(size);
  const perWatt = scaleNow(places, one, at);
  const asked: ReadonlySet<FlowId> = askedFlows(hidden.value);
  const layout = powerLayout({ ...size, flows: at.flows, perWatt, asked });
  const labels = powerLabels(layout, at.at.speed < -0.01, measure);
  return (
    <>
      <svg
        width={width}
        height={height}
        role="img"
        aria-label={t.roadFlow.title}
        aria-describedby="road-flow-words"
      >
        {layout.turns.map((turn) => (
          <TurnShape key={turn.id} turn={turn} />
        ))}
        {layout.ribbons.map((ribbon) => (
          <RibbonShape key={ribbon.id} ribbon={ribbon} text={text} />
        ))}
        {layout.bars.map((bar) => (
          <BarShape key={bar.id} bar={bar} text={text} />
        ))}
        <Key width={width} height={height} text={text} perWatt={perWatt} />
      </svg>
      <Numbers labels={labels} width={width} height={height} />
    </>
  );
}
