import { useLayoutEffect, useRef, useState } from "preact/hooks";
import { hidden } from "../state/predict.ts";
import { balances, now, playing, run } from "../state/road.ts";
import { type RoadWorkingId, roadWorking } from "../state/road-working.ts";
import { units } from "../state/settings.ts";
import { t } from "../texts/catalogue.ts";
import { Icon } from "../ui/icons.tsx";
import { Leader, type PanelSpot } from "../ui/Leader.tsx";
import { metrics } from "../ui/metrics.ts";
import { WorkingLines, type WorkingText } from "../ui/WorkingLines.tsx";
import { figuresShown } from "./figures-shown.ts";
import { dockNear } from "./working/dock.ts";
import { roadSource } from "./working/source.ts";
import { roadWorkingOf } from "./working/working.ts";

/** While something is asked for, no number of a formula may tell it. */
const masked = (shown: WorkingText): WorkingText => ({
  ...shown,
  live: [{ text: "?" }],
  result: { text: "?" },
  note: t.roadWorking.asked,
});

/** The open working with its values at the cursor; null without one. */
export function openWorking(id: RoadWorkingId): WorkingText | null {
  const [one, at] = [run.value, now.value];
  if (!one || !at || at.row >= one.log.rows) return null;
  const balance = balances.value.get(one.id) ?? null;
  const shown = roadWorkingOf(id, roadSource(one, at.row, units.value, balance));
  return shown && hidden.value.size > 0 ? masked(shown) : shown;
}

const boxIn = (origin: DOMRect, element: Element) => {
  const { left, top, width, height } = element.getBoundingClientRect();
  return { x: left - origin.left, y: top - origin.top, width, height };
};

/** Most of what is marked that the ring round it may be, px. */
const MOST_RING = 22;

function pointIn(view: Element, origin: DOMRect, id: string): PanelSpot["point"] {
  const marked = [...view.querySelectorAll(`[data-point="${id}"]`)].find(
    (one) => one.getBoundingClientRect().width > 0,
  );
  if (!marked) return null;
  const { x, y, width, height } = boxIn(origin, marked);
  const r = Math.min(MOST_RING, Math.max(width, height) / 2 + 4);
  return { x: x + width / 2, y: y + height / 2, r };
}

/** What a panel never covers, and what it had better not: numbers, names, the point of the map. */
const KEEPS = ".r-lever .handle";
const SPARES = "svg text, .r-time-view b, .r-time-view dd, .moments li, .map-live .disc, .transport";

/** A free corner for the panel: near its point, clear of it and of the handles of the lever line. */
function findSpot(panel: HTMLElement, id: string): PanelSpot | null {
  const view = panel.closest(".road");
  if (!view) return null;
  const origin = view.getBoundingClientRect();
  const point = pointIn(view, origin, id);
  const { width, height } = panel.getBoundingClientRect();
  const near = point ?? { x: origin.width * 0.6, y: origin.height * 0.4, r: 0 };
  const boxes = (selector: string) => [...view.querySelectorAll(selector)].map((one) => boxIn(origin, one));
  const corner = dockNear(width, height, {
    bounds: { x: 6, y: 6, width: origin.width - 16, height: origin.height - 16 },
    point: near,
    keep: boxes(KEEPS),
    spare: boxes(SPARES),
  });
  return { ...corner, point };
}

/** Times a second that the leader follows its point while a run plays. */
const FOLLOWS = 4;

function Panel({ id }: { id: RoadWorkingId }) {
  const ref = useRef<HTMLElement>(null);
  const [spot, setSpot] = useState<PanelSpot | null>(null);
  const shown = openWorking(id);
  const time = now.value?.time ?? 0;
  const beat = playing.value ? Math.floor(time * FOLLOWS) : time;
  const { text, compact } = metrics.value;
  useLayoutEffect(() => {
    if (ref.current) setSpot(findSpot(ref.current, id));
  }, [id, text, compact, shown === null]);
  useLayoutEffect(() => {
    const view = ref.current?.closest(".road");
    if (!view || !spot) return;
    const point = pointIn(view, view.getBoundingClientRect(), id);
    const same = point?.x === spot.point?.x && point?.y === spot.point?.y;
    if (!same) setSpot({ ...spot, point });
  }, [beat]);
  if (!shown) return null;
  const size = ref.current?.getBoundingClientRect();
  return (
    <>
      {spot && size && <Leader spot={spot} width={size.width} height={size.height} />}
      <aside
        ref={ref}
        class="working road-working"
        aria-live="off"
        aria-label={t.working.of(shown.title)}
        style={spot ? { left: `${spot.x}px`, top: `${spot.y}px` } : { visibility: "hidden" }}
      >
        <h3>
          <span>{t.working.of(shown.title)}</span>
          <button
            type="button"
            class="iconbtn"
            aria-label={t.close}
            onClick={() => {
              roadWorking.value = null;
            }}
          >
            <Icon name="close" />
          </button>
        </h3>
        <WorkingLines shown={shown} />
        <p>{shown.note}</p>
      </aside>
    </>
  );
}

/** What moves the cursor or the values does not close a working. */
const STAYS = ".working, button, select, input, [data-point], .r-time-view, .transport, .pedals, .canvas";

/**
 * The open working of Road, if any. A press elsewhere or Esc closes it. Figures of a run show theirs on their own
 * sheet while that is open.
 */
export function RoadWorking() {
  const id = roadWorking.value;
  // As soon as it is open, not only once it is painted: Esc at once closes it too.
  useLayoutEffect(() => {
    if (id === null) return;
    const press = (event: PointerEvent): void => {
      const target = event.target instanceof Element ? event.target : null;
      if (!target?.closest(STAYS)) roadWorking.value = null;
    };
    const key = (event: KeyboardEvent): void => {
      if (event.key !== "Escape") return;
      event.preventDefault();
      event.stopPropagation();
      roadWorking.value = null;
    };
    document.addEventListener("pointerdown", press);
    document.addEventListener("keydown", key, true);
    return () => {
      document.removeEventListener("pointerdown", press);
      document.removeEventListener("keydown", key, true);
    };
  }, [id]);
  if (id === null || (figuresShown.value && id.startsWith("figure:"))) return null;
  return <Panel key={id} id={id} />;
}
