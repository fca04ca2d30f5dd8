import { useComputed, useSignalEffect } from "@preact/signals";
import { useLayoutEffect, useMemo, useRef } from "preact/hooks";
import type { LogReader } from "../../../sim/run/log.ts";
import { REGIMES } from "../../../sim/run/regimes.ts";
import { ViewHead } from "../../bench/ViewHead.tsx";
import { num } from "../../state/format.ts";
import { instant } from "../../state/instant.ts";
import { hidden } from "../../state/predict.ts";
import { run } from "../../state/road.ts";
import { ROW, type Run } from "../../state/run.ts";
import { projector, theme } from "../../state/settings.ts";
import { t } from "../../texts/catalogue.ts";
import { drawLanes, drawMoments } from "./draw-lanes.ts";
import { paletteOf, sized } from "./inks.ts";
import { LANES, laneMarks, type Spells, spellsOf } from "./lanes.ts";
import type { TimeLayout } from "./layout.ts";
import { Swatch } from "./Swatch.tsx";
import { windowNow } from "./view.ts";
import { ASKED, regimeNow } from "./words.ts";

const words = t.plots;

const known = new WeakMap<LogReader, { readonly rows: number; readonly spells: Spells }>();

/** Spells of a run, found once; of a drive under way whenever it has grown. */
function spellsIn({ log, regime }: Run): Spells {
  const kept = known.get(log);
  if (kept?.rows === log.rows) return kept.spells;
  const spells = spellsOf(regime, log.rows);
  known.set(log, { rows: log.rows, spells });
  return spells;
}

interface CanvasProps {
  readonly layout: TimeLayout;
}

/** Room above and under the lanes' canvas for half a triangle and a line, px. */
const MARKS = 9;

/** The lanes and the moments' marks, drawn for a run, a window and a look; never for the cursor. */
function LaneCanvas({ layout }: CanvasProps) {
  const ref = useRef<HTMLCanvasElement>(null);
  const one = run.value;
  const asked = hidden.value.has("regime");
  const look = `${theme.value} ${projector.value}`;
  const { lane, width } = layout;
  const height = LANES.length * lane + MARKS;
  const draw = (): void => {
    const canvas = ref.current;
    const { from, to } = windowNow.value;
    const pen = canvas && width > 0 ? sized(canvas, width, height) : null;
    if (!canvas || !pen) return;
    const palette = paletteOf(canvas);
    const marks = one && !asked ? laneMarks(spellsIn(one), from / ROW, to / ROW, width) : [];
    drawLanes(pen, palette, marks, width, lane);
    const moments = (one?.summary?.moments ?? []).filter(({ time }) => time >= from && time <= to);
    drawMoments(
      pen,
      palette,
      moments.map(({ time }) => ((time - from) / (to - from)) * width),
      LANES.length * lane,
    );
  };
  useLayoutEffect(draw, [one, one?.log.rows, asked, look, width, lane]);
  useSignalEffect(draw);
  const changes = useMemo(() => (one?.summary ? spellsIn(one).starts.length : 0), [one]);
  return (
    <>
      <canvas
        ref={ref}
        class="lane-canvas"
        role="img"
        aria-label={words.regimes}
        aria-description={words.regimesWords(num(changes))}
        style={{
          left: `${layout.left}px`,
          top: `${layout.lanes}px`,
          width: `${width}px`,
          height: `${height}px`,
        }}
      />
      {asked && (
        <div
          class="asked-box"
          style={{
            left: `${layout.left}px`,
            top: `${layout.lanes}px`,
            width: `${width}px`,
            height: `${LANES.length * lane - 2}px`,
          }}
        >
          <span>{ASKED}</span>
        </div>
      )}
    </>
  );
}

/** Names of the lanes; the one that the cursor is in is set bold. */
function LaneNames({ layout }: CanvasProps) {
  const family = useComputed(() => {
    const at = instant.figures.value;
    if (!at || hidden.value.has("regime")) return null;
    return REGIMES.find(({ id }) => id === at.regime)?.family ?? null;
  });
  return (
    <ul
      class="lane-names"
      aria-hidden="true"
      style={{
        top: `${layout.lanes}px`,
        width: `${layout.left - 8}px`,
        lineHeight: `${layout.lane}px`,
      }}
    >
      {LANES.map((lane) => (
        <li key={lane} class={family.value === lane ? "on" : ""}>
          {words.lanes[lane]}
        </li>
      ))}
    </ul>
  );
}

/** The regime at the cursor: its swatch, its name, and for how long it has been so. */
function RegimeReadout({ layout }: CanvasProps) {
  const regime = useComputed(() => (hidden.value.has("regime") ? "" : (instant.figures.value?.regime ?? "")));
  const title = useComputed(regimeNow);
  const since = useComputed(() => {
    const at = instant.figures.value;
    return !at || hidden.value.has("regime") ? "" : words.since(num(at.time - at.since, 1));
  });
  return (
    <dl
      class="regime-now"
      style={{ left: `${layout.right}px`, top: `${layout.lanes - 3}px`, width: `${layout.readouts}px` }}
    >
      <dt>
        {regime.value !== "" && <Swatch regime={regime.value} height={layout.lane - 5} />}
        <span class="unseen">{words.regime}</span>
      </dt>
      <dd>
        <b class={hidden.value.has("regime") ? "asked" : ""}>{title}</b> <span class="since">{since}</span>
      </dd>
    </dl>
  );
}

/** Regimes over time in four lanes: the place says the family, the pattern the regime. */
export const Lanes = ({ layout }: CanvasProps) => (
  <>
    <ViewHead id="view-d" tag="D" title={words.regime} sub="" />
    <LaneNames layout={layout} />
    <LaneCanvas layout={layout} />
    <RegimeReadout layout={layout} />
  </>
);
