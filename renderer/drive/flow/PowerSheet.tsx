import { FLOW_NODES, type FlowId } from "../../../sim/run/flows.ts";
import { flowScale } from "../../state/flow-look.ts";
import { instant } from "../../state/instant.ts";
import { hidden } from "../../state/predict.ts";
import { run } from "../../state/road.ts";
import type { Now, Run } from "../../state/run.ts";
import { t } from "../../texts/catalogue.ts";
import { measure } from "../../ui/measure.ts";
import { Key } from "./Key.tsx";
import { askedFlows, DRAWN } from "./kinds.ts";
import { type Answer, Numbers } from "./Numbers.tsx";
import { type Places, placesOf, type SheetSize } from "./places.ts";
import { powerLabels } from "./power-labels.ts";
import { powerLayout } from "./power-layout.ts";
import { Shapes } from "./Shapes.tsx";
import { demandsOf, peaksOf, scaleFor, steppedScale } from "./scale.ts";

/** px a watt: of the run's largest moment, or of this one's. */
const scaleNow = (places: Places, one: Run, at: Now): number =>
  flowScale.value === "run"
    ? scaleFor(places, peaksOf(one, one.log))
    : steppedScale(places, demandsOf(at.flows));

/** A flow's number answers with its working, a bar's name with how the bar adds up. */
function answerOf(kind: string, of: string): Answer | null {
  if (kind === "value") {
    const id = of as FlowId;
    return { working: `flow:${id}`, name: t.roadFlow.flows[id], owner: DRAWN[id].owner };
  }
  const node = kind === "name" ? FLOW_NODES.find(({ id }) => id === of) : undefined;
  return node ? { working: `node:${node.id}`, name: t.roadFlow.nodes[node.id], owner: null } : null;
}

/** The powers of the instant at the cursor. */
export function PowerSheet({ width, height, text }: SheetSize) {
  const one = run.value;
  const at = instant.flow.value;
  if (!one || !at) return null;
  const size = { width, height, text };
  const perWatt = scaleNow(placesOf(size), one, at);
  const layout = powerLayout({ ...size, flows: at.flows, perWatt, asked: askedFlows(hidden.value) });
  const labels = powerLabels(layout, at.at.speed < -0.01, measure);
  return (
    <>
      <svg
        width={width}
        height={height}
        role="img"
        aria-label={t.roadFlow.title}
        aria-describedby="road-flow-words"
      >
        <Shapes picture={layout} />
        <Key {...size} perUnit={perWatt} />
      </svg>
      <Numbers labels={labels} width={width} height={height} answer={answerOf} />
    </>
  );
}
