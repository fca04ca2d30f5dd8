import { kilowatts, num } from "../state/format.ts";
import { point } from "../state/store.ts";
import { toggleWorking, type WorkingId, working } from "../state/working.ts";
import { t } from "../texts/catalogue.ts";
import type { PlacedLabel } from "../ui/labels.ts";
import { fontsReady, measure } from "../ui/measure.ts";
import { metrics } from "../ui/metrics.ts";
import { useSize } from "../ui/use-size.ts";
import { workingTitle } from "../ui/working-title.ts";
import { COLOUR_OF, flowLabels } from "./label-wishes.ts";
import { type Bar, type FlowLayout, flowLayout, type Ribbon, type RibbonId, TALLEST } from "./layout.ts";

const ELECTRICAL: ReadonlySet<RibbonId> = new Set(["sunLink", "outputLink", "battery", "batteryOver"]);

/** Ribbons thinner than this, px, are solid: no pattern could be told on them. */
const SOLID_BELOW = 4;

const path = (points: Ribbon["outline"]): string =>
  `M${points.map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`).join("L")}Z`;

/** One ribbon of the sheet. */
export function RibbonShape({ ribbon }: { ribbon: Ribbon }) {
  const { id, width, mark, loop } = ribbon;
  const colour = COLOUR_OF[id];
  const kind = ELECTRICAL.has(id) ? "elec" : "mech";
  const q = Math.min(metrics.value.text * 0.57, width * 0.28);
  return (
    <g class={`ribbon ${colour} ${loop ? "loop" : ""}`}>
      <path
        class={width < SOLID_BELOW ? "body solid" : "body"}
        style={width < SOLID_BELOW ? undefined : { fill: `url(#${kind}-${colour})` }}
        d={path(ribbon.outline)}
      />
      {width >= 11 && (
        <path
          class="chevron"
          transform={`translate(${mark.x} ${mark.y}) rotate(${mark.angle})`}
          d={`M${-q * 0.6} ${-q}l${q * 1.2} ${q}l${-q * 1.2} ${q}`}
        />
      )}
    </g>
  );
}

/** A plain bar as tall as what goes through; a mark where nothing does. */
export function NodeBar({ bar, text }: { bar: Bar; text: number }) {
  const half = text / 7;
  return (
    <rect
      class={`nodebar ${bar.height === 0 ? "still" : ""}`}
      x={bar.x - half}
      y={bar.y - half}
      width={2 * half}
      height={bar.height + 2 * half}
    />
  );
}

const WORKINGS: Readonly<Partial<Record<string, WorkingId>>> = {
  "value:engine": "power:carrier",
  "value:sun": "power:sun",
  "value:sunOver": "power:sun",
  "value:sunLink": "power:sun",
  "value:mechanical": "power:ring",
  "value:battery": "battery",
  "value:batteryOver": "battery",
  "value:outputLink": "output",
  "value:outputMachine": "output",
  "value:outputMachineOver": "output",
  "value:output": "output-power",
  electrical: "electrical",
};

function Label({ label }: { label: PlacedLabel }) {
  const [kind = "", name] = label.id.split(":");
  const colour = kind === "value" && name ? `ink ${COLOUR_OF[name as RibbonId]}` : "";
  const id = WORKINGS[label.id];
  const answers = id && {
    role: "button" as const,
    tabindex: 0,
    "aria-label": `${workingTitle(id)} ${label.text}${kind === "value" ? " kW" : ""}`,
    "aria-expanded": working.value === id,
    "data-flow-point": id,
    onClick: () => toggleWorking(id),
    onKeyDown: (event: KeyboardEvent) => {
      if (event.key !== "Enter" && event.key !== " ") return;
      event.preventDefault();
      toggleWorking(id);
    },
  };
  return (
    <text
      x={label.x}
      y={label.y}
      text-anchor={label.anchor}
      class={`label ${kind} ${colour} ${id ? "answers" : ""}`}
      data-label={label.id}
      {...answers}
    >
      {label.text}
    </text>
  );
}

/** 10 kW, 2 kW or 500 W: the largest round power whose bar stays short. */
function scaleBar(perWatt: number): { watts: number; width: number } {
  const steps = [50_000, 20_000, 10_000, 5000, 2000, 1000, 500, 200, 100];
  const watts = steps.find((step) => step * perWatt <= 44) ?? 100;
  return { watts, width: watts * perWatt };
}

/** Scale bar and key of the kinds of power. */
export function Key({ layout, width }: { layout: FlowLayout; width: number }) {
  const { text } = layout;
  const { watts, width: bar } = scaleBar(layout.perWatt);
  const y = -8;
  const names = [
    ["mech", t.flow.mechanical],
    ["elec", t.flow.electrical],
  ] as const;
  const wide = (name: string): number => 32 + measure(name, text) + 16;
  const scale = t.flow.scale(num(watts / 1000, watts < 1000 ? 1 : 0));
  let x = width - names.reduce((sum, [, name]) => sum + wide(name), 0) + 14;
  const start = x - measure(scale, text) - 18 - bar;
  return (
    <g class="key" aria-hidden="true">
      <path class="scalebar" d={`M${start} ${y - 7}v7h${bar}v-7`} />
      <text class="label" x={start + bar + 8} y={y}>
        {scale}
      </text>
      {names.map(([kind, name]) => {
        const from = x;
        x += wide(name);
        return (
          <g key={kind}>
            <rect x={from} y={y - 11} width={26} height={12} style={{ fill: `url(#${kind}-ring)` }} />
            <text class="label" x={from + 32} y={y}>
              {name}
            </text>
          </g>
        );
      })}
    </g>
  );
}

/** The sheet in words, with its present values. */
export function flowWords(): string {
  const { flows, regime } = point.value;
  const parts: readonly (readonly [string, number])[] = [
    [t.flow.engine, flows.engine],
    [t.flow.sunMachine, flows.sun],
    [t.flow.mechanicalPath, flows.ring],
    [t.flow.battery, flows.battery],
    [t.flow.outputMachine, flows.outputMachine],
    [t.flow.output, flows.output],
  ];
  const said = parts
    .filter(([, power]) => Math.abs(power) >= 50)
    .map(([name, power]) => t.flow.between(name, kilowatts(power)));
  return `${t.flow.describe(said.length > 0 ? said.join("; ") : t.flow.none)} ${t.regimes[regime]?.title ?? ""}`;
}

/** View C's drawing: where the power goes. */
export function FlowSheet() {
  const { ref, width, height } = useSize<HTMLDivElement>();
  const ready = width > 0 && fontsReady.value >= 0;
  const { flows, shares } = point.value;
  const tall = Math.min(height, TALLEST * width);
  const layout = ready ? flowLayout({ width, height: tall, text: metrics.value.text, flows }) : null;
  const labels = layout ? flowLabels(layout, { flows, shares, width, height: tall }, measure) : [];
  return (
    <div class="drawing" ref={ref}>
      {layout && (
        <svg
          width={width}
          height={height}
          role="group"
          aria-label={t.flow.title}
          aria-describedby="flow-words"
        >
          <g transform={`translate(0 ${(height - tall) / 2})`}>
            <g aria-hidden="true">
              {layout.ribbons.map((ribbon) => (
                <RibbonShape key={ribbon.id} ribbon={ribbon} />
              ))}
              {layout.bars.map((bar) => (
                <NodeBar key={bar.id} bar={bar} text={layout.text} />
              ))}
            </g>
            <g class="labels">
              {labels.map((label) => (
                <Label key={label.id} label={label} />
              ))}
            </g>
          </g>
          <Key layout={layout} width={width} />
        </svg>
      )}
      <p id="flow-words" class="unseen">
        {flowWords()}
      </p>
    </div>
  );
}
