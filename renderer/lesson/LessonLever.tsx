import { useRef, useState } from "preact/hooks";
import { eachShaft, SHAFTS, type Shaft, type ShaftValues, speedLimits } from "../../sim/bench/shafts.ts";
import { basicRatio } from "../../sim/drivetrain/gear-set.ts";
import type { Vehicle } from "../../sim/parameters/schema.ts";
import { LeverDrawing } from "../lever/LeverDrawing.tsx";
import { type LeverInput, type LeverLayout, leverLayout } from "../lever/layout.ts";
import { type SpeedScale, speedScale } from "../lever/scale.ts";
import type { Role, Stop } from "../state/bench.ts";
import {
  fromShaftUnit,
  idleShown,
  num,
  ratio,
  shaftSpeed,
  shaftUnitName,
  toShaftUnit,
} from "../state/format.ts";
import { units } from "../state/settings.ts";
import { t } from "../texts/catalogue.ts";
import { keyStep } from "../ui/keyboard.ts";
import { fontsReady, measure } from "../ui/measure.ts";
import { metrics } from "../ui/metrics.ts";
import { useDrag } from "../ui/use-drag.ts";
import { useSize } from "../ui/use-size.ts";
import { clearOfLabels } from "./asked-spot.ts";
import type { HiddenParts } from "./hidden.ts";

interface LessonLeverProps {
  readonly vehicle: Vehicle;
  /** rad/s and N·m of sun, carrier and ring */
  readonly speeds: ShaftValues;
  readonly torques: ShaftValues;
  readonly roles: Readonly<Record<Shaft, Role>>;
  readonly stop: Stop | null;
  readonly hidden: HiddenParts;
  /** places that a step points at, such as `torque:sun` */
  readonly pointed: ReadonlySet<string>;
  /** shafts that may be moved; none where a run is shown */
  readonly free: readonly Shaft[];
  readonly onMove: (shaft: Shaft, speed: number) => void;
}

const shownLimits = (v: Vehicle) => {
  const bounds = speedLimits(v);
  const range = (name: Shaft) => ({
    least: toShaftUnit(units.value, bounds[name].least),
    most: toShaftUnit(units.value, bounds[name].most),
  });
  return { sun: range("sun"), carrier: range("carrier"), ring: range("ring") };
};

/** On a small drawing speeds are no larger than names. */
const isSmall = (width: number, height: number, text: number): boolean =>
  width < 24 * text || height < 22 * text;

function inputOf(
  { vehicle, speeds, torques, hidden }: LessonLeverProps,
  width: number,
  height: number,
  scale: SpeedScale,
): LeverInput {
  const sizes = metrics.value;
  const small = isSmall(width, height, sizes.text);
  const short = height < SHORT * sizes.text;
  const k = basicRatio(vehicle.gearSet);
  const { sunTeeth, ringTeeth } = vehicle.gearSet;
  return {
    width,
    height,
    text: sizes.text,
    nameSize: sizes.name,
    speedSize: small ? sizes.name : sizes.speed,
    k,
    scale,
    speeds: eachShaft((name) => toShaftUnit(units.value, hidden.speeds.includes(name) ? 0 : speeds[name])),
    limits: shownLimits(vehicle),
    idle: idleShown(units.value, vehicle.engine.idleSpeed),
    torques: eachShaft((name) => (hidden.torques.includes(name) ? 0 : torques[name])),
    torqueScale: small ? 0.4 : 0.7,
    texts: {
      unit: shaftUnitName(units.value),
      names: t.shafts,
      subs: null,
      number: (value) => num(value),
      torque: (value) => (short ? "" : `${num(value, 1)} N·m`),
      idle: small ? () => "" : t.lever.idle,
      to: t.lever.to,
      never: small ? "" : t.lever.neverShort,
      teeth: [`${t.lever.teeth(ringTeeth)} k = ${ratio(k)}`, t.lever.ratio(sunTeeth)],
    },
    measure,
    ...(small ? { margins: { left: sizes.text * 4.6, right: sizes.text * 4.6 } } : {}),
  };
}

interface AskedProps {
  readonly x: number;
  /** of the handle */
  readonly y: number;
  readonly text: number;
  readonly shaft: Shaft;
  readonly layout: LeverLayout;
}

/** A hidden torque: a frame with a question mark beside its handle; which way it acts is not told. */
function AskedTorque({ x, y: handle, text, shaft, layout }: AskedProps) {
  const y = clearOfLabels(x, handle, text, layout.labels, measure);
  return (
    <g class={`asked-torque stroke ${shaft}`}>
      <rect x={x - text * 0.9} y={y - text * 0.9} width={text * 1.8} height={text * 1.8} />
      <text class="label value" x={x} y={y + text * 0.35} text-anchor="middle">
        {t.lesson.stage.asked}
      </text>
    </g>
  );
}

/** What marks a handle that a step points at: a ring in ink. */
const PointRing = ({ x, y, r }: { x: number; y: number; r: number }) => (
  <circle class="point-ring" cx={x} cy={y} r={r} />
);

/** What marks a torque that a step points at: a solid triangle in ink, from the axis towards the arrow. */
const PointTip = ({ x, y, size, way }: { x: number; y: number; size: number; way: 1 | -1 }) => (
  <path class="point-tip" d={`M${x} ${y}l${way * size} ${-size * 0.6}v${size * 1.2}Z`} />
);

interface GripProps {
  readonly shaft: Shaft;
  readonly layout: LeverLayout;
  readonly y: number;
  readonly props: LessonLeverProps;
  readonly onGrab: (grabbed: boolean) => void;
}

function Grip({ shaft, layout, y, props, onGrab }: GripProps) {
  const start = useRef({ speed: 0, perPixel: 0 });
  const { vehicle, speeds, onMove } = props;
  const { least, most } = speedLimits(vehicle)[shaft];
  const shown = (value: number): number => Math.round(toShaftUnit(units.value, value));
  const drag = useDrag({
    onStart: () => {
      onGrab(true);
      start.current = {
        speed: speeds[shaft],
        perPixel: fromShaftUnit(units.value, layout.frame.perPixel),
      };
    },
    onMove: (_, dy) => onMove(shaft, start.current.speed - dy * start.current.perPixel),
    onEnd: () => onGrab(false),
  });
  const onKeyDown = (event: KeyboardEvent): void => {
    const step = keyStep(event, units.value.shaft === "rpm" ? 10 : 1);
    if (step === null) return;
    event.preventDefault();
    onMove(shaft, step === "zero" ? 0 : speeds[shaft] + fromShaftUnit(units.value, step));
  };
  return (
    <circle
      class={`grab ${shaft}`}
      cx={layout.frame.x[shaft]}
      cy={y}
      r={Math.max(15, layout.radius + 4)}
      role="slider"
      tabindex={0}
      aria-orientation="vertical"
      aria-label={t.lever.name(t.shafts[shaft])}
      aria-valuemin={shown(least)}
      aria-valuemax={shown(most)}
      aria-valuenow={shown(speeds[shaft])}
      aria-valuetext={`${shaftSpeed(units.value, speeds[shaft])} ${shaftUnitName(units.value)}`}
      {...drag}
      onKeyDown={onKeyDown}
    />
  );
}

function words({ speeds, torques, hidden, roles }: LessonLeverProps): string {
  const one = (name: Shaft): string => {
    const speed = hidden.speeds.includes(name)
      ? t.lesson.stage.asked
      : `${shaftSpeed(units.value, speeds[name])} ${shaftUnitName(units.value)}`;
    const torque = hidden.torques.includes(name) ? t.lesson.stage.asked : num(torques[name], 1);
    return t.lever.at(t.shafts[name], speed, `${t.roleState[roles[name]]}, ${t.lever.torque(torque)}`);
  };
  return t.lever.describe(SHAFTS.map(one).join("; "));
}

/** So little room, in text sizes, is taken by the speeds alone. */
const SHORT = 17;

/** Labels of asked speeds say nothing; on a short drawing the limits are only drawn. */
const masked = (layout: LeverLayout, asked: readonly Shaft[], short: boolean): LeverLayout => ({
  ...layout,
  labels: layout.labels
    .filter(({ id }) => !short || !id.startsWith("limit:"))
    .map((label) =>
      asked.some((shaft) => label.id === `speed:${shaft}`) ? { ...label, text: t.lesson.stage.asked } : label,
    ),
});

/** View B of a lesson: the lever line of the step, to be moved where the step leaves a shaft free. */
export function LessonLever(props: LessonLeverProps) {
  const { ref, width, height } = useSize<HTMLDivElement>();
  const [grabbed, setGrabbed] = useState(false);
  const scaleNow = (): SpeedScale =>
    speedScale(
      shownLimits(props.vehicle),
      // A hidden sun must not be told by the length of the scale.
      props.hidden.speeds.length > 0 ? 0 : toShaftUnit(units.value, props.speeds.sun),
      height < 22 * metrics.value.text ? 6 : 10,
    );
  const scale = useRef(scaleNow());
  if (!grabbed) scale.current = scaleNow();
  const { hidden, pointed, free, roles, stop, speeds } = props;
  const ready = width > 0 && fontsReady.value >= 0;
  const input = inputOf(props, width, height, scale.current);
  const layout = ready ? masked(leverLayout(input), hidden.speeds, height < SHORT * input.text) : null;
  const { low, high } = input.scale;
  const { text } = input;
  const y = (shaft: Shaft): number =>
    layout?.frame.y(Math.min(high, Math.max(low, input.speeds[shaft]))) ?? 0;
  // Of a hidden torque's frame: beside the handle, also where its speed is hidden too.
  const beside = (shaft: Shaft): number =>
    (layout?.frame.x[shaft] ?? 0) + 2.3 * text * (shaft === "carrier" ? -1 : 1);
  const arrowOf = (shaft: Shaft) => layout?.arrows.find((arrow) => arrow.shaft === shaft);
  return (
    <div class="drawing" ref={ref}>
      {layout && (
        <svg
          class={isSmall(width, height, text) ? "small-lever" : undefined}
          width={width}
          height={height}
          role="group"
          aria-label={t.lever.title}
          aria-describedby="lesson-lever-words"
        >
          <g aria-hidden="true">
            <LeverDrawing input={input} layout={layout} roles={roles} stop={stop} asked={hidden.speeds}>
              {hidden.torques.map((shaft) => (
                <AskedTorque
                  key={shaft}
                  shaft={shaft}
                  x={beside(shaft)}
                  y={y(shaft)}
                  text={text}
                  layout={layout}
                />
              ))}
              {SHAFTS.filter((shaft) => pointed.has(`speed:${shaft}`)).map((shaft) => (
                <PointRing
                  key={shaft}
                  x={layout.frame.x[shaft]}
                  y={y(shaft)}
                  r={layout.radius + text * 0.5}
                />
              ))}
              {SHAFTS.filter((shaft) => pointed.has(`torque:${shaft}`)).map((shaft) => {
                const arrow = arrowOf(shaft);
                const middle = arrow ? (arrow.from + arrow.to) / 2 : y(shaft) + 2 * text;
                const way = shaft === "carrier" ? 1 : -1;
                const tip = (arrow?.x ?? beside(shaft)) + way * text * (arrow ? 0.75 : 1.1);
                return <PointTip key={shaft} x={tip} y={middle} size={text * 0.9} way={way} />;
              })}
            </LeverDrawing>
          </g>
          {free
            .filter((shaft) => !hidden.speeds.includes(shaft))
            .map((shaft) => (
              <Grip
                key={shaft}
                shaft={shaft}
                layout={layout}
                y={layout.frame.y(Math.min(high, Math.max(low, toShaftUnit(units.value, speeds[shaft]))))}
                props={props}
                onGrab={setGrabbed}
              />
            ))}
        </svg>
      )}
      <p id="lesson-lever-words" class="unseen">
        {words(props)}
      </p>
    </div>
  );
}
