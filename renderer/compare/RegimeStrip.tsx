import { useEffect, useRef } from "preact/hooks";
import type { ComparisonRow } from "../../sim/study/compare/row.ts";
import { fillFor, paletteOf } from "../plots/time/inks.ts";
import { regimeIndex, regimeLook } from "../plots/time/regime-look.ts";
import { num } from "../state/format.ts";
import { theme } from "../state/settings.ts";
import { t } from "../texts/catalogue.ts";

const WIDTH = 200;
const HEIGHT = 16;

/** Seconds in each regime as one strip to one scale, in the patterns of the lanes; in words for readers. */
export function RegimeStrip({ row }: { row: ComparisonRow }) {
  const ref = useRef<HTMLCanvasElement>(null);
  const all = row.regimes.reduce((sum, { seconds }) => sum + seconds, 0);
  useEffect(() => {
    const canvas = ref.current;
    if (!canvas) return;
    const ratio = window.devicePixelRatio;
    canvas.width = WIDTH * ratio;
    canvas.height = HEIGHT * ratio;
    const pen = canvas.getContext("2d");
    if (!pen) return;
    const palette = paletteOf(canvas);
    pen.strokeStyle = palette("ink-2");
    pen.lineWidth = 0.75 * ratio;
    let x = 0;
    for (const { id, seconds } of row.regimes) {
      const width = (seconds / all) * WIDTH * ratio;
      const look = regimeLook(regimeIndex(id));
      pen.fillStyle = fillFor(pen, palette, look.fill, look.ink, ratio);
      pen.fillRect(x, 0, width, HEIGHT * ratio);
      if (width > 3 * ratio) pen.strokeRect(x, 0.5, width, HEIGHT * ratio - 1);
      x += width;
    }
  }, [row, theme.value]);
  const words = row.regimes
    .map(({ id, seconds }) => `${t.roadRegimes[id]?.title ?? id} ${num(seconds / 60, 1)} min`)
    .join(", ");
  return (
    <canvas
      ref={ref}
      class="regime-strip"
      style={{ width: `${WIDTH}px`, height: `${HEIGHT}px` }}
      role="img"
      aria-label={words}
      title={words}
    />
  );
}
