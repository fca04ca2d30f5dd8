import type { ComponentChildren } from "preact";
import { SHAFTS, type Shaft } from "../../sim/bench/shafts.ts";
import type { Role, Stop } from "../state/bench.ts";
import type { PlacedLabel } from "../ui/labels.ts";
import { HandleShape } from "./HandleShape.tsx";
import type { LeverInput, LeverLayout } from "./layout.ts";
import { Arrows, Axes, Blocks, Dimension, Grid, Hero } from "./Parts.tsx";

interface LeverDrawingProps {
  readonly input: LeverInput;
  readonly layout: LeverLayout;
  readonly roles: Readonly<Record<Shaft, Role>>;
  readonly stop: Stop | null;
  /** speeds that are asked for: their handles, and the line, are not drawn */
  readonly asked?: readonly Shaft[];
  /** what can be grabbed: drawn over the line, under the labels */
  readonly children?: ComponentChildren;
}

const colourOf = (id: string): string => {
  const [kind, shaft] = id.split(":");
  return kind === "name" || kind === "speed" || kind === "torque" ? `ink ${shaft}` : "";
};

function Label({ label }: { label: PlacedLabel }) {
  const [kind] = label.id.split(":");
  const [before, after] = label.id === "dim:k" ? label.text.split(" k ") : [];
  return (
    <text
      x={label.x}
      y={label.y}
      text-anchor={label.anchor}
      class={`label ${kind} ${colourOf(label.id)} ${label.id === "tick:0" ? "origin" : ""}`}
      font-size={label.size}
      data-label={label.id}
    >
      {after === undefined ? (
        label.text
      ) : (
        <>
          {before} <tspan class="math">k</tspan> {after}
        </>
      )}
    </text>
  );
}

/** The lever line as a drawing, the same on every place: axes at k : 1, one scale, one line. */
export function LeverDrawing({ input, layout, roles, stop, asked = [], children }: LeverDrawingProps) {
  const { frame, radius } = layout;
  const y = (shaft: Shaft): number =>
    frame.y(Math.min(input.scale.high, Math.max(input.scale.low, input.speeds[shaft])));
  return (
    <>
      <Grid input={input} layout={layout} />
      <Axes layout={layout} />
      <Blocks layout={layout} stop={stop} />
      <Dimension input={input} layout={layout} />
      <Arrows layout={layout} />
      {asked.length === 0 && <Hero layout={layout} />}
      {SHAFTS.filter((shaft) => !asked.includes(shaft)).map((shaft) => (
        <HandleShape
          key={shaft}
          shaft={shaft}
          role={roles[shaft]}
          x={frame.x[shaft]}
          y={y(shaft)}
          r={radius}
        />
      ))}
      <g class="labels">
        {layout.labels.map((label) => (
          <Label key={label.id} label={label} />
        ))}
      </g>
      {children}
    </>
  );
}
