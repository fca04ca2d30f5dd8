import { useEffect, useRef, useState } from "preact/hooks";
import type { PartId } from "../scene/contract.ts";
import { gearLook, look } from "../state/gear-look.ts";
import { t } from "../texts/catalogue.ts";
import { useSize } from "../ui/use-size.ts";
import { GearFlat } from "./GearFlat.tsx";
import type { GearSource } from "./gear-source.ts";
import { hostScene, modelOf, type SceneHost } from "./scene-host.ts";

interface Grab {
  readonly part: PartId | null;
  x: number;
  y: number;
  moved: number;
}

function usePointer(host: { current: SceneHost | null }, turn: GearSource["turn"]) {
  const grab = useRef<Grab | null>(null);
  const place = (event: PointerEvent | WheelEvent): readonly [number, number] => [
    event.offsetX,
    event.offsetY,
  ];
  return {
    onPointerDown: (event: PointerEvent) => {
      const [x, y] = place(event);
      const orbits = event.button !== 0 || event.altKey;
      (event.currentTarget as Element).setPointerCapture(event.pointerId);
      grab.current = { part: orbits ? null : (host.current?.scene.pickAt(x, y) ?? null), x, y, moved: 0 };
    },
    onPointerMove: (event: PointerEvent) => {
      const [x, y] = place(event);
      const scene = host.current?.scene;
      const held = grab.current;
      if (!scene) return;
      if (!held) {
        host.current?.hover(scene.pickAt(x, y));
        return;
      }
      held.moved += Math.abs(x - held.x) + Math.abs(y - held.y);
      if (held.part === null || !turn) scene.orbit(x - held.x, y - held.y, 1);
      else {
        const by = scene.dragAngle(held.part, held.x, held.y, x, y);
        if (by !== null) turn?.(held.part, by);
      }
      [held.x, held.y] = [x, y];
      host.current?.redraw();
    },
    onPointerUp: () => {
      const held = grab.current;
      grab.current = null;
      if (held && held.moved < 4) look({ selected: held.part });
    },
    onPointerCancel: () => {
      grab.current = null;
    },
    onPointerLeave: () => host.current?.hover(null),
    onContextMenu: (event: Event) => event.preventDefault(),
    onWheel: (event: WheelEvent) => {
      event.preventDefault();
      host.current?.scene.orbit(0, 0, event.deltaY < 0 ? 1.1 : 1 / 1.1);
      host.current?.redraw();
    },
  };
}

const ORBITS: Readonly<Record<string, readonly [number, number, number]>> = {
  ArrowLeft: [-16, 0, 1],
  ArrowRight: [16, 0, 1],
  ArrowUp: [0, -16, 1],
  ArrowDown: [0, 16, 1],
  "+": [0, 0, 1.1],
  "-": [0, 0, 1 / 1.1],
};

type Labels = ReturnType<SceneHost["scene"]["labelPlaces"]>;

/** One and the same, so that a frame without labels draws nothing anew. */
const NO_LABELS: Labels = [];

/** Labels of all parts, or of the one that is pointed at alone; the same ones while they lie the same. */
function labelsOf({ scene }: SceneHost, pointed: PartId | null): (before: Labels) => Labels {
  return (before) => {
    if (gearLook.peek().labels) return scene.labelPlaces();
    const place = pointed && scene.labelPlaces().find(({ part }) => part === pointed);
    if (!place) return NO_LABELS;
    return before.length === 1 && before[0] === place ? before : [place];
  };
}

const PartLabels = ({ places }: { places: Labels }) => (
  <div class="part-labels" aria-hidden="true">
    <svg>
      {places.map(({ part, x, y, anchorX, anchorY }) => (
        <line key={part} x1={x} y1={y} x2={anchorX} y2={anchorY} />
      ))}
    </svg>
    {places.map(({ part, x, y }) => (
      <span key={part} style={{ left: `${x}px`, top: `${y}px` }}>
        {t.gear.parts[part]}
      </span>
    ))}
  </div>
);

type State = "loading" | "ready" | "none";

/** The canvas of view A with its scene. Without a graphics device it says so and everything else works. */
export function GearCanvas({ source }: { source: GearSource }) {
  const { ref, width, height } = useSize<HTMLDivElement>();
  const canvas = useRef<HTMLCanvasElement>(null);
  const host = useRef<SceneHost | null>(null);
  const [state, setState] = useState<State>("loading");
  const [places, setPlaces] = useState<Labels>(NO_LABELS);
  const pointer = usePointer(host, source.turn);
  useEffect(() => {
    let gone = false;
    import("../scene/gear-scene.ts")
      .then(({ createGearScene }) => {
        if (gone || !canvas.current) return;
        const made = hostScene(createGearScene(canvas.current, modelOf(source)), source);
        made.onDrawn = () => setPlaces(labelsOf(made, source.pointed?.peek() ?? null));
        host.current = made;
        setState("ready");
      })
      .catch(() => setState("none"));
    return () => {
      gone = true;
      host.current?.dispose();
      host.current = null;
    };
  }, []);
  useEffect(() => {
    if (!host.current) return;
    host.current.shown = width > 0;
    if (width > 0) host.current.resize(width, height);
  }, [state, width, height]);
  const onKeyDown = (event: KeyboardEvent): void => {
    const by = ORBITS[event.key];
    if (!by) return;
    event.preventDefault();
    host.current?.scene.orbit(...by);
    host.current?.redraw();
  };
  return (
    <div class="canvas" ref={ref}>
      <canvas
        ref={canvas}
        hidden={state === "none"}
        tabIndex={0}
        role="img"
        aria-label={source.turn ? t.gear.canvas : t.gear.canvasDriven}
        aria-describedby={source.words}
        onKeyDown={onKeyDown}
        {...pointer}
      />
      {state === "loading" && <p class="canvas-note">{t.gear.loading}</p>}
      {state === "none" && <GearFlat source={source} width={width} height={height} />}
      <PartLabels places={places} />
    </div>
  );
}
