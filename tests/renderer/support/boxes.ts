/** What a page must be able to do for these checks: run a text of script in itself. */
export interface ScriptedPage {
  evaluate<T>(script: string): Promise<T>;
}

/** Two texts that lie over each other, or one that is cut off; px of how much. */
export interface TextFault {
  readonly kind: "overlap" | "clipped" | "small target" | "small text";
  readonly text: string;
  readonly other: string;
  readonly by: number;
}

/** Runs in the page: plain script, for the tests know no DOM. */
const collect = `
const skip = (element) => {
  if (element.closest(".unseen, .patterns, [hidden], option, script, style")) return true;
  for (let up = element; up; up = up.parentElement) if (getComputedStyle(up).clipPath !== "none") return true;
  return false;
};
const shown = (element) => element.checkVisibility({ opacityProperty: true, visibilityProperty: true }) && !skip(element);
const texts = [];
const scrolledAway = (element, rect) => {
  for (let up = element.parentElement; up; up = up.parentElement) {
    if (!/auto|scroll/.test(getComputedStyle(up).overflowY)) continue;
    const box = up.getBoundingClientRect();
    if (rect.bottom > box.bottom + 1 || rect.top < box.top - 1) return up.scrollHeight > up.clientHeight + 1;
  }
  return false;
};
const add = (element, rect, text) => {
  if (rect.width < 1 || rect.height < 1 || scrolledAway(element, rect)) return;
  const size = Number.parseFloat(getComputedStyle(element).fontSize);
  const trim = Math.max(0, (rect.height - size * 0.92) / 2);
  for (let up = element.parentElement; up; up = up.parentElement) {
    // What is scrolled out of its list is not there to be seen.
    const style = getComputedStyle(up);
    if (style.overflowY !== "auto" && style.overflowY !== "scroll") continue;
    const box = up.getBoundingClientRect();
    if (rect.top + trim < box.top || rect.bottom - trim > box.bottom) return;
  }
  const over = element.closest(".working, .more-body, dialog, .notice, .fault");
  texts.push({ element, text, size, layer: over, x1: rect.left, x2: rect.right, y1: rect.top + trim, y2: rect.bottom - trim });
};
const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
for (let node = walker.nextNode(); node; node = walker.nextNode()) {
  const element = node.parentElement;
  const text = node.data.trim();
  if (!text || !shown(element) || element.closest("svg")) continue;
  const range = document.createRange();
  range.selectNodeContents(node);
  for (const rect of range.getClientRects()) add(element, rect, text);
}
for (const element of document.querySelectorAll("svg text")) {
  if (shown(element)) add(element, element.getBoundingClientRect(), element.textContent.trim());
}
for (const element of document.querySelectorAll("input[type=text], select")) {
  if (shown(element)) add(element, element.getBoundingClientRect(), element.value);
}`;

const faults = `
const found = [];
for (let i = 0; i < texts.length; i += 1) {
  const a = texts[i];
  for (let j = i + 1; j < texts.length; j += 1) {
    const b = texts[j];
    if (a.layer !== b.layer || a.element === b.element || a.element.contains(b.element) || b.element.contains(a.element)) continue;
    const x = Math.min(a.x2, b.x2) - Math.max(a.x1, b.x1);
    const y = Math.min(a.y2, b.y2) - Math.max(a.y1, b.y1);
    if (x > 1 && y > 1) found.push({ kind: "overlap", text: a.text, other: b.text, by: Math.round(Math.min(x, y)) });
  }
  let by = Math.max(-a.x1, a.x2 - innerWidth, -a.y1, a.y2 - innerHeight);
  for (let up = a.element; up; up = up.parentElement) {
    const style = getComputedStyle(up);
    if (style.overflowX === "visible" && style.overflowY === "visible") continue;
    if (style.overflowY === "auto" || style.overflowY === "scroll") break;
    const box = up.getBoundingClientRect();
    by = Math.max(by, box.left - a.x1, a.x2 - box.right, box.top - a.y1, a.y2 - box.bottom);
  }
  if (by > 1) found.push({ kind: "clipped", text: a.text, other: "", by: Math.round(by) });
  if (a.size < least && !a.element.closest("sub")) found.push({ kind: "small text", text: a.text, other: "", by: Math.round((least - a.size) * 10) / 10 });
}
for (const element of document.querySelectorAll("button, select, a, summary, [role=slider], input[type=text]")) {
  if (!shown(element) || element.matches(".number, .typed input") || element.closest("canvas")) continue;
  const box = element.getBoundingClientRect();
  const small = Math.min(box.width, box.height);
  // The plots as a whole take the cursor.
  if (element.matches("line, .time-cursor")) continue;
  if (small < 27.5) found.push({ kind: "small target", text: element.getAttribute("aria-label") ?? element.textContent.trim(), other: "", by: Math.round(28 - small) });
}
return found;`;

/**
 * Texts that overlap or are cut off, targets under 28 px (numbers within a line of text apart), and texts under a size.
 * @param least px: 14, on a projector 20
 */
export const textFaults = (page: ScriptedPage, least = 14): Promise<readonly TextFault[]> =>
  page.evaluate<readonly TextFault[]>(`(() => { const least = ${least - 0.01};${collect}${faults} })()`);
