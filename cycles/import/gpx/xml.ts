import { XMLParser, XMLValidator } from "fast-xml-parser";
import type { FaultList } from "../faults.ts";

/** An element of the file: attributes under `@name`, children under their names. */
export type Element = Readonly<Record<string, unknown>>;

/**
 * Parses a file that `guardGpx` has let through.
 * @param prefix of the file's own elements
 * @returns the root element
 * @throws InputError naming line and column where the XML is broken
 */
export function parseGpx(text: string, prefix: string, faults: FaultList): Element {
  const checked = XMLValidator.validate(text);
  if (checked !== true) {
    const { msg, line, col } = checked.err;
    const part = `line ${line}, column ${col}`;
    faults.stop("The file is not sound XML.", { part }, msg, "every element closed, in order");
  }
  const many = new Set(["trk", "trkseg", "trkpt", "rte"].map((name) => prefix + name));
  const parser = new XMLParser({
    ignoreAttributes: false,
    attributeNamePrefix: "@",
    parseTagValue: false,
    parseAttributeValue: false,
    trimValues: true,
    // Turns numbered characters (&#60;) as well.
    htmlEntities: true,
    // What makers of receivers add is kept as text and never looked into.
    stopNodes: [`..${prefix}extensions`],
    isArray: (name) => many.has(name),
  });
  const root = parsed(parser, text, faults);
  const gpx = isElement(root) ? root[`${prefix}gpx`] : undefined;
  if (isElement(gpx)) return gpx;
  return faults.stop("The file holds no gpx element.", {}, "", "one gpx element around everything");
}

function parsed(parser: XMLParser, text: string, faults: FaultList): unknown {
  try {
    return parser.parse(text) as unknown;
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    return faults.stop("The file is not sound XML.", {}, message, "every element closed, in order");
  }
}

const isElement = (value: unknown): value is Element =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** Children of a name, empty ones too, in order. */
export function children(element: Element, name: string): Element[] {
  const found = element[name];
  const list = Array.isArray(found) ? (found as unknown[]) : found === undefined ? [] : [found];
  // An element without content is parsed as an empty text.
  return list.map((child) => (isElement(child) ? child : {}));
}

/** Text of the first child of a name; undefined when there is none. */
export function textOf(element: Element, name: string): string | undefined {
  const found = element[name];
  const first = Array.isArray(found) ? (found as unknown[])[0] : found;
  if (typeof first === "string") return first;
  // With attributes on it the text is a part of the element.
  return isElement(first) && typeof first["#text"] === "string" ? first["#text"] : undefined;
}

/** Value of an attribute; undefined when there is none. */
export function attribute(element: Element, name: string): string | undefined {
  const found = element[`@${name}`];
  return typeof found === "string" ? found : undefined;
}
