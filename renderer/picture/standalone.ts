/** Properties that a drawing's look is made of; everything else follows from its structure. */
export const DRAWN_LOOK = [
  "fill",
  "fill-rule",
  "stroke",
  "stroke-width",
  "stroke-dasharray",
  "stroke-linecap",
  "stroke-linejoin",
  "opacity",
  "paint-order",
  "vector-effect",
  "font-family",
  "font-size",
  "font-style",
  "font-weight",
  "font-variant-numeric",
  "letter-spacing",
  "text-anchor",
  "visibility",
] as const;

/** Of every drawing. */
export const NAMESPACE = "http://www.w3.org/2000/svg";

/** Writes the look that the page's style sheet gives into the copy, element by element. */
function writeLook(from: Element, to: Element): void {
  const style = getComputedStyle(from);
  if (style.display === "none") {
    to.remove();
    return;
  }
  for (const name of DRAWN_LOOK) {
    const value = style.getPropertyValue(name);
    if (value) to.setAttribute(name, value.replace(/url\("?[^#"]*(#[^")]+)"?\)/, "url($1)"));
  }
  to.removeAttribute("class");
  to.removeAttribute("style");
  const copies = [...to.children];
  [...from.children].forEach((child, i) => {
    const copy = copies[i];
    if (copy) writeLook(child, copy);
  });
}

/** Names of everything that a drawing refers to. */
const references = (text: string): string[] =>
  [...text.matchAll(/url\(#([^)]+)\)/g)].map((match) => match[1] ?? "");

/** A copy of a drawing with the look of the page's style sheet written out. */
export function drawnLooks(svg: SVGSVGElement): SVGSVGElement {
  const copy = svg.cloneNode(true) as SVGSVGElement;
  writeLook(svg, copy);
  for (const name of ["aria-hidden", "aria-describedby", "role"]) copy.removeAttribute(name);
  return copy;
}

/**
 * A drawing as the text of a file of its own: patterns brought along, the sheet's ground behind it.
 * @param copy what is drawn, its look written out
 * @param size px
 */
export function wholeSvg(
  copy: SVGSVGElement,
  title: string,
  { width, height }: { readonly width: number; readonly height: number },
): string {
  copy.setAttribute("xmlns", NAMESPACE);
  copy.setAttribute("viewBox", `0 0 ${width} ${height}`);
  copy.setAttribute("width", String(width));
  copy.setAttribute("height", String(height));
  const defs = document.createElementNS(NAMESPACE, "defs");
  const needed = new Set(references(copy.outerHTML));
  for (const id of needed) {
    const source = document.getElementById(id);
    if (!source || copy.querySelector(`#${CSS.escape(id)}`)) continue;
    const pattern = source.cloneNode(true) as Element;
    writeLook(source, pattern);
    pattern.setAttribute("id", id);
    defs.append(pattern);
  }
  const ground = document.createElementNS(NAMESPACE, "rect");
  ground.setAttribute("width", "100%");
  ground.setAttribute("height", "100%");
  ground.setAttribute("fill", getComputedStyle(document.body).backgroundColor);
  const name = document.createElementNS(NAMESPACE, "title");
  name.textContent = title;
  copy.prepend(name, defs, ground);
  return `<?xml version="1.0" encoding="UTF-8"?>\n${new XMLSerializer().serializeToString(copy)}\n`;
}

/** A drawing of the page as the text of a file of its own. */
export const standaloneSvg = (svg: SVGSVGElement, title: string): string =>
  wholeSvg(drawnLooks(svg), title, svg.getBoundingClientRect());
