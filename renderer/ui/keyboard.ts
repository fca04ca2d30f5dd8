/** Steps of the keys that change a number: arrows a little, with Shift or by page ten times as much. */
export function keyStep(event: KeyboardEvent, small: number): number | "zero" | null {
  const large = small * 10;
  const step = event.shiftKey ? large : small;
  switch (event.key) {
    case "ArrowUp":
    case "ArrowRight":
      return step;
    case "ArrowDown":
    case "ArrowLeft":
      return -step;
    case "PageUp":
      return large;
    case "PageDown":
      return -large;
    case "Home":
      return "zero";
    default:
      return null;
  }
}

/** Whether a key belongs to what has the focus: a field that takes text, a choice, a button for Space. */
export function takesText(target: EventTarget | null): boolean {
  if (target instanceof HTMLTextAreaElement) return true;
  if (target instanceof HTMLElement && target.isContentEditable) return true;
  return (
    target instanceof HTMLInputElement &&
    (target.type === "text" || target.type === "search" || target.type === "number")
  );
}

export const takesSpace = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  target.closest("button, a, select, input, summary, [role=slider], dialog") !== null;
