import { goTo, PLACES, place } from "../state/place.ts";
import { preferences } from "../state/settings.ts";
import { redoHere, undoHere } from "../state/undoing.ts";
import { working } from "../state/working.ts";
import { takesText } from "../ui/keyboard.ts";
import { toggleProjector, toggleTheme } from "./appearance.ts";
import { partsOf } from "./places.ts";
import { openWindow, toggleWindow } from "./window.ts";

const SINGLE: Readonly<Record<string, () => void>> = {
  p: toggleProjector,
  t: toggleTheme,
  g: () => toggleWindow("glossary"),
  "?": () => toggleWindow("keys"),
};

function commandKey(event: KeyboardEvent): boolean {
  if (!(event.ctrlKey || event.metaKey) || event.altKey) return false;
  const key = event.key.toLowerCase();
  if (key === "z") (event.shiftKey ? redoHere : undoHere)();
  else if (key === "y") redoHere();
  else return false;
  return true;
}

function singleKey(event: KeyboardEvent): boolean {
  if (event.ctrlKey || event.metaKey || event.altKey || openWindow.value !== null) return false;
  if (!preferences.value.singleKeys && event.key !== "?") return false;
  const asked = PLACES[Number(event.key) - 1];
  if (asked) {
    goTo(asked);
    return true;
  }
  if (partsOf(place.value)?.key(event)) return true;
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
