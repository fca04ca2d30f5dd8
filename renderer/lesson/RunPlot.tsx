import { at } from "../../shared/at.ts";
import { mpsToKmh, mpsToMph } from "../../shared/units.ts";
import { num, roadSpeed } from "../state/format.ts";
import type { Now, Run } from "../state/run.ts";
import { units } from "../state/settings.ts";
import { t } from "../texts/catalogue.ts";
import { metrics } from "../ui/metrics.ts";
import { clockTime } from "../ui/time.ts";
import { useSize } from "../ui/use-size.ts";
import { curvePath } from "./curve.ts";
import type { HiddenParts } from "./hidden.ts";
import { lookAtTime, runDuration } from "./stage.ts";

const s = t.lesson.stage;

/** Speed over time with what was asked for, and the charge, each to its own scale, with the instant. */
function Curves({ run, now, width, height, hidden }: Props & { width: number; height: number }) {
  const { log } = run;
  const time = log.view("time");
  const speed = log.view("speed");
  const target = log.view("target");
  const soc = log.view("soc");
  const most = Math.max(1, ...[speed, target].map((curve) => curve.reduce((a, b) => Math.max(a, b), 0)));
  const { text } = metrics.value;
  const left = text * 3.4;
  const frame = { left, right: width - text * 3.4, top: text * 0.8, bottom: height - text * 0.5 };
  const curve = (values: Float64Array, low: number, high: number) =>
    curvePath(time, values, frame, low, high);
  const x = frame.left + ((frame.right - frame.left) * now.time) / Math.max(1e-9, at(time, log.rows - 1));
  const shown = units.value.road === "kmh" ? mpsToKmh(most) : mpsToMph(most);
  return (
    <svg width={width} height={height} aria-hidden="true">
      <line class="plotax" x1={frame.left} x2={frame.right} y1={frame.bottom} y2={frame.bottom} />
      {!hidden.roadSpeed && (
        <>
          <path class="l-curve target" d={curve(target, 0, most)} />
          <path class="l-curve speed" d={curve(speed, 0, most)} />
        </>
      )}
      {!hidden.charge && <path class="l-curve soc" d={curve(soc, 0, 1)} />}
      <g class="labels">
        <text class="label" x={frame.left - 6} y={frame.top + text * 0.5} text-anchor="end">
          {num(shown)}
        </text>
        <text class="label" x={frame.left - 6} y={frame.bottom} text-anchor="end">
          0
        </text>
        <text class="label" x={frame.right + 6} y={frame.top + text * 0.5}>
          100 %
        </text>
        <text class="label" x={frame.right + 6} y={frame.bottom}>
          0 %
        </text>
      </g>
      <line class="l-cursor" x1={x} x2={x} y1={0} y2={frame.bottom} />
    </svg>
  );
}

interface Props {
  readonly run: Run;
  readonly now: Now;
  readonly hidden: HiddenParts;
}

/** What the instant is, in words. */
function words({ now, hidden }: Props): string {
  const speed = hidden.roadSpeed ? s.asked : roadSpeed(units.value, now.at.speed);
  const charge = hidden.charge ? s.asked : `${num(now.at.soc * 100, 1)} %`;
  return s.describe(speed, charge, clockTime(now.time));
}

/** View D of a lesson's run: speed and charge over time; the time looked at can be moved. */
export function RunPlot(props: Props) {
  const { ref, width, height } = useSize<HTMLDivElement>();
  const { now, hidden } = props;
  const { roadSpeed: asksSpeed, charge: asksCharge } = hidden;
  return (
    <>
      <div class="drawing" ref={ref} role="img" aria-label={words(props)}>
        {width > 0 && height > 0 && <Curves {...props} width={width} height={height} />}
      </div>
      <div class="l-time">
        <input
          type="range"
          min="0"
          max={runDuration.value}
          step="0.1"
          aria-label={s.time}
          aria-valuetext={clockTime(now.time)}
          value={now.time}
          onInput={(event) => lookAtTime(Number(event.currentTarget.value))}
        />
        <span class="l-key">
          <b>{clockTime(now.time)}</b>
          <span class="curve-key speed">
            {s.speed} <b>{asksSpeed ? s.asked : roadSpeed(units.value, now.at.speed)}</b>
          </span>
          <span class="curve-key soc">
            {s.charge} <b>{asksCharge ? s.asked : `${num(now.at.soc * 100, 1)} %`}</b>
          </span>
        </span>
      </div>
    </>
  );
}
