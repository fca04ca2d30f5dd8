import { useRef } from "preact/hooks";
import { num } from "../state/format.ts";
import { parseTorque } from "../state/parse.ts";
import { endGesture } from "../state/store.ts";
import type { WorkingId } from "../state/working.ts";
import { t } from "../texts/catalogue.ts";
import { Answering } from "../ui/Answering.tsx";
import { keyStep } from "../ui/keyboard.ts";
import { metrics } from "../ui/metrics.ts";
import { TypedNumber } from "../ui/TypedNumber.tsx";
import { useDrag } from "../ui/use-drag.ts";
import { useSize } from "../ui/use-size.ts";
import { torqueScale } from "./torque-scale.ts";

interface TorqueRowProps {
  readonly name: string;
  readonly colour: "carrier" | "ring";
  readonly value: number;
  readonly least: number;
  readonly most: number;
  /** ends of the drawn scale, N·m */
  readonly from: number;
  readonly to: number;
  readonly endLabel: string;
  /** working of the end, and of the torque itself */
  readonly endWorking: WorkingId;
  readonly working: WorkingId;
  readonly gesture: string;
  readonly onValue: (value: number, gesture: string | null) => void;
  readonly children?: preact.ComponentChildren;
}

const UNIT = "N·m";

function Scale(props: TorqueRowProps & { width: number; height: number }) {
  const { width, height, value, least, most, colour } = props;
  const { x, ticks } = torqueScale(props.from, props.to, width);
  const { text } = metrics.value;
  const unit = text / 14;
  const y = height - 6 * unit;
  const tall = 13 * unit;
  const end = x(most);
  return (
    <svg width={width} height={height} aria-hidden="true">
      <rect class="limitfill" x={end} y={y - 12 * unit} width={Math.max(0, width - end)} height={tall} />
      {x(least) > 0 && <rect class="limitfill" x={0} y={y - 12 * unit} width={x(least)} height={tall} />}
      <line class="plotax" x1={0} x2={width} y1={y} y2={y} />
      {ticks.map((tick) => (
        <line
          key={tick}
          class="tickmark"
          x1={x(tick)}
          x2={x(tick)}
          y1={y}
          y2={y - (tick === 0 ? 9 : 6) * unit}
        />
      ))}
      <line class={`stroke bar ${colour}`} x1={x(0)} x2={x(value)} y1={y} y2={y} />
      <line class="limitbar" x1={end} x2={end} y1={y - 14 * unit} y2={y + 2} />
      <circle class={`knob ${colour}`} cx={x(value)} cy={y - 1} r={7 * unit} />
    </svg>
  );
}

/** What ends the scale, beside its end: a number that answers. */
function EndLabel({ most, from, to, endLabel, endWorking, width }: TorqueRowProps & { width: number }) {
  const end = torqueScale(from, to, width).x(most);
  const gap = (7 * metrics.value.text) / 14;
  const side = end < width / 2 ? { left: `${end + gap}px` } : { right: `${width - end + gap}px` };
  return (
    <span class="end-label" style={side}>
      <Answering id={endWorking} className="plain">
        {endLabel}
      </Answering>
    </span>
  );
}

/** A torque: typed, or slid along a scale that ends at what can be had. */
export function TorqueRow(props: TorqueRowProps) {
  const { name, value, least, most, from, to, gesture, onValue, colour, children } = props;
  const { ref, width, height } = useSize<HTMLDivElement>();
  const start = useRef(0);
  const drag = useDrag({
    onStart: () => {
      start.current = value;
    },
    onMove: (dx, _, shift) => {
      const by = (dx * (to - from)) / Math.max(1, width) / (shift ? 10 : 1);
      onValue(Math.min(most, Math.max(least, Math.round((start.current + by) * 10) / 10)), `drag:${gesture}`);
    },
  });
  const onKeyDown = (event: KeyboardEvent): void => {
    const step = keyStep(event, 1);
    if (step === null) return;
    event.preventDefault();
    onValue(step === "zero" ? 0 : Math.min(most, Math.max(least, value + step)), `keys:${gesture}`);
  };
  return (
    <div class="torque-row">
      <div class="row">
        <Answering id={props.working} className="name">
          {name}
        </Answering>
        <span class="grow">{children}</span>
        <TypedNumber
          name={t.torque.typed(name)}
          className={`mid ink ${colour}`}
          shown={num(value, 1)}
          parse={parseTorque}
          onValue={(typed) => onValue(typed, null)}
          onKey={onKeyDown}
          reasons={t.torque.bad}
        />
        <span class="unit">{UNIT}</span>
      </div>
      <div class="slide-place">
        <div
          class="slide"
          ref={ref}
          role="slider"
          tabIndex={0}
          aria-label={t.torque.slider(name)}
          aria-valuemin={Math.round(least)}
          aria-valuemax={Math.round(most)}
          aria-valuenow={Math.round(value)}
          aria-valuetext={`${num(value, 1)} ${UNIT}`}
          {...drag}
          onKeyDown={onKeyDown}
          onKeyUp={endGesture}
        >
          {width > 0 && <Scale {...props} width={width} height={height} />}
        </div>
        {width > 0 && <EndLabel {...props} width={width} />}
      </div>
    </div>
  );
}
