import { frame, mode, toMoment } from "../state/road.ts";
import { takesSpace } from "../ui/keyboard.ts";
import { openPanel } from "./panel.ts";
import { togglePlay } from "./Transport.tsx";

/** Single keys of Road: play, frame by frame, moment by moment. */
export function roadKey(event: KeyboardEvent): boolean {
  if (event.key === "Escape" && openPanel.value !== null) {
    openPanel.value = null;
    return true;
  }
  if (mode.value === "pedals") return false;
  switch (event.key) {
    case " ":
      if (takesSpace(event.target)) return false;
      togglePlay();
      return true;
    case "[":
      frame(-1);
      return true;
    case "]":
      frame(1);
      return true;
    case "{":
      toMoment(-1);
      return true;
    case "}":
      toMoment(1);
      return true;
    default:
      return false;
  }
}
