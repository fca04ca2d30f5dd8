import { useLayoutEffect } from "preact/hooks";
import "uplot/dist/uPlot.min.css";
import { metrics } from "../ui/metrics.ts";
import { useSize } from "../ui/use-size.ts";
import { CursorLine } from "./CursorLine.tsx";
import { chosenPlots, plotsFor } from "./choice.ts";
import { Lanes, laneHeight } from "./Lanes.tsx";
import { PlotRow } from "./PlotRow.tsx";
import { TimeAxis } from "./TimeAxis.tsx";
import { AXIS, plotWidth } from "./time-frame.ts";

/** Widths of names and readouts, in lines of text. */
const NAME = 8.4;
const VALUES = 10.4;

/** View D: regimes and plots over time on one cursor. */
export function TimePlots() {
  const { ref, width, height } = useSize<HTMLElement>();
  const { text } = metrics.value;
  const inner = Math.max(0, width - text * (NAME + VALUES) - AXIS - 14);
  useLayoutEffect(() => {
    plotWidth.value = inner;
  }, [inner]);
  const lanes = 4 * laneHeight(text) + 14;
  const foot = text * 2.1;
  const room = height - lanes - foot - 6;
  const plots = plotsFor(room, text, chosenPlots.value);
  const each = Math.floor(room / Math.max(1, plots.length));
  return (
    <section class="view time-plots" ref={ref} aria-labelledby="view-d">
      {width > 0 && (
        <>
          <Lanes />
          {plots.map((plot) => (
            <PlotRow key={plot.id} plot={plot} width={inner} height={each} />
          ))}
          <TimeAxis />
          <div
            class="cursor-place"
            style={{
              left: `${text * NAME + AXIS}px`,
              width: `${inner}px`,
              height: `${lanes + each * plots.length}px`,
            }}
          >
            <CursorLine />
          </div>
        </>
      )}
    </section>
  );
}
