import "uplot/dist/uPlot.min.css";
import { useLayoutEffect } from "preact/hooks";
import { metrics } from "../ui/metrics.ts";
import { useSize } from "../ui/use-size.ts";
import { Cursor } from "./time/Cursor.tsx";
import { wantedPlots } from "./time/chosen-plots.ts";
import { useGuessTime } from "./time/Guesses.tsx";
import { Lanes } from "./time/Lanes.tsx";
import { timeLayout } from "./time/layout.ts";
import { PlotRow } from "./time/PlotRow.tsx";
import { TimeAxis } from "./time/TimeAxis.tsx";
import { PlotMenu, StretchTools, ZoomTools } from "./time/Tools.tsx";
import { plotWidth } from "./time/view.ts";

/** View D: regimes in four lanes and stacked plots over one time axis, with one cursor through all of them. */
export function TimePlots() {
  const { ref, width, height } = useSize<HTMLElement>();
  useGuessTime();
  const { text } = metrics.value;
  const plots = wantedPlots();
  const layout = timeLayout(width, height, text, plots.length);
  useLayoutEffect(() => {
    plotWidth.value = layout.width;
  }, [layout.width]);
  return (
    <section class="view time-plots" ref={ref} aria-labelledby="view-d">
      {width > 0 && (
        <>
          <Lanes layout={layout} />
          {layout.rows.map(({ top, height: high }, i) => {
            const plot = plots[i];
            return plot && <PlotRow key={plot.id} plot={plot} top={top} height={high} layout={layout} />;
          })}
          <TimeAxis layout={layout} />
          <Cursor layout={layout} />
          <ZoomTools layout={layout} />
          <StretchTools layout={layout} />
          <PlotMenu layout={layout} />
        </>
      )}
    </section>
  );
}
