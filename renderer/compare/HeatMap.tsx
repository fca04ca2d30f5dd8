import { useLayoutEffect, useRef } from "preact/hooks";
import { measure } from "../ui/measure.ts";
import { metrics } from "../ui/metrics.ts";
import { useSize } from "../ui/use-size.ts";
import { HeatPatterns } from "./HeatPatterns.tsx";
import { spaced } from "./sweep/line-plot.ts";

/** What is drawn in a cell. */
export interface HeatCell {
  /** printed where it has room */
  readonly text: string;
  /** 0–1: how strongly it is filled; null: no value */
  readonly share: number | null;
  /** number of its pattern; null: none */
  readonly pattern: number | null;
  /** all of it in words */
  readonly words: string;
}

/** Place of a cell. */
export interface HeatPlace {
  readonly column: number;
  readonly row: number;
}

interface HeatProps {
  readonly name: string;
  readonly columns: readonly string[];
  /** from the foot up */
  readonly rows: readonly string[];
  readonly xTitle: string;
  readonly yTitle: string;
  readonly hue: "battery" | "fuel" | "carrier" | "ring";
  readonly cell: (place: HeatPlace) => HeatCell;
  readonly at: HeatPlace;
  readonly onMove: (to: HeatPlace) => void;
}

/** Share of the hue in the faintest and the strongest fill: text keeps its contrast on it. */
const FAINTEST = 0.06;
const STRONGEST = 0.46;

const STEPS: Readonly<Record<string, readonly [column: number, row: number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

interface CellProps {
  readonly cell: HeatCell;
  readonly box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
  readonly on: boolean;
  readonly hue: HeatProps["hue"];
  readonly onPick: () => void;
}

function Drawn({ cell, box, on, hue, onPick }: CellProps) {
  const { text } = metrics.value;
  const { x, y, width, height } = box;
  const fits = measure(cell.text, text) < width - 4 && height > text * 1.15;
  const opacity = cell.share === null ? 0 : FAINTEST + cell.share * (STRONGEST - FAINTEST);
  return (
    <g
      role="gridcell"
      tabindex={on ? 0 : -1}
      aria-selected={on}
      aria-label={cell.words}
      class={`heat-cell ${on ? "on" : ""} ${cell.share === null ? "blank" : ""}`}
      onClick={onPick}
      onPointerEnter={(event) => {
        if (event.pointerType === "mouse") onPick();
      }}
    >
      <rect class="heat-ground" x={x} y={y} width={width} height={height} />
      <rect x={x} y={y} width={width} height={height} style={{ fill: `var(--${hue})`, opacity }} />
      {cell.pattern !== null && (
        <rect
          class="heat-pattern"
          x={x}
          y={y}
          width={width}
          height={height}
          fill={`url(#heat-${cell.pattern})`}
        />
      )}
      {fits && (
        <text class="label value" x={x + width / 2} y={y + height / 2 + text * 0.34} text-anchor="middle">
          {cell.text}
        </text>
      )}
      {on && <rect class="heat-frame" x={x + 1} y={y + 1} width={width - 2} height={height - 2} />}
    </g>
  );
}

/** A map of cells over two axes: value as fill and as print, a pattern where there is one, each read by keyboard. */
export function HeatMap({ name, columns, rows, xTitle, yTitle, hue, cell, at, onMove }: HeatProps) {
  const { ref, width, height } = useSize<HTMLDivElement>();
  const grid = useRef<SVGSVGElement>(null);
  const { text } = metrics.value;
  const left = Math.max(...rows.map((label) => measure(label, text)), 0) + text * 0.8;
  const [top, foot] = [text * 1.7, height - text * 2.9];
  const [wide, high] = [(width - left - 2) / columns.length, (foot - top) / rows.length];
  const x = columns.map((_, i) => left + (i + 0.5) * wide);
  const y = rows.map((_, i) => foot - (i + 0.5) * high);
  // Keys may come faster than pictures: the place is kept beside what is drawn.
  const place = useRef(at);
  place.current = at;
  const keyed = useRef(false);
  useLayoutEffect(() => {
    if (keyed.current) grid.current?.querySelector<SVGElement>('[tabindex="0"]')?.focus();
    keyed.current = false;
  }, [at.column, at.row]);
  const onKeyDown = (event: KeyboardEvent): void => {
    const step = STEPS[event.key];
    if (!step) return;
    event.preventDefault();
    event.stopPropagation();
    const from = place.current;
    place.current = {
      column: Math.min(columns.length - 1, Math.max(0, from.column + step[0])),
      row: Math.min(rows.length - 1, Math.max(0, from.row + step[1])),
    };
    keyed.current = true;
    onMove(place.current);
  };
  const shownX = spaced(
    x,
    columns.map((label) => measure(label, text)),
    text * 0.6,
  );
  const shownY = spaced(
    y,
    rows.map(() => text),
    text * 0.2,
  );
  return (
    <div class="heat" ref={ref} role="grid" aria-label={name} onKeyDown={onKeyDown}>
      {width > 0 && height > 60 && (
        <svg ref={grid} width={width} height={height} role="presentation">
          <HeatPatterns />
          {rows.map((label, row) => (
            <g key={label} role="row">
              {columns.map((column, i) => (
                <Drawn
                  key={column}
                  cell={cell({ column: i, row })}
                  box={{ x: left + i * wide, y: foot - (row + 1) * high, width: wide - 1, height: high - 1 }}
                  on={at.column === i && at.row === row}
                  hue={hue}
                  onPick={() => onMove({ column: i, row })}
                />
              ))}
            </g>
          ))}
          <g aria-hidden="true">
            {shownX.map((i) => (
              <text key={columns[i]} class="label tick" x={x[i]} y={foot + text * 1.2} text-anchor="middle">
                {columns[i]}
              </text>
            ))}
            {shownY.map((i) => (
              <text
                key={rows[i]}
                class="label tick"
                x={left - text * 0.45}
                y={(y[i] ?? 0) + text * 0.34}
                text-anchor="end"
              >
                {rows[i]}
              </text>
            ))}
            <text class="label" x={width - 2} y={height - text * 0.4} text-anchor="end">
              {xTitle}
            </text>
            <text class="label" x={0} y={text}>
              {yTitle}
            </text>
          </g>
        </svg>
      )}
    </div>
  );
}
