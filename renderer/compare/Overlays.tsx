import { interpolate, stretchAt } from "../../cycles/sample.ts";
import { at } from "../../shared/at.ts";
import { mpsToKmh, mpsToMph } from "../../shared/units.ts";
import { fuelOver } from "../../sim/study/compare/differ.ts";
import type { ComparisonResult } from "../../sim/study/compare/run-job.ts";
import { timeTicks, valueTicks } from "../plots/time/ticks.ts";
import { num, roadUnitName } from "../state/format.ts";
import { units } from "../state/settings.ts";
import { t } from "../texts/catalogue.ts";
import { metrics } from "../ui/metrics.ts";
import { clockTime } from "../ui/time.ts";
import { useSize } from "../ui/use-size.ts";
import { dashAt, MarkKey, shapeAt } from "./marks.tsx";
import { planned } from "./planned.ts";
import { against, boundOf, compareCursor, laid, lowerHeatOf, pickedResult } from "./state.ts";

/** One curve of an overlay. */
interface Line {
  readonly key: string;
  readonly time: Float64Array;
  readonly values: Float64Array;
  readonly colour: "ring" | "battery" | "fuel";
  /** place in the table; −1: the bound */
  readonly place: number;
  readonly picked: boolean;
  readonly name: string;
}

interface Panel {
  readonly id: string;
  readonly title: string;
  readonly unit: string;
  readonly decimals: number;
  readonly lines: readonly Line[];
}

const scaled = (values: Float64Array, factor: number): Float64Array => values.map((value) => value * factor);

/** J of fuel in grams. */
const gramsPerJoule = (result: ComparisonResult): number => 1000 / lowerHeatOf(result);

function lineOf(result: ComparisonResult, place: number, values: Float64Array, colour: Line["colour"]): Line {
  return {
    key: String(result.row.index),
    time: result.series.time.subarray(0, values.length),
    values,
    colour,
    place,
    picked: result === pickedResult.value,
    name: result.row.strategy.title,
  };
}

/** Before anything is driven: the speed that will be asked for. */
function askedSpeed(factor: number): readonly Panel[] {
  const cycle = planned.value[0]?.cycle;
  if (!cycle) return [];
  const line: Line = {
    key: cycle.id,
    time: cycle.time,
    values: scaled(cycle.speed, factor),
    colour: "ring",
    place: -1,
    picked: true,
    name: cycle.title,
  };
  return [
    { id: "speed", title: t.compare.speed, unit: roadUnitName(units.value), decimals: 1, lines: [line] },
  ];
}

/** Speed of the picked line; everybody's charge; everybody's fuel over the reference. */
function panelsOf(): readonly Panel[] {
  const one = pickedResult.value;
  const over = against.value;
  const road = units.value.road === "kmh" ? mpsToKmh(1) : mpsToMph(1);
  if (!one || !over) return askedSpeed(road);
  const bound = boundOf(one);
  const charge = laid.value.map((result, i) => lineOf(result, i, scaled(result.series.soc, 100), "battery"));
  const boundLine: Line[] = bound?.feasible
    ? [
        {
          key: "bound",
          time: bound.time,
          values: scaled(bound.soc, 100),
          colour: "battery",
          place: -1,
          picked: false,
          name: t.compare.bound,
        },
      ]
    : [];
  const fuel = laid.value
    .filter((result) => result !== over.result)
    .map((result) =>
      lineOf(
        result,
        laid.value.indexOf(result),
        scaled(fuelOver(result.series, over.series, over.slope), gramsPerJoule(result)),
        "fuel",
      ),
    );
  const speed = lineOf(one, laid.value.indexOf(one), scaled(one.series.speed, road), "ring");
  return [
    {
      id: "speed",
      title: t.compare.speed,
      unit: roadUnitName(units.value),
      decimals: 1,
      lines: [{ ...speed, place: -1 }],
    },
    { id: "charge", title: t.compare.charge, unit: "%", decimals: 1, lines: [...boundLine, ...charge] },
    {
      id: "fuel",
      title: t.compare.difference,
      unit: t.compare.grams,
      decimals: 1,
      lines: fuel,
    },
  ];
}

interface Frame {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly end: number;
}

/** Points of a curve, at most some one a pixel. */
function pathOf(line: Line, x: (time: number) => number, y: (value: number) => number): string {
  const step = Math.max(1, Math.floor(line.values.length / 900));
  const points: string[] = [];
  for (let i = 0; i < line.values.length; i += step) {
    points.push(`${x(at(line.time, i)).toFixed(1)} ${y(at(line.values, i)).toFixed(1)}`);
  }
  return `M${points.join("L")}`;
}

const valueAt = ({ time, values }: Line, when: number): number =>
  interpolate(time, values, stretchAt(time, when), when);

function PanelRow({ panel, frame }: { panel: Panel; frame: Frame }) {
  const { width, height, left, end } = frame;
  const all = panel.lines.flatMap((line) => [Math.min(...line.values), Math.max(...line.values)]);
  const least = panel.id === "charge" ? Math.min(...all) : Math.min(0, ...all);
  const most = Math.max(...all, least + 1e-6);
  const { text } = metrics.value;
  const x = (time: number): number => left + (time / end) * (width - left);
  const y = (value: number): number => height - 6 - ((value - least) / (most - least)) * (height - 14);
  return (
    <div class="laid-row" style={{ height: `${height}px` }}>
      <div class="laid-name">
        <b>{panel.title}</b>
        <span>{panel.unit}</span>
      </div>
      <svg width={width} height={height} aria-hidden="true">
        {valueTicks({ least, most }, 1, (height - 14) / (text * 1.6)).map((value) => (
          <g key={value}>
            <line class={value === 0 ? "zero" : "grid"} x1={left} x2={width} y1={y(value)} y2={y(value)} />
            <text class="label tick" x={left - 6} y={y(value) + text * 0.33} text-anchor="end">
              {num(value)}
            </text>
          </g>
        ))}
        {panel.lines.map((line) => (
          <g key={line.key} class={`laid ${line.colour} ${line.picked ? "picked" : ""}`}>
            <path d={pathOf(line, x, y)} stroke-dasharray={line.place < 0 ? "" : dashAt(line.place)} />
            {line.place >= 0 &&
              [0.2, 0.45, 0.7, 0.95].map((share) => {
                const time = end * Math.min(0.99, share + line.place * 0.035);
                return (
                  <path
                    key={share}
                    class="mark"
                    d={shapeAt(line.place)}
                    transform={`translate(${x(time)} ${y(valueAt(line, time))})`}
                  />
                );
              })}
          </g>
        ))}
      </svg>
      <div class="laid-side">
        <table class="laid-values" aria-label={panel.title}>
          <tbody>
            {panel.lines.map((line) => (
              <tr key={line.key}>
                <th scope="row">
                  {line.place >= 0 && <MarkKey place={line.place} picked={line.picked} />}
                  {panel.id === "speed" ? "" : line.name}
                </th>
                <td class={`ink ${line.colour}`}>
                  {num(valueAt(line, compareCursor.value), panel.decimals)}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </div>
  );
}

/** Least lines of text that a row has room for. */
const LEAST_LINES = 3;

/** Heights of the rows, px: by how many values stand beside each. */
function heightsOf(panels: readonly Panel[], height: number): readonly number[] {
  const lines = panels.map((panel) => Math.max(LEAST_LINES, panel.lines.length));
  // A row that stands alone keeps the height that it has among the others.
  const all = Math.max(
    LEAST_LINES * 3,
    lines.reduce((sum, count) => sum + count, 0),
  );
  return lines.map((count) => Math.floor((height * count) / all));
}

/** View B: the lines of one cycle over each other on one cursor. */
export function Overlays() {
  const { ref, width, height } = useSize<HTMLDivElement>();
  const { text } = metrics.value;
  const panels = panelsOf();
  const end = Math.max(
    1,
    ...panels.flatMap((panel) => panel.lines.map((line) => at(line.time, line.time.length - 1))),
  );
  const inner = width - text * 28;
  const heights = heightsOf(panels, height - text * 2.4);
  const high = heights.reduce((sum, one) => sum + one, 0);
  const left = text * 3.4;
  const frame = { width: inner, left, end };
  const toX = (time: number): number => left + (time / end) * (inner - left);
  // The cursor's own time takes the place of the numbers under it.
  const times = timeTicks(0, end, inner - left, text * 5.5).filter(
    (time) => Math.abs(toX(time) - toX(compareCursor.value)) > text * 5,
  );
  const move = (to: number): void => {
    compareCursor.value = Math.min(end, Math.max(0, to));
  };
  return (
    <div class="overlays" ref={ref}>
      {width > 0 && panels.length > 0 && (
        <>
          {panels.map((panel, i) => (
            <PanelRow key={panel.id} panel={panel} frame={{ ...frame, height: heights[i] ?? 0 }} />
          ))}
          <svg class="compare-axis" width={inner} height={text * 1.6} aria-hidden="true">
            {times.map((time) => (
              <text key={time} class="label" x={toX(time)} y={text * 1.2} text-anchor="middle">
                {clockTime(time, 0)}
              </text>
            ))}
          </svg>
          <div
            class="compare-cursor"
            role="slider"
            tabIndex={0}
            aria-label={t.plots.cursor}
            aria-valuemin={0}
            aria-valuemax={Math.round(end)}
            aria-valuenow={Math.round(compareCursor.value)}
            aria-valuetext={clockTime(compareCursor.value)}
            style={{ left: `${text * 8.4 + left}px`, width: `${inner - left}px`, height: `${high}px` }}
            onPointerDown={(event) => {
              event.currentTarget.setPointerCapture(event.pointerId);
              move((event.offsetX / (inner - left)) * end);
            }}
            onPointerMove={(event) => {
              if (event.currentTarget.hasPointerCapture(event.pointerId))
                move((event.offsetX / (inner - left)) * end);
            }}
            onKeyDown={(event) => {
              const step = event.shiftKey ? 60 : 1;
              if (event.key === "ArrowLeft") move(compareCursor.value - step);
              else if (event.key === "ArrowRight") move(compareCursor.value + step);
              else if (event.key === "Home") move(0);
              else if (event.key === "End") move(end);
              else return;
              event.preventDefault();
            }}
          >
            <div
              class="cursor-line"
              style={{ transform: `translateX(${(compareCursor.value / end) * (inner - left)}px)` }}
            >
              <span class="cursor-time">{clockTime(compareCursor.value, 0)}</span>
            </div>
          </div>
        </>
      )}
    </div>
  );
}
