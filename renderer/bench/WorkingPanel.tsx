import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import { leverDrawn } from "../lever/Lever.tsx";
import { units } from "../state/settings.ts";
import { bench, point, vehicle } from "../state/store.ts";
import { perOf, turns } from "../state/turning.ts";
import { type WorkingId, working } from "../state/working.ts";
import { t } from "../texts/catalogue.ts";
import { Icon } from "../ui/icons.tsx";
import { Leader, type PanelSpot } from "../ui/Leader.tsx";
import { metrics } from "../ui/metrics.ts";
import { WorkingLines } from "../ui/WorkingLines.tsx";
import { dockPanel } from "./dock.ts";
import { workingOf } from "./working.ts";

const boxIn = (origin: DOMRect, element: Element) => {
  const { left, top, width, height } = element.getBoundingClientRect();
  return { x: left - origin.left, y: top - origin.top, width, height };
};

/** Where the panel may dock: on the lever line, or on the view that has taken its place. */
function stageOf(view: Element): Element | null {
  const stages = view.querySelectorAll(".v-lever .drawing, .v-flow .drawing, .v-gear .canvas");
  return [...stages].sort((a) => (a.closest(".v-lever") ? -1 : 1)).find((one) => one.clientWidth > 0) ?? null;
}

function findSpot(panel: HTMLElement, id: string): PanelSpot | null {
  const view = panel.closest(".bench");
  const drawing = view && stageOf(view);
  if (!view || !drawing) return null;
  const hero = drawing.querySelector(".hero");
  const origin = view.getBoundingClientRect();
  const marked = [...view.querySelectorAll(`[data-point="${id}"], [data-flow-point="${id}"]`)].find((one) =>
    one.checkVisibility(),
  );
  const at = marked && boxIn(origin, marked);
  const centre = at ? { x: at.x + at.width / 2, y: at.y + at.height / 2 } : { x: 0, y: 0 };
  const whole = boxIn(origin, drawing);
  // Not over the dimension line at the foot.
  const bounds = { ...whole, height: whole.height - metrics.value.text * 2.6 };
  const all = (selector: string) => [...drawing.querySelectorAll(selector)].map((one) => boxIn(origin, one));
  const segment = (of: Element) => {
    const value = (name: string): number => Number(of.getAttribute(name));
    return {
      x1: bounds.x + value("x1"),
      y1: bounds.y + value("y1"),
      x2: bounds.x + value("x2"),
      y2: bounds.y + value("y2"),
    };
  };
  const away = { x1: -1, y1: -1, x2: -1, y2: -1 };
  const line = hero ? segment(hero) : away;
  const axes = [...drawing.querySelectorAll(".axis line")].map(segment);
  const zero = all(".zero")[0]?.y ?? bounds.y;
  const scene = {
    bounds,
    zero,
    line,
    axes,
    handles: all(".handle"),
    arrows: all(".torque.edge, .nodebar"),
    labels: all(".labels text"),
    point: centre,
  };
  const { width, height } = panel.getBoundingClientRect();
  const r = at ? Math.min(20, Math.max(at.width, at.height) / 2 + 4) : 0;
  return { ...dockPanel(width, height, scene), point: at ? { ...centre, r } : null };
}

function Panel({ id }: { id: WorkingId }) {
  const ref = useRef<HTMLElement>(null);
  const [spot, setSpot] = useState<PanelSpot | null>(null);
  const shown = workingOf(id, {
    state: bench.value,
    point: point.value,
    vehicle: vehicle.value,
    units: units.value,
    turns: turns.value,
    perOf: perOf.value,
  });
  const { text } = metrics.value;
  useLayoutEffect(() => {
    if (ref.current) setSpot(findSpot(ref.current, shown.point));
  }, [id, leverDrawn.value, point.value, text]);
  const size = ref.current?.getBoundingClientRect();
  return (
    <>
      {spot && size && <Leader spot={spot} width={size.width} height={size.height} />}
      <aside
        ref={ref}
        class="working"
        aria-live="off"
        aria-label={t.working.of(shown.title)}
        style={spot ? { left: `${spot.x}px`, top: `${spot.y}px` } : { visibility: "hidden" }}
      >
        <h3>
          <span>{t.working.of(shown.title)}</span>
          <button type="button" class="iconbtn" aria-label={t.close} onClick={() => (working.value = null)}>
            <Icon name="close" />
          </button>
        </h3>
        <WorkingLines shown={shown} />
        {shown.also && <WorkingLines shown={shown.also} />}
        <p>{shown.note}</p>
      </aside>
    </>
  );
}

/** The open working, if any. A press elsewhere or Esc closes it. */
export function WorkingPanel() {
  const id = working.value;
  useEffect(() => {
    if (id === null) return;
    const press = (event: PointerEvent): void => {
      const target = event.target instanceof Element ? event.target : null;
      const stays = target?.closest(
        ".working, .grab, .vernier, .torque-row, .number, .typed, button, select",
      );
      if (!stays) working.value = null;
    };
    document.addEventListener("pointerdown", press);
    return () => document.removeEventListener("pointerdown", press);
  }, [id]);
  return id === null ? null : <Panel key={id} id={id} />;
}
