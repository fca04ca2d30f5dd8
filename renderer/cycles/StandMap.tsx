import { mpsToKmh, mpsToMph } from "../../shared/units.ts";
import { tickDecimals } from "../plots/time/ticks.ts";
import { num, roadSpeed, roadUnitName } from "../state/format.ts";
import { units } from "../state/settings.ts";
import { t } from "../texts/catalogue.ts";
import { fontsReady, measure } from "../ui/measure.ts";
import { metrics } from "../ui/metrics.ts";
import { useSize } from "../ui/use-size.ts";
import { rowShown, standards } from "./figures-state.ts";
import { standLayout } from "./stand-layout.ts";
import { cycleShown } from "./state.ts";

const words = t.cycles;

function Drawn({ width, height }: { width: number; height: number }) {
  fontsReady.value;
  const { text, compact } = metrics.value;
  const own = rowShown.value;
  const layout = standLayout({
    rows: standards.value,
    own,
    width,
    height,
    text,
    times: units.value.road === "kmh" ? mpsToKmh(1) : mpsToMph(1),
    limitName: compact ? words.mapLimitShort : words.mapLimit,
    measure,
  });
  const { left, right, top, foot } = layout;
  const yDecimals = tickDecimals(
    layout.yTicks.map(({ value }) => value),
    1,
  );
  const said = own
    ? words.mapDescribe(
        cycleShown.value?.title ?? own.title,
        roadSpeed(units.value, own.statistics.meanSpeed),
        `${num(own.dynamics.relativePositiveAcceleration, 3)} m/s²`,
      )
    : words.counting;
  return (
    <svg width={width} height={height} role="img" aria-label={said} class="cy-stand">
      {layout.yTicks.map(({ y, value }) => (
        <g key={value}>
          <line x1={left} y1={y} x2={right} y2={y} class={value === 0 ? "axis" : "grid"} />
          <text x={left - 6} y={y + text * 0.35} text-anchor="end" font-size={text}>
            {num(value, yDecimals)}
          </text>
        </g>
      ))}
      {layout.xTicks.map(({ x, value }) => (
        <text key={value} x={x} y={foot + text * 1.15} text-anchor="middle" font-size={text}>
          {num(value)}
        </text>
      ))}
      <line x1={left} y1={top} x2={left} y2={foot} class="axis" />
      <text x={right} y={foot + text * 2.4} text-anchor="end" font-size={text}>
        {words.mapX(roadUnitName(units.value))}
      </text>
      <text x={left - text * 2.6} y={text} font-size={text}>
        {words.mapY}
      </text>
      <polyline points={layout.limit.map(([x, y]) => `${x},${y}`).join(" ")} class="limit-line" />
      {layout.points.map(({ id, x, y, own: mine }) =>
        mine ? (
          <g key={id} class="own">
            <circle cx={x} cy={y} r={text * 0.5} />
            <circle cx={x} cy={y} r={2.5} class="dot" />
          </g>
        ) : (
          <rect key={id} x={x - 3} y={y - 3} width={6} height={6} class="other" />
        ),
      )}
      {layout.labels.map(({ id, text: name, size, x, y, anchor }) => (
        <text key={id} x={x} y={y} text-anchor={anchor} font-size={size} class="label">
          {name}
        </text>
      ))}
    </svg>
  );
}

/** Where the cycle looked at stands among the standard ones. */
export function StandMap() {
  const { ref, width, height } = useSize<HTMLDivElement>();
  return (
    <div class="cy-stand-place" ref={ref}>
      {width > 80 && height > 80 && <Drawn width={width} height={height} />}
    </div>
  );
}
