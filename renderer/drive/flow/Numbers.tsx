import type { VNode } from "preact";
import { useRef, useState } from "preact/hooks";
import { type RoadWorkingId, roadWorking, showRoadWorking } from "../../state/road-working.ts";
import { t } from "../../texts/catalogue.ts";
import type { PlacedLabel } from "../../ui/labels.ts";
import type { Owner } from "./kinds.ts";

/** What a number of a sheet answers with. */
export interface Answer {
  readonly working: RoadWorkingId | null;
  /** what it is the number of */
  readonly name: string;
  /** whose number it is; null for a name */
  readonly owner: Owner | null;
}

interface NumbersProps {
  readonly labels: readonly PlacedLabel[];
  readonly width: number;
  readonly height: number;
  /** of a label by what stands before and behind the colon in its id; null: it only says something */
  readonly answer: (kind: string, of: string) => Answer | null;
}

const STEPS: Readonly<Partial<Record<string, number>>> = {
  ArrowRight: 1,
  ArrowDown: 1,
  ArrowLeft: -1,
  ArrowUp: -1,
};

/** From one number to the next. */
function go(event: KeyboardEvent, by: number): void {
  const here = event.currentTarget;
  if (!(here instanceof Element)) return;
  const all: (Element | null)[] = [...here.querySelectorAll("[role=button]")];
  const at = all.indexOf(document.activeElement);
  event.preventDefault();
  event.stopPropagation();
  const next = all[(at + by + all.length) % all.length];
  if (next instanceof SVGElement) next.focus();
}

/** The number that an event is about. */
const numberOf = (event: Event): SVGElement | null =>
  event.target instanceof SVGElement && event.target.dataset.point ? event.target : null;

/** The working of it; every number is drawn with its own. */
const showOf = (number: SVGElement | null): void => {
  if (number?.dataset.point) showRoadWorking(number.dataset.point as RoadWorkingId);
};

function onKeyDown(event: KeyboardEvent): void {
  const by = STEPS[event.key];
  if (by) go(event, by);
  else if (event.key === "Enter" || event.key === " ") {
    event.preventDefault();
    event.stopPropagation();
    showOf(numberOf(event));
  }
}

interface TextProps {
  readonly label: PlacedLabel;
  readonly kind: string;
  readonly answer: Answer | null;
  readonly stops: boolean;
  readonly open: boolean;
}

function textOf({ label, kind, answer, stops, open }: TextProps): VNode {
  const { id, text } = label;
  const place = {
    x: Math.round(label.x),
    y: Math.round(label.y),
    "text-anchor": label.anchor,
    "data-label": id,
  };
  const ink = answer?.owner ? `value ink ${answer.owner}` : kind;
  if (!answer?.working) {
    return (
      <text key={id} {...place} class={`label ${ink}`} aria-hidden="true">
        {text}
      </text>
    );
  }
  return (
    <text
      key={id}
      {...place}
      class={`label answers ${ink}`}
      role="button"
      tabindex={stops ? 0 : -1}
      aria-label={spoken(answer, text)}
      aria-expanded={open}
      data-point={answer.working}
    >
      {text}
    </text>
  );
}

/** What is read aloud: the whole name, and what stands there, so that it can also be asked for by what is seen. */
function spoken({ name, owner }: Answer, text: string): string {
  if (owner) return t.roadFlow.working(name, text);
  return name.includes(text) ? t.roadFlow.workingOf(name) : t.roadFlow.working(name, text);
}

/**
 * The texts of the sheet. Numbers answer to a press; by keys they are one stop, with the arrows from one to the next.
 * A text that stays as it is keeps its node, so that a frame only touches what changed.
 */
export function Numbers({ labels, width, height, answer }: NumbersProps) {
  const [stop, setStop] = useState("");
  const kept = useRef(new Map<string, { readonly key: string; readonly node: VNode }>());
  const opened = roadWorking.value;
  const isNumber = ({ id }: PlacedLabel): boolean => id.startsWith("value:");
  const current = labels.some(({ id }) => id === stop) ? stop : labels.find(isNumber)?.id;
  const nodes = labels.map((label) => {
    const { id, text, x, y, anchor } = label;
    const [kind = "", of = ""] = id.split(":");
    const answered = answer(kind, of);
    const open = answered?.working === opened && opened !== null;
    const stops = id === current;
    const key = `${text}|${Math.round(x)}|${Math.round(y)}|${anchor}|${open}|${stops}|${answered?.working}`;
    const found = kept.current.get(id);
    if (found?.key === key) return found.node;
    const node = textOf({ label, kind, answer: answered, stops, open });
    kept.current.set(id, { key, node });
    return node;
  });
  return (
    <svg
      width={width}
      height={height}
      role="toolbar"
      aria-label={t.roadFlow.numbers}
      class="labels"
      onClick={(event) => showOf(numberOf(event))}
      onFocusIn={(event) => setStop(numberOf(event)?.dataset.label ?? "")}
      onKeyDown={onKeyDown}
    >
      {nodes}
    </svg>
  );
}
