import type { Stop } from "../state/bench.ts";
import { dimensionY } from "./label-wishes.ts";
import type { LeverInput, LeverLayout, TorqueArrow } from "./layout.ts";

interface Props {
  readonly layout: LeverLayout;
}

/** Light ticks across all axes, and zero in ink. */
export function Grid({ input, layout }: Props & { input: LeverInput }) {
  const { frame, ticks } = layout;
  const line = (value: number, name: string) => (
    <line key={value} class={name} x1={frame.left} x2={frame.right} y1={frame.y(value)} y2={frame.y(value)} />
  );
  return (
    <g>
      {ticks.map((value) => line(value, "grid"))}
      {input.scale.low < 0 && line(0, "zero")}
    </g>
  );
}

/** The three axes; one that goes on below the scale ends in an arrow. */
export function Axes({ layout }: Props) {
  return (
    <g>
      {layout.axes.map(({ shaft, x, y1, y2, goesOn }) => (
        <g key={shaft} class={`axis stroke ${shaft}`}>
          <line x1={x} x2={x} y1={y1} y2={y2} />
          {goesOn && <path d={`M${x - 5} ${y2 - 8}l5 9 5 -9`} />}
        </g>
      ))}
    </g>
  );
}

/** Hatched limits; the one that stopped the line is filled. */
export function Blocks({ layout, stop }: Props & { stop: Stop | null }) {
  return (
    <g>
      {layout.blocks.map(({ shaft, kind, end, x, y, width, height, bar }) => {
        const hit = kind === "limit" && stop?.shaft === shaft && stop.end === end;
        const over = kind === "limit" ? 3 : 0;
        return (
          <g key={`${shaft}${kind}${end}`} class={`block ${kind} ${hit ? "hit" : ""}`}>
            <rect x={x} y={y} width={width} height={Math.max(0, height)} />
            <line x1={x - over} x2={x + width + over} y1={bar} y2={bar} />
          </g>
        );
      })}
    </g>
  );
}

const arrowPath = ({ x, from, to, half }: TorqueArrow): string => {
  const down = Math.sign(to - from);
  const head = Math.min(half * 2.5, Math.abs(to - from) * 0.6) * down;
  return `M${x - half} ${from}V${to - head}h${-half}L${x} ${to}l${half * 2} ${-head}h${-half}V${from}Z`;
};

/** Torques as forces on the line, length to scale. */
export const Arrows = ({ layout }: Props) => (
  <g>
    {layout.arrows.map((arrow) => (
      <path
        key={arrow.shaft}
        class={`torque edge ${arrow.shaft}`}
        d={arrowPath(arrow)}
        data-point={`torque:${arrow.shaft}`}
      />
    ))}
  </g>
);

/** The line. */
export const Hero = ({ layout: { hero } }: Props) => (
  <line class="hero" x1={hero.x1} y1={hero.y1} x2={hero.x2} y2={hero.y2} />
);

/** Dimension line at the foot: the distances are the teeth. */
export function Dimension({ input, layout }: Props & { input: LeverInput }) {
  const { x } = layout.frame;
  const y = dimensionY(input);
  const span = (a: number, b: number) => (
    <g key={a}>
      <line class="dim" x1={a} x2={b} y1={y} y2={y} />
      <path class="dimhead" d={`M${a} ${y}l10 -3.2v6.4ZM${b} ${y}l-10 -3.2v6.4Z`} />
    </g>
  );
  return (
    <g>
      {[x.sun, x.carrier, x.ring].map((at) => (
        <line key={at} class="dimext" x1={at} x2={at} y1={y - input.text * 1.25} y2={y + 5} />
      ))}
      {span(x.sun, x.carrier)}
      {span(x.carrier, x.ring)}
    </g>
  );
}
