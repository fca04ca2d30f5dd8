import type { SceneLook } from "./contract.ts";
import { TONES, type Tone } from "./tones.ts";

/** A colour as sRGB shares 0–1, as drawn: nothing in the scene is computed in linear light. */
export type Rgb = readonly [number, number, number];

/** A metal: colour where it faces the light, of its front face, and turned away. */
export interface Metal {
  readonly hi: Rgb;
  readonly face: Rgb;
  readonly lo: Rgb;
}

/** Colours of a cut face: ground and hatch. */
export interface Hatched {
  readonly ground: Rgb;
  readonly line: Rgb;
}

/** All colours of the scene in one theme. */
export interface Palette {
  readonly metals: Readonly<Record<Tone, Metal>>;
  readonly sections: Readonly<Record<"sun" | "carrier" | "ring", Hatched>>;
  /** Strokes in the shafts' colours: arrows and the outline of a chosen part. */
  readonly strokes: Readonly<Record<"sun" | "carrier" | "ring" | "planet", Rgb>>;
  /** Fill of torque arrows; on dark metal they are bright with a dark line. */
  readonly fills: Readonly<Record<"sun" | "carrier" | "ring", Rgb>>;
  /** Whether arrows are lined in their shaft's colour or like an edge. */
  readonly arrowLine: "shaft" | "edge";
  readonly edge: Rgb;
  /** Edge of things that lie on the sheet and not on metal. */
  readonly ink: Rgb;
  readonly faint: Rgb;
  readonly sheet: Rgb;
  readonly shadow: Rgb;
  readonly shadowStrength: number;
  /** All line weights are multiplied by this. */
  readonly weight: number;
  /** Distance and width of section hatch, CSS pixels. */
  readonly hatchPitch: number;
  readonly hatchWidth: number;
}

/** `#RRGGBB` to shares. */
export function rgb(hex: string): Rgb {
  const value = Number.parseInt(hex.slice(1), 16);
  return [((value >> 16) & 255) / 255, ((value >> 8) & 255) / 255, (value & 255) / 255];
}

const metal = (hi: string, face: string, lo: string): Metal => ({
  hi: rgb(hi),
  face: rgb(face),
  lo: rgb(lo),
});
const hatched = (ground: string, line: string): Hatched => ({ ground: rgb(ground), line: rgb(line) });

/** The values are those of the style sheet's tokens (`--g-…` for metals, `--…-line`, `--…-tint`, `--ink`). */
const light: Palette = {
  metals: {
    sun: metal("#EFD3E2", "#D9A6C2", "#6E3A58"),
    planet: metal("#EEF1F1", "#C9D0D2", "#5B666B"),
    carrier: metal("#F7C9A6", "#E38B4A", "#7A3300"),
    ring: metal("#C4DDED", "#7FB2D3", "#1B4766"),
    bearing: metal("#C3CACC", "#8F989C", "#3E474B"),
    paint: metal("#FFFFFF", "#FFFFFF", "#C9D0D2"),
    "sun winding": metal("#DDA3C4", "#B4568A", "#5B2243"),
    "ring winding": metal("#6FAEDA", "#2F7FB5", "#0D3552"),
    magnet: metal("#8D979B", "#566167", "#262E32"),
    tyre: metal("#98A4AA", "#6B767B", "#33403F"),
    key: metal("#566167", "#465157", "#182024"),
  },
  sections: {
    sun: hatched("#F1DCE8", "#B4568A"),
    carrier: hatched("#F6DCC8", "#D55E00"),
    ring: hatched("#DCEBF5", "#0072B2"),
  },
  strokes: { sun: rgb("#B4568A"), carrier: rgb("#D55E00"), ring: rgb("#0072B2"), planet: rgb("#465157") },
  fills: { sun: rgb("#FFFFFF"), carrier: rgb("#FFFFFF"), ring: rgb("#FFFFFF") },
  arrowLine: "shaft",
  edge: rgb("#182024"),
  ink: rgb("#182024"),
  faint: rgb("#566167"),
  sheet: rgb("#F4F6F4"),
  shadow: rgb("#182024"),
  shadowStrength: 0.15,
  weight: 1,
  hatchPitch: 6,
  hatchWidth: 1.1,
};

const dark: Palette = {
  metals: {
    sun: metal("#E9B9D2", "#B0668F", "#3A1D2E"),
    planet: metal("#D3DADD", "#87939A", "#2A3338"),
    carrier: metal("#FFB480", "#BC5A14", "#431B00"),
    ring: metal("#9CCBEA", "#2F6E98", "#0B2738"),
    bearing: metal("#98A4AA", "#56646C", "#1B2226"),
    paint: metal("#FFFFFF", "#FFFFFF", "#B6C0C5"),
    "sun winding": metal("#D98BB5", "#8E4069", "#30131F"),
    "ring winding": metal("#62B9F0", "#1D5580", "#081D2B"),
    magnet: metal("#7B868C", "#3D4A52", "#11171B"),
    tyre: metal("#7B868C", "#46535A", "#161D22"),
    key: metal("#29343B", "#182026", "#080B0D"),
  },
  sections: {
    sun: hatched("#452A3A", "#D98BB5"),
    carrier: hatched("#4A2A15", "#F0751B"),
    ring: hatched("#12374F", "#3D9EDB"),
  },
  strokes: { sun: rgb("#D98BB5"), carrier: rgb("#F0751B"), ring: rgb("#3D9EDB"), planet: rgb("#B6C0C5") },
  fills: { sun: rgb("#F7DCEA"), carrier: rgb("#FFD9BF"), ring: rgb("#D3EAFA") },
  arrowLine: "edge",
  edge: rgb("#080B0D"),
  ink: rgb("#E8EDEF"),
  faint: rgb("#98A4AA"),
  sheet: rgb("#11171B"),
  shadow: rgb("#000000"),
  shadowStrength: 0.5,
  weight: 1,
  hatchPitch: 6,
  hatchWidth: 1.1,
};

/** Projector: heavier lines, wider hatch, black or white ground. */
const PROJECTED = { weight: 1.6, hatchPitch: 9, hatchWidth: 1.6 };

const projectorLight: Palette = {
  ...light,
  ...PROJECTED,
  sections: {
    sun: hatched("#F1DCE8", "#9C3F74"),
    carrier: hatched("#F6DCC8", "#B84F00"),
    ring: hatched("#DCEBF5", "#005F96"),
  },
  strokes: { sun: rgb("#9C3F74"), carrier: rgb("#B84F00"), ring: rgb("#005F96"), planet: rgb("#22292D") },
  ink: rgb("#000000"),
  faint: rgb("#363F44"),
  sheet: rgb("#FFFFFF"),
};

const projectorDark: Palette = {
  ...dark,
  ...PROJECTED,
  ink: rgb("#FFFFFF"),
  faint: rgb("#C0C9CD"),
  sheet: rgb("#000000"),
  // A shadow cannot be seen on black.
  shadowStrength: 0,
};

/** The palette for a look. */
export function paletteFor(look: Pick<SceneLook, "theme" | "projector">): Palette {
  if (look.theme === "light") return look.projector ? projectorLight : light;
  return look.projector ? projectorDark : dark;
}

/** The metals in the order of {@link TONES}, as the shaders want them: face, hi and lo of each. */
export const metalTable = (palette: Palette): Rgb[] =>
  TONES.flatMap((tone) => {
    const { face, hi, lo } = palette.metals[tone];
    return [face, hi, lo];
  });
