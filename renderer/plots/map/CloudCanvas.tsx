import { useLayoutEffect, useRef } from "preact/hooks";
import { projector, theme } from "../../state/settings.ts";
import type { Cloud } from "./cloud.ts";
import type { MapFrame } from "./frame.ts";
import { FAMILIES, FAMILY_COLOUR, markPath } from "./marks.ts";

interface CloudProps {
  readonly cloud: Cloud;
  readonly frame: MapFrame;
  readonly width: number;
  readonly height: number;
  readonly radius: number;
}

/** Marks let each other show through. */
const ALPHA = 0.62;

function draw(canvas: HTMLCanvasElement, { cloud, frame, width, height, radius }: CloudProps): void {
  const scale = window.devicePixelRatio || 1;
  canvas.width = Math.round(width * scale);
  canvas.height = Math.round(height * scale);
  const pen = canvas.getContext("2d");
  if (!pen) return;
  const style = getComputedStyle(canvas);
  pen.scale(scale, scale);
  pen.globalAlpha = ALPHA;
  for (const family of FAMILIES) {
    const marks = cloud.marks[family];
    pen.fillStyle = style.getPropertyValue(FAMILY_COLOUR[family]);
    pen.beginPath();
    for (let i = 0; i + 1 < marks.length; i += 2) {
      markPath(pen, family, frame.x(marks[i] ?? 0), frame.y(marks[i + 1] ?? 0), radius);
    }
    pen.fill();
  }
}

/** The run's rows at the wheels, drawn once for each run, size and theme. */
export function CloudCanvas(props: CloudProps) {
  const ref = useRef<HTMLCanvasElement>(null);
  const { cloud, frame } = props;
  const look = `${theme.value} ${projector.value}`;
  useLayoutEffect(() => {
    if (ref.current) draw(ref.current, props);
  }, [cloud, frame, look]);
  return <canvas ref={ref} class="cloud" aria-hidden="true" />;
}
