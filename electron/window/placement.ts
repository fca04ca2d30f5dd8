import type { WindowState } from "../settings.ts";

/** A rectangle on the desktop, px. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The sheets are drawn for this and more. */
export const LEAST = { width: 1280, height: 720 } as const;

const FIRST = { width: 1600, height: 900 } as const;

/** So much of the window, px, must lie on a display for it to be found and moved. */
const GRIP = 120;

/**
 * Where to open the window.
 * @param saved where it was; null at the first start
 * @param areas usable part of each display, the main one first; at least one
 * @returns inside the display it mostly was on; centred on the main one if that display is gone. Never smaller than
 * `LEAST`, even on a smaller display: the upper left corner is visible then.
 */
export function placeWindow(saved: WindowState | null, areas: readonly [Box, ...Box[]]): Box {
  const [main] = areas;
  if (!saved) return centred(FIRST, main);
  const { bounds } = saved;
  const home = areas.reduce((best, area) => (overlap(bounds, area) > overlap(bounds, best) ? area : best));
  if (overlap(bounds, home) < GRIP * GRIP) return centred(bounds, main);
  const size = fitted(bounds, home);
  return {
    ...size,
    x: clamp(bounds.x, home.x, home.x + home.width - size.width),
    y: clamp(bounds.y, home.y, home.y + home.height - size.height),
  };
}

function centred(size: Pick<Box, "width" | "height">, area: Box): Box {
  const { width, height } = fitted(size, area);
  return {
    width,
    height,
    x: Math.max(area.x, Math.round(area.x + (area.width - width) / 2)),
    y: Math.max(area.y, Math.round(area.y + (area.height - height) / 2)),
  };
}

const fitted = (size: Pick<Box, "width" | "height">, area: Box): Pick<Box, "width" | "height"> => ({
  width: Math.max(LEAST.width, Math.min(size.width, area.width)),
  height: Math.max(LEAST.height, Math.min(size.height, area.height)),
});

/** The lower end wins when the room is too small. */
const clamp = (value: number, low: number, high: number): number => Math.max(low, Math.min(value, high));

function overlap(a: Box, b: Box): number {
  const width = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
  const height = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
  return Math.max(0, width) * Math.max(0, height);
}
