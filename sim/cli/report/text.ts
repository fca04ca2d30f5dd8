/** Widest line printed. */
export const WIDTH = 96;

/** What the lines of a section are indented by. */
const SECTION = "  ";

/** What stands for a figure that there is none of. */
const NONE = "–";

/** A number with a fixed count of decimals; a dash for what is no number or infinite. */
export function fixed(value: number, decimals: number): string {
  if (!Number.isFinite(value)) return NONE;
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace("-", "") : text;
}

/** A number with thousands apart by commas. */
export function grouped(value: number, decimals = 0): string {
  const [whole = "", ...rest] = fixed(value, decimals).split(".");
  return [whole.replace(/\B(?=(\d{3})+$)/g, ","), ...rest].join(".");
}

/** A number with so many digits that count, without trailing noughts. */
export const digits = (value: number, count: number): string =>
  Number.isFinite(value) ? String(Number(value.toPrecision(count))) : NONE;

/** Seconds as minutes and seconds, hours before them when there are any. */
export function clock(seconds: number): string {
  const two = (value: number): string => String(value).padStart(2, "0");
  const whole = Math.round(seconds);
  const hours = Math.floor(whole / 3600);
  const rest = `${two(Math.floor((whole % 3600) / 60))}:${two(whole % 60)}`;
  return hours > 0 ? `${hours}:${rest}` : rest;
}

/** A bar of text. @param share 0–1 of the full width */
export function bar(share: number, width: number): string {
  return "█".repeat(Math.round(Math.min(1, Math.max(0, share)) * width));
}

/** Breaks a text into lines at its blanks. @param indent put before every line */
export function wrap(text: string, indent = "", width = WIDTH - SECTION.length): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ")) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (line !== "" && indent.length + longer.length > width) {
      lines.push(indent + line);
      line = word;
    } else line = longer;
  }
  return [...lines, indent + line];
}

/** A text under a label: the label once, further lines indented to the same place. */
export function labelled(label: string, text: string, labelWidth: number): string[] {
  const indent = " ".repeat(labelWidth);
  const lines = wrap(text, indent);
  return lines.map((line, index) => (index === 0 ? label.padEnd(labelWidth) + line.slice(labelWidth) : line));
}

/**
 * Rows of cells as aligned columns, two blanks apart.
 * @param align a letter a column: l left, r right; the last left column is not padded
 */
export function columns(rows: readonly (readonly string[])[], align: string): string[] {
  const widths = [...align].map((_, c) => Math.max(0, ...rows.map((row) => row[c]?.length ?? 0)));
  return rows.map((row) =>
    row
      .map((cell, c) => (align[c] === "r" ? cell.padStart(widths[c] ?? 0) : cell.padEnd(widths[c] ?? 0)))
      .join("  ")
      .trimEnd(),
  );
}

/** A section of a report: a blank line, its title in capitals with its unit, its lines; nothing when it has none. */
export const section = (title: string, lines: readonly string[], unit = ""): string[] =>
  lines.length === 0
    ? []
    : ["", `${title.toUpperCase()}${unit}`, ...lines.map((line) => `${SECTION}${line}`.trimEnd())];
