import { html, type Markup } from "../../shared/html.ts";

/** Colours of the light theme: line tier, ink tier for text, tint under patterns. */
export const COLOUR = {
  ink: "#182024",
  ink2: "#465157",
  rule: "#BAC3C0",
  grid: "#E0E5E2",
  carrier: "#D55E00",
  carrierInk: "#A84A00",
  carrierTint: "#F6DCC8",
  sun: "#B4568A",
  sunInk: "#96396D",
  ring: "#0072B2",
  ringInk: "#00609A",
  ringTint: "#CFE3F0",
  battery: "#008A64",
  batteryInk: "#00694D",
  batteryTint: "#CDE9DF",
  fuel: "#A87400",
  fuelInk: "#7A5200",
  fuelTint: "#F8E6BF",
  loss: "#757E83",
  lossInk: "#555D61",
  lossTint: "#DEE2E3",
} as const;

/** A coordinate with one decimal. */
export const px = (value: number): string => String(Math.round(value * 10) / 10);

/** Kinds of energy by pattern: mechanical hatch, electrical lines, chemical dots, heat waves. */
export type Kind = "mechanical" | "electrical" | "chemical" | "heat";

/** Hues that a pattern comes in. */
export type Hue = "ring" | "battery" | "fuel" | "loss";

/** Fill of a kind in a hue. */
export const fillOf = (kind: Kind, hue: Hue): string => `url(#${kind}-${hue})`;

function patternOf(kind: Kind, hue: Hue): Markup {
  const [line, tint] = [COLOUR[hue], COLOUR[`${hue}Tint`]];
  const id = `${kind}-${hue}`;
  switch (kind) {
    case "mechanical":
      return html`<pattern id="${id}" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect width="6" height="6" fill="${tint}"/><path d="M0 0V6" stroke="${line}" stroke-width="2.2"/></pattern>`;
    case "electrical":
      return html`<pattern id="${id}" width="5" height="5" patternUnits="userSpaceOnUse"><rect width="5" height="5" fill="${tint}"/><path d="M0 2.5H5" stroke="${line}" stroke-width="1.5"/></pattern>`;
    case "chemical":
      return html`<pattern id="${id}" width="7" height="7" patternUnits="userSpaceOnUse"><rect width="7" height="7" fill="${tint}"/><circle cx="1.75" cy="1.75" r="1.35" fill="${line}"/><circle cx="5.25" cy="5.25" r="1.35" fill="${line}"/></pattern>`;
    case "heat":
      return html`<pattern id="${id}" width="12" height="8" patternUnits="userSpaceOnUse"><rect width="12" height="8" fill="${tint}"/><path d="M0 4q3 -4.4 6 0t6 0" fill="none" stroke="${line}" stroke-width="1.1"/></pattern>`;
  }
}

/** Patterns of the ledger picture, once a page. */
export const patternDefs = (): Markup =>
  html`<svg width="0" height="0" style="position:absolute" aria-hidden="true"><defs>${[
    patternOf("chemical", "fuel"),
    patternOf("heat", "loss"),
    patternOf("mechanical", "ring"),
    patternOf("electrical", "battery"),
    patternOf("chemical", "battery"),
  ]}</defs></svg>`;

/** Least of 1, 2, 2.5, 5 × 10ⁿ that divides a range into at most a number of parts. */
export function niceStep(range: number, parts: number): number {
  if (!(range > 0)) return 1;
  const power = 10 ** Math.floor(Math.log10(range / parts));
  const found = [1, 2, 2.5, 5, 10].find((factor) => range / (factor * power) <= parts);
  return (found ?? 10) * power;
}
