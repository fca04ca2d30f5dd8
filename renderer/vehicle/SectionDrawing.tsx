import { signal } from "@preact/signals";
import { radPerSToRpm } from "../../shared/units.ts";
import type { Vehicle } from "../../sim/parameters/schema.ts";
import { num, ratio } from "../state/format.ts";
import { vehicle } from "../state/store.ts";
import { t } from "../texts/catalogue.ts";
import { metrics } from "../ui/metrics.ts";
import { useSize } from "../ui/use-size.ts";
import { type FormPart, PART_COLOUR, type VehiclePart } from "./parts.ts";
import { type Body, type Line, NAMES, SECTION, SECTION_LINES, sectionBodies } from "./section-layout.ts";

/** The part whose parameters are shown. */
export const selectedPart = signal<FormPart>("gearSet");

/** What of a part stands on the drawing: the numbers that say most about it. */
const VALUES: Readonly<Partial<Record<VehiclePart, (v: Vehicle) => string>>> = {
  engine: (v) =>
    `${num(Math.max(...v.engine.fullLoadTorque))} N·m, ${num(radPerSToRpm(v.engine.maxSpeed))} rev/min`,
  sunMachine: (v) => `${num(v.sunMachine.peakTorque)} N·m, ${num(v.sunMachine.peakPower / 1000)} kW`,
  gearSet: (v) => t.vehicle.teeth(v.gearSet.sunTeeth, v.gearSet.planetTeeth, v.gearSet.ringTeeth),
  outputMachine: (v) =>
    `${num(v.outputMachine.peakTorque)} N·m, ${num(v.outputMachine.peakPower / 1000)} kW, ${ratio(v.outputMachine.reduction)} : 1`,
  finalDrive: (v) => `${ratio(v.finalDrive.ratio)} : 1`,
  body: (v) => `${num(v.body.mass)} kg, r ${num(v.body.wheelRadius * 1000)} mm`,
  battery: (v) => `${num(v.battery.cells)} cells, ${ratio(v.battery.capacityAh)} A·h`,
  auxiliary: (v) => `${num(v.auxiliary.power)} W`,
};

const nameOf = (part: VehiclePart): string =>
  part === "auxiliary" ? t.vehicle.inverter : t.vehicle.parts[part];

function fillOf({ fill, colour }: Body): string | undefined {
  if (fill === "cut") return `url(#mech-${colour})`;
  if (fill === "winding") return `url(#elec-${colour})`;
  return undefined;
}

const Shape = ({ body }: { body: Body }) => (
  <rect
    class={`section ${body.fill} ${body.colour}`}
    x={body.x}
    y={body.y}
    width={body.width}
    height={body.height}
    style={fillOf(body) ? { fill: fillOf(body) } : undefined}
    data-part={body.part}
    onClick={() => {
      selectedPart.value = body.part;
    }}
  />
);

const Stroke = ({ line }: { line: Line }) => (
  <polyline class={`section-${line.kind}`} points={line.points.map((point) => point.join(",")).join(" ")} />
);

/** Frame about all bodies of the selected part. */
function Frame({ bodies }: { bodies: readonly Body[] }) {
  const part = selectedPart.value;
  const mine = bodies.filter((body) => body.part === part);
  if (mine.length === 0) return null;
  const x = Math.min(...mine.map((body) => body.x)) - 6;
  const y = Math.min(...mine.map((body) => body.y)) - 6;
  const right = Math.max(...mine.map((body) => body.x + body.width)) + 6;
  const foot = Math.max(...mine.map((body) => body.y + body.height)) + 6;
  return (
    <rect class={`section-frame ${PART_COLOUR[part]}`} x={x} y={y} width={right - x} height={foot - y} />
  );
}

function Names({ scale, left, top }: { scale: number; left: number; top: number }) {
  const { text } = metrics.value;
  return (
    <g class="labels">
      {NAMES.map(({ part, x, y, lines }) => (
        <g
          key={part}
          class="section-name"
          transform={`translate(${left + x * scale} ${top + y * scale + lines * text})`}
          onClick={() => {
            selectedPart.value = part;
          }}
        >
          <text class={`label node ink ${PART_COLOUR[part]}`} text-anchor="middle">
            {nameOf(part)}
          </text>
          <text class="label" text-anchor="middle" y={text * 1.2}>
            {VALUES[part]?.(vehicle.value)}
          </text>
        </g>
      ))}
    </g>
  );
}

/** The section in words, with its present values. */
const words = (): string =>
  t.vehicle.describe(
    NAMES.map(({ part }) => `${nameOf(part)}: ${VALUES[part]?.(vehicle.value) ?? ""}`).join("; "),
  );

/** The drivetrain as a side section; a click takes a part in hand. */
export function SectionDrawing() {
  const { ref, width, height } = useSize<HTMLDivElement>();
  const bodies = sectionBodies(vehicle.value);
  const scale = Math.min(width / SECTION.width, height / SECTION.height);
  const left = (width - SECTION.width * scale) / 2;
  const top = (height - SECTION.height * scale) / 2;
  return (
    <div class="drawing" ref={ref}>
      {width > 0 && (
        <svg
          width={width}
          height={height}
          role="img"
          aria-label={t.vehicle.section}
          aria-describedby="section-words"
        >
          <g transform={`translate(${left} ${top}) scale(${scale})`}>
            {SECTION_LINES.map((line, i) => (
              <Stroke key={i} line={line} />
            ))}
            {bodies.map((body, i) => (
              <Shape key={i} body={body} />
            ))}
            <Frame bodies={bodies} />
          </g>
          <Names scale={scale} left={left} top={top} />
        </svg>
      )}
      <p id="section-words" class="unseen">
        {words()}
      </p>
    </div>
  );
}
