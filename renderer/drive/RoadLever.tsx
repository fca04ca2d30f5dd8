import { eachShaft, SHAFTS, type Shaft, type ShaftValues, speedLimits } from "../../sim/bench/shafts.ts";
import { basicRatio } from "../../sim/drivetrain/gear-set.ts";
import { ViewHead } from "../bench/ViewHead.tsx";
import { LeverDrawing } from "../lever/LeverDrawing.tsx";
import { type LeverInput, type LeverLayout, leverLayout, speedAlong } from "../lever/layout.ts";
import { speedScale } from "../lever/scale.ts";
import { idleShown, num, ratio, shaftSpeed, shaftUnitName, toShaftUnit } from "../state/format.ts";
import { instant } from "../state/instant.ts";
import { hidden } from "../state/predict.ts";
import { run } from "../state/road.ts";
import { ROW, type Run, readSpeeds } from "../state/run.ts";
import { units } from "../state/settings.ts";
import { t } from "../texts/catalogue.ts";
import { fontsReady, measure } from "../ui/measure.ts";
import { metrics } from "../ui/metrics.ts";
import { useSize } from "../ui/use-size.ts";

/** Ghosts of the line: this long ago, s. */
const GHOSTS = [4, 3, 2, 1];

const ROLES = { sun: "follow", carrier: "follow", ring: "follow" } as const;
const HIDES = { sun: "sun-speed", carrier: "carrier-speed", ring: "ring-speed" } as const;

function inputOf(
  one: Run,
  width: number,
  height: number,
  speeds: ShaftValues,
  torques: ShaftValues,
): LeverInput {
  const sizes = metrics.value;
  const { text } = sizes;
  const v = one.request.vehicle;
  const shaft = (value: number): number => toShaftUnit(units.value, value);
  const bounds = speedLimits(v);
  const range = (name: Shaft) => ({ least: shaft(bounds[name].least), most: shaft(bounds[name].most) });
  const limits = { sun: range("sun"), carrier: range("carrier"), ring: range("ring") };
  const k = basicRatio(v.gearSet);
  return {
    width,
    height,
    text,
    nameSize: sizes.name,
    speedSize: sizes.name,
    k,
    // The sun goes deep whenever it is driven fast backward: one scale for the whole drive, so that nothing jumps.
    scale: speedScale(limits, limits.sun.least, 6),
    speeds: eachShaft((name) => shaft(speeds[name])),
    limits,
    idle: idleShown(units.value, v.engine.idleSpeed),
    torques,
    torqueScale: sizes.compact ? 0.4 : 0.6,
    texts: {
      unit: "",
      names: t.shafts,
      subs: null,
      number: (value) => num(value),
      torque: () => "",
      idle: () => "",
      to: t.lever.to,
      never: "",
      teeth: [`k = ${ratio(k)}`, "1"],
    },
    measure,
    margins: { left: text * 3.9, right: text * 4.3 },
  };
}

/** Labels of asked speeds say nothing. */
const masked = (layout: LeverLayout, asks: readonly Shaft[]): LeverLayout =>
  asks.length === 0
    ? layout
    : {
        ...layout,
        labels: layout.labels.map((label) =>
          asks.some((shaft) => label.id === `speed:${shaft}`) ? { ...label, text: "?" } : label,
        ),
      };

function words(): string {
  const at = instant.stage.value;
  if (!at) return t.road.noRun;
  const one = (name: Shaft): string => {
    const said = hidden.value.has(HIDES[name]) ? "?" : shaftSpeed(units.value, at.speeds[name]);
    return `${t.shafts[name]} ${said} ${shaftUnitName(units.value)}`;
  };
  return t.road.lever.words(SHAFTS.map(one).join("; "));
}

interface DrawingProps {
  readonly one: Run;
  readonly width: number;
  readonly height: number;
}

function Drawing({ one, width, height }: DrawingProps) {
  const at = instant.stage.value;
  if (!at) return null;
  const asks = SHAFTS.filter((name) => hidden.value.has(HIDES[name]));
  const speeds = eachShaft((name) => (asks.includes(name) ? 0 : at.speeds[name]));
  const input = inputOf(one, width, height, speeds, at.torques);
  const layout = masked(leverLayout(input), asks);
  const { frame, hero } = layout;
  const back = Math.round(1 / ROW);
  return (
    <svg
      width={width}
      height={height}
      role="img"
      aria-label={t.lever.title}
      aria-describedby="road-lever-words"
    >
      {asks.length === 0 &&
        GHOSTS.filter((ago) => at.row >= ago * back).map((ago) => {
          const speeds = readSpeeds(one, at.row - ago * back);
          const shown = eachShaft((name) => toShaftUnit(units.value, speeds[name]));
          return (
            <line
              key={ago}
              class={`ghost ago${ago}`}
              x1={hero.x1}
              x2={hero.x2}
              y1={frame.y(speedAlong(frame, shown, hero.x1))}
              y2={frame.y(speedAlong(frame, shown, hero.x2))}
            />
          );
        })}
      <LeverDrawing input={input} layout={layout} roles={ROLES} stop={null} asked={asks} />
    </svg>
  );
}

/** View B on Road: the three speeds on their line, with where it was. */
export function RoadLever() {
  const { ref, width, height } = useSize<HTMLDivElement>();
  const one = run.value;
  const ready = width > 0 && fontsReady.value >= 0;
  return (
    <section class="view r-lever" aria-labelledby="view-b">
      <ViewHead
        id="view-b"
        tag="B"
        title={t.lever.title}
        sub={`${shaftUnitName(units.value)}, ${t.road.lever.sub}`}
      />
      <div class="drawing" ref={ref}>
        {ready && one && <Drawing one={one} width={width} height={height} />}
        <p id="road-lever-words" class="unseen">
          {words()}
        </p>
      </div>
    </section>
  );
}
