const MINUS = "\u2212";
const THIN = "\u202f";

/**
 * A number for reading: true minus, thin spaces in thousands, never "−0"; a dash for what is no number.
 * @param decimals shown after the point
 */
export function readable(value: number, decimals = 0): string {
  if (!Number.isFinite(value)) return "–";
  const digits = Math.abs(value).toFixed(decimals);
  const [whole = "0", part] = digits.split(".");
  const grouped = whole.replace(/\B(?=(\d{3})+(?!\d))/g, THIN);
  const sign = value < 0 && Number(digits) !== 0 ? MINUS : "";
  return `${sign}${grouped}${part === undefined ? "" : `.${part}`}`;
}

/** The same without needless zeros: 2.5, 2.571. */
export function brief(value: number, decimals = 3): string {
  const text = readable(value, decimals);
  return text.includes(".") ? text.replace(/\.?0+$/, "") : text;
}
