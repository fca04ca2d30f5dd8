import { t } from "../../texts/catalogue.ts";
import type { MapLayout } from "./layout.ts";
import { FAMILY_COLOUR, markSvg } from "./marks.ts";

interface DrawingProps {
  readonly layout: MapLayout;
  readonly width: number;
  readonly height: number;
  readonly text: number;
}

function Axes({ layout: { frame }, width, text }: DrawingProps) {
  const { box, ticksX, ticksY } = frame;
  const [right, foot] = [box.x + box.width, box.y + box.height];
  return (
    <g>
      {ticksX.map(({ at, zero }) => (
        <line key={at} class={zero ? "zero" : "grid"} x1={at} x2={at} y1={box.y} y2={foot} />
      ))}
      {ticksY.map(({ at, zero }) => (
        <line key={at} class={zero ? "zero" : "grid"} x1={box.x} x2={right} y1={at} y2={at} />
      ))}
      {ticksX.map(({ at, text: said }) => (
        <text
          key={at}
          class="label tick"
          x={Math.min(at, width - text * 1.35)}
          y={foot + text * 1.3}
          text-anchor="middle"
        >
          {said}
        </text>
      ))}
      {ticksY.map(({ at, text: said }) => (
        <text key={at} class="label tick" x={box.x - text * 0.45} y={at + text * 0.33} text-anchor="end">
          {said}
        </text>
      ))}
    </g>
  );
}

/** What shape and colour mean in the cloud. */
const FamilyKey = ({ layout: { key }, text }: DrawingProps) => (
  <g class="labels">
    {key.map(({ family, box }) => (
      <g key={family}>
        <path
          d={markSvg(family, box.x + text * 0.45, box.y + text * 0.5, text * 0.28)}
          style={{ fill: `var(${FAMILY_COLOUR[family]})` }}
        />
        <text class="label" x={box.x + text * 1.1} y={box.y + text * 0.84}>
          {t.map.families[family]}
        </text>
      </g>
    ))}
  </g>
);

/** Everything of a map that does not move. */
export function MapDrawing(props: DrawingProps) {
  const { layout, width, height } = props;
  const { frame, contours, limits, lines, labels, inside, passed } = layout;
  const { box } = frame;
  return (
    <svg class="map-fixed" width={width} height={height} aria-hidden="true">
      <defs>
        <clipPath id="map-plot">
          <rect x={box.x} y={box.y} width={box.width} height={box.height} />
        </clipPath>
        {inside && (
          <clipPath id="map-inside">
            <path d={inside} />
          </clipPath>
        )}
      </defs>
      {passed && <path class="map-passed" d={passed} />}
      <Axes {...props} />
      <g clip-path="url(#map-plot)">
        <g clip-path={inside ? "url(#map-inside)" : undefined}>
          {contours.map(({ level, best, d }) => (
            <path key={level} class={best ? "contour best" : "contour"} d={d} />
          ))}
        </g>
        {limits.map(({ band }) => band && <path key={band} class="map-band" d={band} />)}
        {lines.map(({ id, d }) => (
          <path key={id} class={`map-line ${id}`} d={d} />
        ))}
        {limits.map(({ d }) => (
          <path key={d} class="map-limit" d={d} />
        ))}
      </g>
      <g class="labels">
        {labels.map((label) => (
          <text
            key={label.id}
            class={`label ${label.id.startsWith("level") ? "value" : ""}`}
            x={label.x}
            y={label.y}
            text-anchor={label.anchor}
          >
            {label.text}
          </text>
        ))}
      </g>
      <FamilyKey {...props} />
    </svg>
  );
}
