import { kilowatts } from "../../state/format.ts";
import { instant } from "../../state/instant.ts";
import { hidden } from "../../state/predict.ts";
import { ROW, type Run } from "../../state/run.ts";
import { measure } from "../../ui/measure.ts";
import { hidesPoint, MAP_COLOUR, pointReader, powerAt } from "./kinds.ts";
import type { MapLayout } from "./layout.ts";
import { held, powerLabel, powerLine, trailPath } from "./live.ts";

interface LiveProps {
  readonly run: Run;
  readonly layout: MapLayout;
  readonly width: number;
  readonly height: number;
  readonly text: number;
}

/** Power below which no line of equal power is drawn, W. */
const LEAST_POWER = 250;

/** The asked point: a dashed disc with a question mark in the middle of the plot. */
const Asked = ({ layout: { frame }, text }: LiveProps) => {
  const { box } = frame;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  return (
    <g class="map-asked">
      <circle cx={x} cy={y} r={text} />
      <text class="label" x={x} y={y + text * 0.35} text-anchor="middle">
        ?
      </text>
    </g>
  );
};

/** What moves on a map: the point of the instant, where it was, and the line of equal power through it. */
export function LivePoint(props: LiveProps) {
  const { run, layout, width, height, text } = props;
  const at = instant.stage.value;
  if (!at || at.row >= run.log.rows) return null;
  const { map, frame } = layout;
  const colour = MAP_COLOUR[map];
  const shows = !hidesPoint(map, hidden.value);
  const read = pointReader(map, run);
  const point = read(at.row);
  const [x, y] = held(frame, point);
  const power = powerAt(map, at.flows);
  const line = shows && Math.abs(power) >= LEAST_POWER ? powerLine(frame, point, frame.range) : null;
  const said = `${kilowatts(power)} kW`;
  const disc = { x: x - text, y: y - text, width: 2 * text, height: 2 * text };
  const others = [disc, ...[...layout.labels, ...layout.key].map(({ box }) => box)];
  const place = line && powerLabel(frame, line, others, measure(said, text), text);
  return (
    <svg class={`map-live ${colour}`} width={width} height={height} aria-hidden="true">
      {shows ? (
        <>
          {line && <path class="iso" clip-path="url(#map-plot)" d={line.d} />}
          <path class="trail" d={trailPath(frame, read, at.row, 1 / ROW)} />
          {place && (
            <g class="labels">
              <text class={`label value ink ${colour}`} x={place.x} y={place.y}>
                {said}
              </text>
            </g>
          )}
          <circle class="disc" cx={x} cy={y} r={text * 0.52} />
          <circle class="dot" cx={x} cy={y} r={text * 0.18} />
        </>
      ) : (
        <Asked {...props} />
      )}
    </svg>
  );
}
