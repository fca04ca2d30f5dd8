import { STEP, togglePlay } from "../bench/GearControls.tsx";
import { prefer, preferences, projector, theme } from "../state/settings.ts";
import { redo, undo } from "../state/store.ts";
import { setMarks, stepBy } from "../state/turning.ts";
import { working } from "../state/working.ts";
import { takesSpace, takesText } from "../ui/keyboard.ts";
import { openWindow, toggleWindow } from "./window.ts";

export const toggleProjector = (): void => prefer({ projector: !projector.value });
export const toggleTheme = (): void => prefer({ theme: theme.value === "dark" ? "light" : "dark" });

const SINGLE: Readonly<Record<string, () => void>> = {
  "[": () => stepBy(-STEP),
  "]": () => stepBy(STEP),
  m: setMarks,
  p: toggleProjector,
  t: toggleTheme,
  g: () => toggleWindow("glossary"),
  "?": () => toggleWindow("keys"),
};

function commandKey(event: KeyboardEvent): boolean {
  if (!(event.ctrlKey || event.metaKey) || event.altKey) return false;
  const key = event.key.toLowerCase();
  if (key === "z") (event.shiftKey ? redo : undo)();
  else if (key === "y") redo();
  else return false;
  return true;
}

function singleKey(event: KeyboardEvent): boolean {
  if (event.ctrlKey || event.metaKey || event.altKey || openWindow.value !== null) return false;
  if (!preferences.value.singleKeys && event.key !== "?") return false;
  if (event.key === " ") {
    if (takesSpace(event.target)) return false;
    togglePlay();
    return true;
  }
  const act = SINGLE[event.key.length === 1 ? event.key.toLowerCase() : event.key];
  act?.();
  return act !== undefined;
}

/** Keys of the whole page. A text field keeps its own, also its own undo while it is being typed in. */
export function onKeyDown(event: KeyboardEvent): void {
  if (event.defaultPrevented || takesText(event.target)) return;
  if (event.key === "Escape" && openWindow.value === null && working.value !== null) {
    working.value = null;
    event.preventDefault();
  } else if (commandKey(event) || singleKey(event)) event.preventDefault();
}
