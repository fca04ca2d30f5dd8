import type { BenchPoint } from "../../sim/bench/bench.ts";
import type { FlowId } from "../../sim/run/flows.ts";
import { FlowPatterns } from "../drive/flow/FlowPatterns.tsx";
import { Key as RunKey } from "../drive/flow/Key.tsx";
import { DRAWN } from "../drive/flow/kinds.ts";
import { placesOf } from "../drive/flow/places.ts";
import { powerLabels } from "../drive/flow/power-labels.ts";
import { powerLayout } from "../drive/flow/power-layout.ts";
import { Shapes } from "../drive/flow/Shapes.tsx";
import { peaksOf, scaleFor } from "../drive/flow/scale.ts";
import { Key, NodeBar, RibbonShape } from "../flow/FlowSheet.tsx";
import { COLOUR_OF, flowLabels } from "../flow/label-wishes.ts";
import { flowLayout, type RibbonId, TALLEST } from "../flow/layout.ts";
import { kilowatts } from "../state/format.ts";
import type { Now, Run } from "../state/run.ts";
import { t } from "../texts/catalogue.ts";
import type { PlacedLabel } from "../ui/labels.ts";
import { fontsReady, measure } from "../ui/measure.ts";
import { metrics } from "../ui/metrics.ts";
import { useSize } from "../ui/use-size.ts";
import type { HiddenParts } from "./hidden.ts";

const Text = ({ label, ink }: { label: PlacedLabel; ink: string }) => (
  <text x={label.x} y={label.y} text-anchor={label.anchor} class={`label ${ink}`} data-label={label.id}>
    {label.text}
  </text>
);

/** Names that would run into each other on a narrow sheet. */
const SHORT: Readonly<Partial<Record<string, string>>> = {
  "node:sunMachine": t.lesson.stage.sunMachineShort,
  "node:outputMachine": t.lesson.stage.outputMachineShort,
};

/** A sheet is narrow below this many times its text's size. */
const NARROW = 54;

/** Numbers that are asked for say nothing. */
function maskedBench(
  labels: readonly PlacedLabel[],
  hidden: HiddenParts,
  narrow: boolean,
): readonly PlacedLabel[] {
  return labels.flatMap((label) => {
    const [kind, of = ""] = label.id.split(":");
    const short = narrow ? SHORT[label.id] : undefined;
    if (short !== undefined) return [{ ...label, text: short }];
    if (label.id === "electrical" || kind === "loop") return hidden.shares ? [] : [label];
    if (kind === "value" && hidden.ribbons.has(of as RibbonId))
      return [{ ...label, text: t.lesson.stage.asked }];
    // Whether a machine drives or generates is the sign of its power.
    return kind === "word" && hidden.ribbons.size > 0 ? [] : [label];
  });
}

function benchWords({ flows }: BenchPoint, hidden: HiddenParts): string {
  const parts: readonly (readonly [string, number, RibbonId])[] = [
    [t.flow.engine, flows.engine, "engine"],
    [t.flow.sunMachine, flows.sun, "sun"],
    [t.flow.mechanicalPath, flows.ring, "mechanical"],
    [t.flow.battery, flows.battery, "battery"],
    [t.flow.outputMachine, flows.outputMachine, "outputMachine"],
    [t.flow.output, flows.output, "output"],
  ];
  const said = parts.map(([name, power, id]) =>
    t.flow.between(name, hidden.ribbons.has(id) ? t.lesson.stage.asked : kilowatts(power)),
  );
  return t.flow.describe(said.join("; "));
}

/** View C of a lesson's bench: where the power goes. */
export function BenchFlow({ point, hidden }: { point: BenchPoint; hidden: HiddenParts }) {
  const { ref, width, height } = useSize<HTMLDivElement>();
  const ready = width > 0 && height > 0 && fontsReady.value >= 0;
  const { flows, shares } = point;
  const tall = Math.min(height, TALLEST * width);
  const layout = ready ? flowLayout({ width, height: tall, text: metrics.value.text, flows }) : null;
  const labels = layout ? flowLabels(layout, { flows, shares, width, height: tall }, measure) : [];
  return (
    <div class="drawing" ref={ref}>
      {layout && (
        <svg
          width={width}
          height={height}
          role="img"
          aria-label={t.flow.title}
          aria-describedby="lesson-flow-words"
        >
          <g transform={`translate(0 ${(height - tall) / 2})`}>
            {layout.ribbons.map((ribbon) => (
              <g key={ribbon.id} class={hidden.ribbons.has(ribbon.id) ? "asked-ribbon" : ""}>
                <RibbonShape ribbon={ribbon} />
              </g>
            ))}
            {layout.bars.map((bar) => (
              <NodeBar key={bar.id} bar={bar} text={layout.text} />
            ))}
            <g class="labels">
              {maskedBench(labels, hidden, width < NARROW * metrics.value.text).map((label) => {
                const [kind = "", of] = label.id.split(":");
                const colour = kind === "value" && of ? `ink ${COLOUR_OF[of as RibbonId]}` : "";
                return <Text key={label.id} label={label} ink={`${kind} ${colour}`} />;
              })}
            </g>
          </g>
          <Key layout={layout} width={width} />
        </svg>
      )}
      <p id="lesson-flow-words" class="unseen">
        {benchWords(point, hidden)}
      </p>
    </div>
  );
}

/** View C of a lesson's run: where the power goes at the instant. */
export function RunFlow({ run, at, hidden }: { run: Run; at: Now; hidden: HiddenParts }) {
  const { ref, width, height } = useSize<HTMLDivElement>();
  const ready = width > 0 && height > 0 && fontsReady.value >= 0;
  const size = { width, height, text: metrics.value.text };
  const perWatt = ready ? scaleFor(placesOf(size), peaksOf(run, run.log)) : 0;
  const layout = ready ? powerLayout({ ...size, flows: at.flows, perWatt, asked: hidden.flows }) : null;
  const labels = layout ? powerLabels(layout, at.at.speed < -0.01, measure) : [];
  return (
    <>
      <FlowPatterns />
      <div class="drawing" ref={ref}>
        {layout && (
          <svg width={width} height={height} role="img" aria-label={t.roadFlow.title}>
            <Shapes picture={layout} />
            <RunKey {...size} perUnit={perWatt} />
            <g class="labels">
              {labels.map((label) => {
                const [kind = "", of = ""] = label.id.split(":");
                const owner = kind === "value" ? DRAWN[of as FlowId]?.owner : undefined;
                return <Text key={label.id} label={label} ink={owner ? `value ink ${owner}` : kind} />;
              })}
            </g>
          </svg>
        )}
      </div>
    </>
  );
}
