import { drawnLooks, NAMESPACE, wholeSvg } from "./standalone.ts";

/** How a text of the page is written in a drawing. */
const TEXT_LOOK = ["font-family", "font-size", "font-style", "font-weight", "font-variant-numeric"] as const;

const create = <K extends keyof SVGElementTagNameMap>(name: K): SVGElementTagNameMap[K] =>
  document.createElementNS(NAMESPACE, name);

const isShown = (element: Element): boolean =>
  element.checkVisibility({ opacityProperty: true, visibilityProperty: true }) &&
  element.closest(".unseen, select, option, .btn, .segments") === null;

/** The lines that a text of the page is broken into, each with its box. */
function linesOf(node: Text): readonly { readonly text: string; readonly box: DOMRect }[] {
  const range = document.createRange();
  const lines: { text: string; box: DOMRect }[] = [];
  for (let i = 0; i < node.data.length; i += 1) {
    range.setStart(node, i);
    range.setEnd(node, i + 1);
    const box = range.getClientRects()[0];
    const last = lines.at(-1);
    if (!box || box.width === 0) continue;
    if (last && Math.abs(last.box.top - box.top) < 2) {
      last.text += node.data[i];
      last.box.width = box.right - last.box.left;
    } else lines.push({ text: node.data[i] ?? "", box: DOMRect.fromRect(box) });
  }
  return lines;
}

/**
 * A line of a text of the page, at its place in the drawing.
 * @param fills whether the text is as wide as its box
 */
function textAt(element: Element, text: string, box: DOMRect, origin: DOMRect, fills = true): SVGTextElement {
  const style = getComputedStyle(element);
  const drawn = create("text");
  for (const name of TEXT_LOOK) drawn.setAttribute(name, style.getPropertyValue(name));
  drawn.setAttribute("fill", style.color);
  drawn.setAttribute("x", (box.left - origin.left).toFixed(1));
  // The letters' foot lies about a fifth of their size above the line's.
  const size = Number.parseFloat(style.fontSize);
  drawn.setAttribute("y", (box.top - origin.top + (box.height + size * 0.66) / 2).toFixed(1));
  // Whoever opens the file may not have the font: the text keeps its width all the same.
  if (fills) {
    drawn.setAttribute("textLength", box.width.toFixed(1));
    drawn.setAttribute("lengthAdjust", "spacingAndGlyphs");
  }
  drawn.textContent = text;
  drawn.setAttribute("xml:space", "preserve");
  return drawn;
}

/** Canvases stand in the drawing as pictures: they are none of lines. */
function pictureOf(canvas: HTMLCanvasElement, origin: DOMRect): SVGImageElement {
  const box = canvas.getBoundingClientRect();
  const image = create("image");
  image.setAttribute("x", String(box.left - origin.left));
  image.setAttribute("y", String(box.top - origin.top));
  image.setAttribute("width", String(box.width));
  image.setAttribute("height", String(box.height));
  image.setAttribute("href", canvas.toDataURL("image/png"));
  return image;
}

/** A drawing of the view at its place, its look written out. */
function drawingAt(svg: SVGSVGElement, origin: DOMRect): SVGSVGElement {
  const box = svg.getBoundingClientRect();
  const copy = drawnLooks(svg);
  copy.setAttribute("x", String(box.left - origin.left));
  copy.setAttribute("y", String(box.top - origin.top));
  copy.setAttribute("width", String(box.width));
  copy.setAttribute("height", String(box.height));
  copy.setAttribute("overflow", "visible");
  return copy;
}

/**
 * A view of several drawings with the texts beside them, as one drawing in a file of its own. Grounds and rules of the
 * page are left out: what is drawn and written is what it says.
 */
export function viewSvg(view: HTMLElement, title: string): string {
  const origin = view.getBoundingClientRect();
  const whole = create("svg");
  const inside = (box: DOMRect): boolean =>
    box.width > 0 && box.bottom > origin.top && box.top < origin.bottom && box.right > origin.left;
  for (const svg of view.querySelectorAll("svg")) {
    const own = !svg.matches(".icon, .patterns") && !svg.parentElement?.closest("svg");
    if (own && isShown(svg) && inside(svg.getBoundingClientRect())) whole.append(drawingAt(svg, origin));
  }
  for (const canvas of view.querySelectorAll("canvas"))
    if (isShown(canvas) && inside(canvas.getBoundingClientRect())) whole.append(pictureOf(canvas, origin));
  const walker = document.createTreeWalker(view, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const element = node.parentElement;
    if (!element || !(node instanceof Text) || element.closest("svg") || !isShown(element)) continue;
    for (const { text, box } of linesOf(node))
      if (text.trim() !== "" && inside(box)) whole.append(textAt(element, text, box, origin));
  }
  for (const select of view.querySelectorAll("select")) {
    const box = select.getBoundingClientRect();
    const chosen = select.selectedOptions[0]?.text ?? "";
    if (select.checkVisibility() && inside(box)) whole.append(textAt(select, chosen, box, origin, false));
  }
  return wholeSvg(whole, title, origin);
}
