/** Whose colour: one of the hues of the style sheet. */
export type Ink = "carrier" | "sun" | "ring" | "battery" | "fuel" | "loss";

/** What an area is filled with: the pattern of a kind of power, the hue's line colour, or its tint. */
export type Fill = "mech" | "elec" | "chem" | "heat" | "solid" | "plain";

/** Colours of the page as they are now, by their names in the style sheet without the dashes. */
export type Palette = (name: string) => string;

/** Reads colours and sizes from the style sheet as it holds for an element. */
export function paletteOf(element: Element): Palette {
  const style = getComputedStyle(element);
  const known = new Map<string, string>();
  return (name) => {
    const found = known.get(name) ?? style.getPropertyValue(`--${name}`).trim();
    known.set(name, found);
    return found;
  };
}

interface Tile {
  readonly width: number;
  readonly height: number;
  readonly turned: number;
  readonly draw: (pen: CanvasRenderingContext2D) => void;
}

const pitchOf = (palette: Palette, name: string): number => Number.parseFloat(palette(name)) || 6;

/** One tile of a kind, in CSS px: what is repeated, and by how much it is turned, degrees. */
function tileOf(fill: Exclude<Fill, "solid" | "plain">, palette: Palette): Tile {
  if (fill === "mech") {
    const pitch = pitchOf(palette, "pat-mech-pitch");
    const draw = (pen: CanvasRenderingContext2D): void => pen.fillRect(0, 0, pitch * 0.18, pitch);
    return { width: pitch, height: pitch, turned: 45, draw };
  }
  if (fill === "elec") {
    const pitch = pitchOf(palette, "pat-elec-pitch");
    const draw = (pen: CanvasRenderingContext2D): void => pen.fillRect(0, pitch / 2 - 0.7, pitch, 1.4);
    return { width: pitch, height: pitch, turned: 0, draw };
  }
  if (fill === "chem") {
    const pitch = pitchOf(palette, "pat-chem-pitch") * 0.82;
    const draw = (pen: CanvasRenderingContext2D): void => {
      for (const part of [0.25, 0.75]) {
        pen.beginPath();
        pen.arc(pitch * part, pitch * part, pitch * 0.2, 0, 2 * Math.PI);
        pen.fill();
      }
    };
    return { width: pitch, height: pitch, turned: 0, draw };
  }
  const pitch = pitchOf(palette, "pat-heat-pitch");
  const draw = (pen: CanvasRenderingContext2D): void => {
    pen.lineWidth = 1.1;
    pen.beginPath();
    pen.moveTo(0, pitch * 0.35);
    pen.bezierCurveTo(pitch / 3, pitch * -0.1, (pitch * 2) / 3, pitch * 0.8, pitch, pitch * 0.35);
    pen.stroke();
  };
  return { width: pitch, height: pitch * 0.7, turned: 0, draw };
}

/**
 * What to fill with on a canvas.
 * @param scale device px a CSS px of the canvas; the pattern keeps its size on the screen
 */
export function fillFor(
  pen: CanvasRenderingContext2D,
  palette: Palette,
  fill: Fill,
  ink: Ink,
  scale: number,
): string | CanvasPattern {
  if (fill === "solid") return palette(`${ink}-line`);
  const tint = palette(`${ink}-tint`);
  if (fill === "plain") return tint;
  const tile = tileOf(fill, palette);
  const sheet = document.createElement("canvas");
  // A whole number of dots a tile, so that it repeats without seams; the pattern scales it to its true size.
  sheet.width = Math.max(1, Math.round(tile.width * scale));
  sheet.height = Math.max(1, Math.round(tile.height * scale));
  const own = sheet.getContext("2d");
  if (!own) return tint;
  own.fillStyle = tint;
  own.fillRect(0, 0, sheet.width, sheet.height);
  own.scale(sheet.width / tile.width, sheet.height / tile.height);
  own.fillStyle = palette(`${ink}-line`);
  own.strokeStyle = palette(`${ink}-line`);
  tile.draw(own);
  const pattern = pen.createPattern(sheet, "repeat");
  if (!pattern) return tint;
  pattern.setTransform(new DOMMatrix().rotate(tile.turned));
  return pattern;
}

/** A canvas of so many CSS px, ready to be drawn on in CSS px. */
export function sized(
  canvas: HTMLCanvasElement,
  width: number,
  height: number,
): CanvasRenderingContext2D | null {
  const scale = window.devicePixelRatio || 1;
  canvas.width = Math.round(width * scale);
  canvas.height = Math.round(height * scale);
  const pen = canvas.getContext("2d");
  pen?.setTransform(scale, 0, 0, scale, 0, 0);
  return pen;
}
