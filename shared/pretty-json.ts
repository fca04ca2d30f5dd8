const isNumberList = (value: readonly unknown[]): boolean =>
  value.length > 0 && value.every((one) => typeof one === "number" || one === null);

/**
 * Plain data as JSON for people: two blanks a level, but lists of numbers on one line. Written in one pass, for a day's
 * recording has half a million numbers.
 * @param value as of `JSON.parse`; what has no value is left out
 * @param margin blanks before every line but the first
 */
export function prettyJson(value: unknown, margin = ""): string {
  const inner = `${margin}  `;
  if (Array.isArray(value)) {
    if (value.length === 0) return "[]";
    if (isNumberList(value)) return JSON.stringify(value).replaceAll(",", ", ");
    const items = value.map((one) => `${inner}${prettyJson(one ?? null, inner)}`);
    return `[\n${items.join(",\n")}\n${margin}]`;
  }
  if (typeof value === "object" && value !== null) {
    const fields = Object.entries(value)
      .filter(([, one]) => one !== undefined)
      .map(([name, one]) => `${inner}${JSON.stringify(name)}: ${prettyJson(one, inner)}`);
    return fields.length === 0 ? "{}" : `{\n${fields.join(",\n")}\n${margin}}`;
  }
  return JSON.stringify(value);
}
