import { useRef } from "preact/hooks";
import { SHAFTS, type Shaft } from "../../sim/bench/shafts.ts";
import { fromShaftUnit, shaftSpeed, shaftUnitName, toShaftUnit } from "../state/format.ts";
import { units } from "../state/settings.ts";
import { bench, endGesture, limits, setSpeed, shiftSpeeds } from "../state/store.ts";
import { t } from "../texts/catalogue.ts";
import { keyStep } from "../ui/keyboard.ts";
import { useDrag } from "../ui/use-drag.ts";
import type { LeverLayout } from "./layout.ts";

interface GripProps {
  readonly layout: LeverLayout;
  readonly y: (shaft: Shaft) => number;
  /** while true the scale stays as it is */
  readonly onGrab: (grabbed: boolean) => void;
}

/** Small step of the keys in the unit shown: 10 rev/min or 1 rad/s. */
const smallStep = (): number => (units.value.shaft === "rpm" ? 10 : 1);

/** Keys of a speed: arrows, page keys, Home. True if it was one of them. */
export function speedKeys(event: KeyboardEvent, shaft: Shaft): void {
  const step = keyStep(event, smallStep());
  if (step === null) return;
  event.preventDefault();
  const to = step === "zero" ? 0 : bench.value.speeds[shaft] + fromShaftUnit(units.value, step);
  setSpeed(shaft, to, `keys:${shaft}`);
}

/** What a screen reader is told of a shaft. */
export function sliderNames(shaft: Shaft) {
  const { speeds, roles } = bench.value;
  const shown = (value: number): number => Math.round(toShaftUnit(units.value, value));
  return {
    "aria-label": t.lever.name(t.shafts[shaft]),
    "aria-valuemin": shown(limits.value[shaft].least),
    "aria-valuemax": shown(limits.value[shaft].most),
    "aria-valuenow": shown(speeds[shaft]),
    "aria-valuetext": `${shaftSpeed(units.value, speeds[shaft])} ${shaftUnitName(units.value)}, ${t.roleState[roles[shaft]]}`,
  };
}

function Grip({ shaft, layout, y, onGrab }: GripProps & { shaft: Shaft }) {
  const start = useRef({ speed: 0, perPixel: 0 });
  const { frame, radius } = layout;
  const drag = useDrag({
    onStart: () => {
      onGrab(true);
      start.current = {
        speed: bench.value.speeds[shaft],
        perPixel: fromShaftUnit(units.value, frame.perPixel),
      };
    },
    onMove: (_, dy) => setSpeed(shaft, start.current.speed - dy * start.current.perPixel, `drag:${shaft}`),
    onEnd: () => onGrab(false),
  });
  return (
    <circle
      class={`grab ${shaft}`}
      cx={frame.x[shaft]}
      cy={y(shaft)}
      r={Math.max(15, radius + 4)}
      role="slider"
      tabindex={0}
      aria-orientation="vertical"
      data-point={`speed:${shaft}`}
      {...sliderNames(shaft)}
      {...drag}
      onKeyDown={(event) => speedKeys(event, shaft)}
      onKeyUp={endGesture}
    />
  );
}

function LineGrip({ layout, onGrab }: GripProps) {
  const last = useRef(0);
  const { hero, frame } = layout;
  const drag = useDrag({
    onStart: () => {
      onGrab(true);
      last.current = 0;
    },
    onMove: (_, dy) => {
      shiftSpeeds(fromShaftUnit(units.value, (last.current - dy) * frame.perPixel), "drag:line");
      last.current = dy;
    },
    onEnd: () => onGrab(false),
  });
  const onKeyDown = (event: KeyboardEvent): void => {
    const step = keyStep(event, smallStep());
    if (step === null) return;
    event.preventDefault();
    const by = step === "zero" ? -bench.value.speeds.carrier : fromShaftUnit(units.value, step);
    shiftSpeeds(by, "keys:line");
  };
  return (
    <line
      class="grab line"
      x1={hero.x1}
      y1={hero.y1}
      x2={hero.x2}
      y2={hero.y2}
      role="slider"
      tabindex={0}
      aria-orientation="vertical"
      {...sliderNames("carrier")}
      aria-label={t.lever.line}
      {...drag}
      onKeyDown={onKeyDown}
      onKeyUp={endGesture}
    />
  );
}

/** What can be grabbed on the drawing: the line under the three handles. */
export const Grips = (props: GripProps) => (
  <g>
    <LineGrip {...props} />
    {SHAFTS.map((shaft) => (
      <Grip key={shaft} shaft={shaft} {...props} />
    ))}
  </g>
);
