import { bringBackLesson } from "../state/lessons.ts";
import { projector, reducedMotion } from "../state/settings.ts";
import { undoesItself } from "../state/undoing.ts";
import { takesSpace } from "../ui/keyboard.ts";
import { turning } from "./stage.ts";
import { goToStep, mode, stepIndex, worked } from "./state.ts";

/** Single keys of Lessons, while a lesson is read: on, back, and the gear set by Space. */
export function lessonKey(event: KeyboardEvent): boolean {
  if (!worked.value || (mode.value !== "read" && !projector.value)) return false;
  const key = event.key.toLowerCase();
  if (key === "n") goToStep(stepIndex.value + 1);
  else if (key === "b") goToStep(stepIndex.value - 1);
  else if (key === " " && !takesSpace(event.target)) turning.value = !turning.value && !reducedMotion.value;
  else return false;
  return true;
}

/** Ctrl Z beside the text brings a deleted lesson back; bench and vehicles are not undone from here. */
undoesItself("lessons", { undo: bringBackLesson, redo: () => undefined });
