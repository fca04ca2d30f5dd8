import { signal } from "@preact/signals";
import { useLayoutEffect, useRef, useState } from "preact/hooks";
import { eachShaft, SHAFTS, type Shaft, type ShaftValues, type SpeedLimits } from "../../sim/bench/shafts.ts";
import { idleShown, num, ratio, shaftSpeed, shaftUnitName, toShaftUnit } from "../state/format.ts";
import { projector, units } from "../state/settings.ts";
import { bench, k, limits, loads, point, stopped, vehicle } from "../state/store.ts";
import { t } from "../texts/catalogue.ts";
import { fontsReady, measure } from "../ui/measure.ts";
import { type Metrics, metrics } from "../ui/metrics.ts";
import { useSize } from "../ui/use-size.ts";
import { Grips } from "./Grips.tsx";
import { LeverDrawing } from "./LeverDrawing.tsx";
import { type LeverInput, type LeverTexts, leverLayout } from "./layout.ts";
import { type SpeedScale, speedScale } from "./scale.ts";
import { TorqueGrips } from "./TorqueGrips.tsx";
import { useSweep } from "./use-sweep.ts";

/** Limits in the unit shown. */
const shownLimits = (): SpeedLimits => {
  const range = (shaft: Shaft) => ({
    least: toShaftUnit(units.value, limits.value[shaft].least),
    most: toShaftUnit(units.value, limits.value[shaft].most),
  });
  return { sun: range("sun"), carrier: range("carrier"), ring: range("ring") };
};

function textsOf({ compact }: Metrics): LeverTexts {
  const { sunTeeth, ringTeeth } = vehicle.value.gearSet;
  const sub = (shaft: Shaft): string => `${t.lever.subs[shaft]}: ${t.roleState[bench.value.roles[shaft]]}`;
  return {
    unit: shaftUnitName(units.value),
    names: t.shafts,
    subs: compact ? null : { sun: sub("sun"), carrier: sub("carrier"), ring: sub("ring") },
    number: (value) => num(value),
    torque: (value) => `${num(value, 1)} N·m`,
    idle: t.lever.idle,
    to: t.lever.to,
    never: compact ? t.lever.neverShort : t.lever.never,
    teeth: [`${t.lever.teeth(ringTeeth)} k = ${ratio(k.value)}`, t.lever.ratio(sunTeeth)],
  };
}

const scaleNow = (): SpeedScale =>
  speedScale(shownLimits(), toShaftUnit(units.value, bench.value.speeds.sun), 10);

function inputOf(width: number, height: number, speeds: ShaftValues, scale: SpeedScale): LeverInput {
  const sizes = metrics.value;
  return {
    width,
    height,
    text: sizes.text,
    nameSize: sizes.name,
    speedSize: sizes.speed,
    k: k.value,
    scale,
    speeds: eachShaft((shaft) => toShaftUnit(units.value, speeds[shaft])),
    limits: shownLimits(),
    idle: idleShown(units.value, vehicle.value.engine.idleSpeed),
    torques: point.value.torques,
    torqueScale: projector.value ? 0.95 : sizes.compact ? 0.55 : 0.85,
    texts: textsOf(sizes),
    measure,
  };
}

/** The drawing in words, with its present values. */
export function leverWords(): string {
  const { speeds, roles } = bench.value;
  const one = (shaft: Shaft): string => {
    const speed = `${shaftSpeed(units.value, speeds[shaft])} ${shaftUnitName(units.value)}`;
    const torque = t.lever.torque(num(point.value.torques[shaft], 1));
    return t.lever.at(t.shafts[shaft], speed, `${t.roleState[roles[shaft]]}, ${torque}`);
  };
  return t.lever.describe(SHAFTS.map(one).join("; "));
}

/** Counts the drawings: what points at the line follows it, also while it sweeps. */
export const leverDrawn = signal(0);

/** View B's drawing: the lever line of the bench, to be grabbed. */
export function Lever() {
  const { ref, width, height } = useSize<HTMLDivElement>();
  const [grabbed, setGrabbed] = useState(false);
  const scale = useRef<SpeedScale>(scaleNow());
  const speeds = useSweep(bench.value.speeds, loads.value);
  if (!grabbed) scale.current = scaleNow();
  useLayoutEffect(() => {
    leverDrawn.value += 1;
  });
  const ready = width > 0 && fontsReady.value >= 0;
  const input = inputOf(width, height, speeds, scale.current);
  const layout = ready ? leverLayout(input) : null;
  const { low, high } = input.scale;
  const y = (shaft: Shaft): number =>
    layout?.frame.y(Math.min(high, Math.max(low, input.speeds[shaft]))) ?? 0;
  return (
    <div class="drawing" ref={ref}>
      {layout && (
        <svg
          width={width}
          height={height}
          role="group"
          aria-label={t.lever.title}
          aria-describedby="lever-words"
        >
          <g aria-hidden="true">
            <LeverDrawing input={input} layout={layout} roles={bench.value.roles} stop={stopped.value} />
          </g>
          <Grips layout={layout} y={y} onGrab={setGrabbed} />
          <TorqueGrips layout={layout} />
        </svg>
      )}
      <p id="lever-words" class="unseen">
        {leverWords()}
      </p>
    </div>
  );
}
