import { patternOf } from "./FlowPatterns.tsx";
import type { Bar, Ribbon, TurnOff } from "./sheet.ts";
import type { Picture } from "./wishes.ts";

/** Ribbons thinner than this, px, are solid: no pattern could be told on them. */
const SOLID_BELOW = 4;

/** Ribbons from this width on have a chevron. */
const CHEVRON_FROM = 9;

interface Styled {
  readonly owner: string;
  readonly width: number;
  readonly asked: boolean;
}

const classOf = (base: string, { owner, width, asked }: Styled): string =>
  `${base} ${owner}${width < SOLID_BELOW ? " thin" : ""}${asked ? " asked" : ""}`;

interface ChevronProps {
  readonly mark: { readonly x: number; readonly y: number; readonly angle: number };
  readonly size: number;
}

const Chevron = ({ mark: { x, y, angle }, size }: ChevronProps) => (
  <path
    class="chevron"
    transform={`translate(${x} ${y}) rotate(${angle})`}
    d={`M${-size * 0.6} ${-size}l${size * 1.2} ${size}l${-size * 1.2} ${size}`}
  />
);

/** One ribbon: its pattern drifts the way its power runs, its chevron stands. */
function RibbonShape({ ribbon, text }: { ribbon: Ribbon<string>; text: number }) {
  const { kind, owner, legs, outline, mark, width, backward, head, loop, asked } = ribbon;
  const patterned = !asked && width >= SOLID_BELOW;
  const fill = (way: 1 | -1) =>
    kind === "mixed"
      ? `var(--${owner === "steel" ? "well" : `${owner}-tint`})`
      : patternOf(kind, owner, backward === way < 0 ? 1 : -1);
  const [only, other] = legs;
  return (
    <g class={classOf(loop ? "fr loop" : "fr", ribbon)}>
      {patterned && other && legs.map(({ d, way }) => <path key={way} d={d} style={{ fill: fill(way) }} />)}
      <path
        class="edge"
        d={outline}
        style={patterned && only && !other ? { fill: fill(only.way) } : undefined}
      />
      {head && <path class="head" d={head} />}
      {patterned && width >= CHEVRON_FROM && !head && (
        <Chevron mark={mark} size={Math.min(text * 0.57, width * 0.3)} />
      )}
    </g>
  );
}

function TurnShape({ turn, text }: { turn: TurnOff<string>; text: number }) {
  const { kind, owner, width, asked, inward, mark } = turn;
  const patterned = kind === "mech" && !asked && width >= SOLID_BELOW;
  const wide = patterned && inward && width >= CHEVRON_FROM;
  return (
    <g class={classOf("ft", turn)}>
      <path class="body" d={turn.body} style={patterned ? { fill: patternOf(kind, owner, 1) } : undefined} />
      {!asked && !wide && <path class="head" d={turn.head} />}
      {wide && <Chevron mark={mark} size={Math.min(text * 0.57, width * 0.3)} />}
    </g>
  );
}

/** A plain bar as tall as what goes through; a mark where nothing does. */
function BarShape({ bar, text }: { bar: Bar; text: number }) {
  const half = text / 7;
  return (
    <rect
      class={bar.height === 0 ? "nodebar still" : "nodebar"}
      x={bar.x - half}
      y={bar.y - half}
      width={2 * half}
      height={bar.height + 2 * half}
    />
  );
}

/** All that a sheet draws but its texts. */
export function Shapes({ picture }: { picture: Picture<string> }) {
  const { text } = picture.places;
  return (
    <>
      {picture.ways.length > 0 && <path class="ways" d={picture.ways.join("")} />}
      {picture.turns.map((turn) => (
        <TurnShape key={turn.id} turn={turn} text={text} />
      ))}
      {picture.ribbons.map((ribbon) => (
        <RibbonShape key={ribbon.id} ribbon={ribbon} text={text} />
      ))}
      {picture.bars.map((bar) => (
        <BarShape key={bar.id} bar={bar} text={text} />
      ))}
    </>
  );
}
