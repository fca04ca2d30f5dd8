import { useLayoutEffect, useRef } from "preact/hooks";
import { projector, theme } from "../../state/settings.ts";
import { fillFor, paletteOf, sized } from "./inks.ts";
import { regimeIndex, regimeLook } from "./regime-look.ts";

interface SwatchProps {
  readonly regime: string;
  /** px */
  readonly height: number;
}

/** A piece of a regime's lane. */
export function Swatch({ regime, height }: SwatchProps) {
  const ref = useRef<HTMLCanvasElement>(null);
  const width = Math.round(height * 1.8);
  const look = `${theme.value} ${projector.value}`;
  useLayoutEffect(() => {
    const canvas = ref.current;
    const pen = canvas && sized(canvas, width, height);
    const index = regimeIndex(regime);
    if (!canvas || !pen || index < 0) return;
    const palette = paletteOf(canvas);
    const { fill, ink } = regimeLook(index);
    const scale = window.devicePixelRatio || 1;
    pen.setTransform(1, 0, 0, 1, 0, 0);
    pen.fillStyle = fillFor(pen, palette, fill, ink, scale);
    pen.fillRect(0, 0, width * scale, height * scale);
    pen.setTransform(scale, 0, 0, scale, 0, 0);
    pen.strokeStyle = palette(`${ink}-line`);
    pen.strokeRect(0.5, 0.5, width - 1, height - 1);
  }, [regime, width, height, look]);
  return (
    <canvas
      ref={ref}
      class="regime-swatch"
      aria-hidden="true"
      style={{ width: `${width}px`, height: `${height}px` }}
    />
  );
}
