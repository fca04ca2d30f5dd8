/** A panel's corner, and the point that it explains. */
export interface PanelSpot {
  readonly x: number;
  readonly y: number;
  readonly point: { readonly x: number; readonly y: number; readonly r: number } | null;
}

interface LeaderProps {
  readonly spot: PanelSpot;
  readonly width: number;
  readonly height: number;
}

/** A line from the panel's nearer edge to the ring round the point. */
export function Leader({ spot, width, height }: LeaderProps) {
  if (!spot.point) return null;
  const { x, y, r } = spot.point;
  const fromX = x < spot.x ? spot.x : x > spot.x + width ? spot.x + width : Math.min(x, spot.x + width - 12);
  const fromY =
    x < spot.x || x > spot.x + width
      ? Math.min(spot.y + 20, spot.y + height)
      : y < spot.y
        ? spot.y
        : spot.y + height;
  const length = Math.hypot(fromX - x, fromY - y) || 1;
  return (
    <svg class="leader" aria-hidden="true">
      <circle cx={x} cy={y} r={r} />
      <line x1={fromX} y1={fromY} x2={x + ((fromX - x) / length) * r} y2={y + ((fromY - y) / length) * r} />
    </svg>
  );
}
