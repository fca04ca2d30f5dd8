import { useEffect, useRef } from "preact/hooks";
import { num } from "../state/format.ts";
import { hidden } from "../state/predict.ts";
import { moveTo, now, run } from "../state/road.ts";
import { ROW, rowAt } from "../state/run.ts";
import { projector, theme } from "../state/settings.ts";
import { t } from "../texts/catalogue.ts";
import { metrics } from "../ui/metrics.ts";
import { blockFill, drawLanes, LANES, regimeRuns } from "./lane-draw.ts";
import { AXIS, plotWidth, windowNow, xOf } from "./time-frame.ts";

/** px of one lane, for a text size. */
export const laneHeight = (text: number): number => Math.round(text * 1.22);

function sized(canvas: HTMLCanvasElement, width: number, height: number): CanvasRenderingContext2D | null {
  const ratio = window.devicePixelRatio;
  canvas.width = Math.round(width * ratio);
  canvas.height = Math.round(height * ratio);
  const pen = canvas.getContext("2d");
  pen?.setTransform(ratio, 0, 0, ratio, 0, 0);
  return pen;
}

function LaneCanvas() {
  const ref = useRef<HTMLCanvasElement>(null);
  const one = run.value;
  const { from, to } = windowNow.value;
  const width = plotWidth.value;
  const lane = laneHeight(metrics.value.text);
  const asked = hidden.value.has("regime");
  const look = `${theme.value} ${projector.value}`;
  const grown = one?.log.rows ?? 0;
  useEffect(() => {
    const canvas = ref.current;
    if (!canvas || !one || width < 10) return;
    const pen = sized(canvas, width, 4 * lane);
    if (!pen || asked) return;
    const runs = regimeRuns(one.regime, rowAt(one.log, from), rowAt(one.log, to), width);
    drawLanes(pen, runs, (row) => xOf(row * ROW), lane);
  }, [one?.id, grown, from, to, width, lane, asked, look]);
  return (
    <canvas
      ref={ref}
      class="lanes"
      style={{ width: `${width}px`, height: `${4 * lane}px` }}
      aria-hidden="true"
    />
  );
}

/** Small triangles under the lanes: the moments. */
function Marks() {
  const { from, to } = windowNow.value;
  const list = run.value?.summary?.moments ?? [];
  return (
    <svg class="moment-marks" width={plotWidth.value} height="9" aria-hidden="true">
      {list
        .filter(({ time }) => time >= from && time <= to)
        .map(({ id, time }) => (
          <path key={id} d={`M${xOf(time)} 0l4.5 8h-9z`} onClick={() => moveTo(time)} />
        ))}
    </svg>
  );
}

/** A swatch of a regime's pattern. */
function Swatch({ regime }: { regime: string }) {
  const ref = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const canvas = ref.current;
    const pen = canvas && sized(canvas, 26, 14);
    if (!pen) return;
    pen.fillStyle = blockFill(regime, pen);
    pen.fillRect(0, 0, 26, 14);
  }, [regime, theme.value, projector.value]);
  return <canvas ref={ref} class="swatch" aria-hidden="true" />;
}

/** The regime at the cursor in words, with its swatch and its age. */
function Readout() {
  const instant = now.value;
  if (!instant) return <div class="regime-now" />;
  const asked = hidden.value.has("regime");
  return (
    <div class="regime-now">
      <b>
        {!asked && <Swatch regime={instant.regime} />} {asked ? "?" : t.roadRegimes[instant.regime]?.title}
      </b>
      <span>{asked ? "" : t.plots.since(num(instant.time - instant.since, 1))}</span>
    </div>
  );
}

/** Regimes over time in four lanes: position says the family, pattern the regime. */
export const Lanes = () => (
  <div class="plot-row lane-row">
    <h2 class="view-head plot-name" id="view-d">
      <span class="tag">D</span> {t.plots.regime}
    </h2>
    <div class="lane-box" style={{ paddingLeft: `${AXIS}px` }}>
      <div class="lane-names" aria-hidden="true">
        {LANES.map((lane) => (
          <span key={lane} style={{ height: `${laneHeight(metrics.value.text)}px` }}>
            {t.plots.lanes[lane]}
          </span>
        ))}
      </div>
      <LaneCanvas />
      <Marks />
    </div>
    <Readout />
  </div>
);
