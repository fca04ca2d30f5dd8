import { useState } from "preact/hooks";
import type { FlowId } from "../../../sim/run/flows.ts";
import { type RoadWorkingId, roadWorking, showRoadWorking } from "../../state/road-working.ts";
import { t } from "../../texts/catalogue.ts";
import type { PlacedLabel } from "../../ui/labels.ts";
import { DRAWN } from "./kinds.ts";

interface NumbersProps {
  readonly labels: readonly PlacedLabel[];
  readonly width: number;
  readonly height: number;
}

/** The flow or node whose working a label shows; null: it shows none. */
function workingOf(id: string): RoadWorkingId | null {
  const [kind, name] = id.split(":");
  if (kind === "value") return `flow:${name as FlowId}`;
  return null;
}

const inkOf = (id: string): string => {
  const [kind = "", name] = id.split(":");
  return kind === "value" && name ? `value ink ${DRAWN[name as FlowId].owner}` : kind;
};

/**
 * The texts of the sheet. Numbers answer to a press; by keys they are one stop, with the arrows from one to the next.
 */
export function Numbers({ labels, width, height }: NumbersProps) {
  const [stop, setStop] = useState("");
  const numbers = labels.filter(({ id }) => workingOf(id) !== null);
  const current = numbers.some(({ id }) => id === stop) ? stop : numbers[0]?.id;
  const go = (event: KeyboardEvent, by: number): void => {
    const all = [...(event.currentTarget as Element).querySelectorAll<SVGElement>("[role=button]")];
    const at = all.indexOf(document.activeElement as SVGElement);
    const next = all[(at + by + all.length) % all.length];
    event.preventDefault();
    event.stopPropagation();
    next?.focus();
  };
  return (
    <svg
      width={width}
      height={height}
      role="toolbar"
      aria-label={t.roadFlow.numbers}
      class="labels"
      onKeyDown={(event) => {
        if (event.key === "ArrowRight" || event.key === "ArrowDown") go(event, 1);
        if (event.key === "ArrowLeft" || event.key === "ArrowUp") go(event, -1);
      }}
    >
      {labels.map(({ id, text, x, y, anchor }) => {
        const working = workingOf(id);
        const place = { x: Math.round(x), y: Math.round(y), "text-anchor": anchor, "data-label": id };
        if (!working) {
          return (
            <text key={id} {...place} class={`label ${inkOf(id)}`} aria-hidden="true">
              {text}
            </text>
          );
        }
        const flow = id.slice("value:".length) as FlowId;
        return (
          <text
            key={id}
            {...place}
            class={`label answers ${inkOf(id)}`}
            role="button"
            tabindex={id === current ? 0 : -1}
            aria-label={t.roadFlow.working(t.roadFlow.flows[flow], text)}
            aria-expanded={roadWorking.value === working}
            data-road-point={working}
            onFocus={() => setStop(id)}
            onClick={() => showRoadWorking(working)}
            onKeyDown={(event) => {
              if (event.key !== "Enter" && event.key !== " ") return;
              event.preventDefault();
              event.stopPropagation();
              showRoadWorking(working);
            }}
          >
            {text}
          </text>
        );
      })}
    </svg>
  );
}
