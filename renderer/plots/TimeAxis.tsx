import { chosen, cursor, run, shown } from "../state/road.ts";
import { t } from "../texts/catalogue.ts";
import { metrics } from "../ui/metrics.ts";
import { clockTime } from "../ui/time.ts";
import { chosenPlots } from "./choice.ts";
import { PLOTS } from "./registry.ts";
import { timeTicks } from "./ticks.ts";
import { AXIS, plotWidth, setStretch, windowNow, xOf, zoom } from "./time-frame.ts";

function Labels() {
  const { from, to } = windowNow.value;
  const { text } = metrics.value;
  const decimals = to - from < 8 ? 1 : 0;
  return (
    <svg class="time-axis" width={plotWidth.value + AXIS} height={text * 1.5} aria-hidden="true">
      {timeTicks(from, to, plotWidth.value, text * 5.5).map((time) => (
        <g key={time}>
          <line class="tickmark" x1={AXIS + xOf(time)} x2={AXIS + xOf(time)} y1="0" y2="4" />
          <text class="label" x={AXIS + xOf(time)} y={text * 1.25} text-anchor="middle">
            {clockTime(time, decimals)}
          </text>
        </g>
      ))}
    </svg>
  );
}

/** Which plots are shown. */
const Choose = () => (
  <details class="more plots-more">
    <summary class="btn quiet">{t.plots.choose}</summary>
    <div class="more-body">
      {PLOTS.map(({ id }, i) => {
        const on = chosenPlots.value ? chosenPlots.value.has(id) : i < 5;
        return (
          <label key={id} class="check">
            <input
              type="checkbox"
              checked={on}
              onChange={() => {
                const next = new Set(chosenPlots.value ?? PLOTS.slice(0, 5).map((plot) => plot.id));
                if (on) next.delete(id);
                else next.add(id);
                chosenPlots.value = next;
              }}
            />
            {t.plots.names[id]}
          </label>
        );
      })}
    </div>
  </details>
);

const Tool = ({ name, sign, act, off }: { name: string; sign: string; act: () => void; off: boolean }) => (
  <button type="button" class="iconbtn" aria-label={name} title={name} disabled={off} onClick={act}>
    {sign}
  </button>
);

/** Times at the foot, the choice of plots, and what changes the window. */
export const TimeAxis = () => (
  <div class="plot-row foot-row">
    <Choose />
    <Labels />
    <div class="plot-tools">
      <Tool name={t.plots.start} sign="⟦" act={() => setStretch("from", cursor.value)} off={!run.value} />
      <Tool name={t.plots.end} sign="⟧" act={() => setStretch("to", cursor.value)} off={!run.value} />
      <Tool name={t.plots.closer} sign="+" act={() => zoom(2, cursor.value)} off={!run.value} />
      <Tool name={t.plots.wider} sign="−" act={() => zoom(0.5, cursor.value)} off={!shown.value} />
      <Tool
        name={t.plots.whole}
        sign="↔"
        act={() => {
          shown.value = null;
          chosen.value = null;
        }}
        off={!shown.value && !chosen.value}
      />
    </div>
  </div>
);
