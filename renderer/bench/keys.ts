import { toggleEnlarged } from "../state/enlarged.ts";
import { setMarks, stepBy } from "../state/turning.ts";
import { takesSpace } from "../ui/keyboard.ts";
import { STEP, togglePlay } from "./GearControls.tsx";

const SINGLE: Readonly<Record<string, () => void>> = {
  "[": () => stepBy(-STEP),
  "]": () => stepBy(STEP),
  m: setMarks,
  a: () => toggleEnlarged("A"),
  b: () => toggleEnlarged("B"),
  c: () => toggleEnlarged("C"),
};

/** Single keys of the bench. */
export function benchKey(event: KeyboardEvent): boolean {
  if (event.key === " ") {
    if (takesSpace(event.target)) return false;
    togglePlay();
    return true;
  }
  const act = SINGLE[event.key.toLowerCase()];
  act?.();
  return act !== undefined;
}
