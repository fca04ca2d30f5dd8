import { openCircuit } from "../../sim/drivetrain/battery.ts";
import { lookUp } from "../../sim/drivetrain/table.ts";
import type { Vehicle } from "../../sim/parameters/schema.ts";
import { mapFrame } from "../plots/map/frame.ts";
import { num } from "../state/format.ts";
import { measure } from "../ui/measure.ts";
import { metrics } from "../ui/metrics.ts";

interface Props {
  readonly battery: Vehicle["battery"];
  readonly width: number;
  readonly height: number;
}

const STEPS = 100;

/** Open-circuit voltage of the pack over charge; outside the window that is used it is hatched. */
export function BatteryCurve({ battery, width, height }: Props) {
  const { text } = metrics.value;
  const table = openCircuit(battery);
  const points = Array.from({ length: STEPS + 1 }, (_, i): readonly [number, number] => [
    i / STEPS,
    lookUp(table, i / STEPS),
  ]);
  const volts = points.map(([, v]) => v);
  const frame = mapFrame({
    width,
    height,
    text,
    measure,
    x: { least: 0, most: 1, perSi: 100, number: (value) => num(value) },
    y: {
      least: Math.min(...volts) * 0.97,
      most: Math.max(...volts) * 1.02,
      perSi: 1,
      number: (value) => num(value),
    },
  });
  const { box, ticksX, ticksY } = frame;
  const foot = box.y + box.height;
  const line = points.map(([soc, v]) => `${frame.x(soc).toFixed(1)} ${frame.y(v).toFixed(1)}`).join("L");
  const floor = frame.x(battery.socFloor);
  const ceiling = frame.x(battery.socCeiling);
  return (
    <svg width={width} height={height} aria-hidden="true">
      {ticksX.map(({ at }) => (
        <line key={at} class="grid" x1={at} x2={at} y1={box.y} y2={foot} />
      ))}
      {ticksY.map(({ at }) => (
        <line key={at} class="grid" x1={box.x} x2={box.x + box.width} y1={at} y2={at} />
      ))}
      <rect class="limitfill" x={box.x} y={box.y} width={Math.max(0, floor - box.x)} height={box.height} />
      <rect
        class="limitfill"
        x={ceiling}
        y={box.y}
        width={Math.max(0, box.x + box.width - ceiling)}
        height={box.height}
      />
      <line class="limitbar" x1={floor} x2={floor} y1={box.y} y2={foot} />
      <line class="limitbar" x1={ceiling} x2={ceiling} y1={box.y} y2={foot} />
      <path class="stroke battery curve" d={`M${line}`} />
      <g class="labels">
        {ticksX.map(({ at, text: said }) => (
          <text key={at} class="label tick" x={at} y={foot + text * 1.3} text-anchor="middle">
            {said}
          </text>
        ))}
        {ticksY.map(({ at, text: said }) => (
          <text key={at} class="label tick" x={box.x - text * 0.45} y={at + text * 0.33} text-anchor="end">
            {said}
          </text>
        ))}
      </g>
    </svg>
  );
}
