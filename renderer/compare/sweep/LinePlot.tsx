import type { SweepPlan } from "../../../sim/study/sweep/plan.ts";
import { tickDecimals } from "../../plots/time/ticks.ts";
import { num } from "../../state/format.ts";
import { t } from "../../texts/catalogue.ts";
import { measure } from "../../ui/measure.ts";
import { metrics } from "../../ui/metrics.ts";
import { useSize } from "../../ui/use-size.ts";
import { dashAt, shapeAt } from "../marks.tsx";
import { sweepableAt } from "./actions.ts";
import { cellOf, indexOf } from "./cells.ts";
import { plotLayout, spaced } from "./line-plot.ts";
import type { Quantity } from "./quantities.ts";
import { shownPlace, sweepRows } from "./state.ts";
import { axisName, axisTexts, cellWords, placeWords, strategyTitle } from "./words.ts";

const c = t.compare.sweep;

/** Places along the axis: numbers where they are numbers, else one after the other. */
function along(plan: SweepPlan): readonly number[] {
  const [axis] = plan.axes;
  if (!axis) return [];
  return sweepableAt(axis.path)?.range ? axis.values.map(Number) : axis.values.map((_, i) => i);
}

interface PlotProps {
  readonly plan: SweepPlan;
  readonly quantity: Quantity;
  readonly hue: string;
}

/** One line for each strategy over one parameter; a cursor goes from value to value. */
export function LinePlot({ plan, quantity, hue }: PlotProps) {
  const { ref, width, height } = useSize<HTMLDivElement>();
  const { text } = metrics.value;
  const texts = axisTexts(plan, 0);
  const cells = plan.strategies.map((_, s) =>
    texts.map((_, i) => cellOf(sweepRows.value.get(indexOf(plan, [i], s)), quantity)),
  );
  const layout = plotLayout({
    width,
    height,
    text,
    left: text * 4,
    along: along(plan),
    lines: cells.map((list) => ({
      values: list.map((cell) => (cell.kind === "value" ? cell.value : null)),
    })),
  });
  const at = Math.min(texts.length - 1, shownPlace.value[0] ?? 0);
  const move = (to: number): void => {
    shownPlace.value = [Math.min(texts.length - 1, Math.max(0, to))];
  };
  const nearest = (x: number): number =>
    layout.x.reduce(
      (best, place, i) => (Math.abs(place - x) < Math.abs((layout.x[best] ?? 0) - x) ? i : best),
      0,
    );
  const decimals = tickDecimals(
    layout.ticks.map(({ value }) => value),
    1,
  );
  const words = plan.strategies.map(
    (strategy, s) =>
      `${strategyTitle(strategy)}: ${cellWords(cells[s]?.[at] ?? { kind: "waiting" }, quantity)}`,
  );
  const labels = spaced(
    layout.x,
    texts.map((label) => measure(label, text)),
    text * 0.6,
  );
  return (
    <div class="heat" ref={ref}>
      {width > 0 && height > 60 && (
        <>
          <svg
            width={width}
            height={height}
            class={`sweep-lines ${hue}`}
            role="img"
            aria-label={c.describeLine(c.quantities[quantity.id], axisName(plan, 0))}
          >
            {layout.ticks.map(({ value, y }) => (
              <g key={value}>
                <line class="grid" x1={layout.left} x2={layout.right} y1={y} y2={y} />
                <text class="label tick" x={layout.left - text * 0.5} y={y + text * 0.33} text-anchor="end">
                  {num(value, decimals)}
                </text>
              </g>
            ))}
            {labels.map((i) => (
              <text
                key={texts[i]}
                class="label tick"
                x={layout.x[i]}
                y={layout.bottom + text * 1.4}
                text-anchor="middle"
              >
                {texts[i]}
              </text>
            ))}
            <text class="label" x={layout.right} y={height - text * 0.3} text-anchor="end">
              {axisName(plan, 0)}
            </text>
            <line
              class="sweep-cursor"
              x1={layout.x[at]}
              x2={layout.x[at]}
              y1={layout.top}
              y2={layout.bottom}
            />
            {layout.lines.map(({ d, points }, s) => (
              <g key={strategyTitle(plan.strategies[s] ?? { kind: "built-in", id: "rules" })}>
                <path class="sweep-line" d={d} stroke-dasharray={dashAt(s)} />
                {points.map(
                  (point) =>
                    point && (
                      <path
                        key={point.x}
                        class="sweep-mark"
                        d={shapeAt(s)}
                        transform={`translate(${point.x} ${point.y})`}
                      />
                    ),
                )}
              </g>
            ))}
          </svg>
          <div
            class="sweep-slider"
            role="slider"
            tabIndex={0}
            aria-label={c.point}
            aria-valuemin={0}
            aria-valuemax={texts.length - 1}
            aria-valuenow={at}
            aria-valuetext={`${placeWords(plan, [at])}. ${words.join(". ")}`}
            style={{ left: `${layout.left - 6}px`, width: `${layout.right - layout.left + 12}px` }}
            onPointerMove={(event) => {
              if (event.pointerType === "mouse") move(nearest(event.offsetX + layout.left - 6));
            }}
            onPointerDown={(event) => move(nearest(event.offsetX + layout.left - 6))}
            onKeyDown={(event) => {
              if (event.key === "ArrowLeft") move(at - 1);
              else if (event.key === "ArrowRight") move(at + 1);
              else if (event.key === "Home") move(0);
              else if (event.key === "End") move(texts.length - 1);
              else return;
              event.preventDefault();
              event.stopPropagation();
            }}
          />
        </>
      )}
    </div>
  );
}
