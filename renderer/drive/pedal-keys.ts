import { driving, pedals, press } from "./live.ts";

/** How fast a key moves its pedal, shares a second: down, and up again. */
const DOWN = 1.4;
const UP = 3;

/** What a press moves its pedal by at once, s of its way: the free play of a pedal is not waited for. */
const AT_ONCE = 0.05;

/** Keys of the selector. */
const SELECT: Readonly<Record<string, "forward" | "neutral" | "reverse" | "park">> = {
  f: "forward",
  n: "neutral",
  r: "reverse",
  x: "park",
};

/** A pedal on its way: toward all while its key is down, else back. @param seconds since the last look */
export const moved = (pedal: number, pressed: boolean, seconds: number): number =>
  pressed ? Math.min(1, pedal + DOWN * seconds) : Math.max(0, pedal - UP * seconds);

interface Pad {
  readonly accelerator: number;
  readonly brake: number;
}

/** Triggers of the first game pad of the standard layout; null without one. */
function padNow(): Pad | null {
  const pad = navigator.getGamepads().find((one) => one?.mapping === "standard");
  if (!pad) return null;
  return { accelerator: pad.buttons[7]?.value ?? 0, brake: pad.buttons[6]?.value ?? 0 };
}

/** Drives by keys and game pad while a drive is under way. @param onPad told whether there is a pad @returns stops */
export function listenToPedals(onPad: (there: boolean) => void): () => void {
  const held = new Set<string>();
  let frame = 0;
  let last = 0;
  let byKeys = false;
  const beat = (now: number): void => {
    const seconds = last > 0 ? Math.min(0.1, (now - last) / 1000) : 0;
    last = now;
    const pad = padNow();
    onPad(pad !== null);
    const { accelerator, brake } = pedals.value;
    if (pad && (pad.accelerator > 0.02 || pad.brake > 0.02)) press(pad);
    else if (held.size > 0 || byKeys) {
      const next = {
        accelerator: moved(accelerator, held.has("ArrowUp"), seconds),
        brake: moved(brake, held.has("ArrowDown"), seconds),
      };
      byKeys = next.accelerator > 0 || next.brake > 0;
      if (next.accelerator !== accelerator || next.brake !== brake) press(next);
    }
    frame = requestAnimationFrame(beat);
  };
  const down = (event: KeyboardEvent): void => {
    if (!driving.value || event.ctrlKey || event.metaKey || event.altKey) return;
    const onSlider = event.target instanceof HTMLInputElement || event.target instanceof HTMLSelectElement;
    if (onSlider) return;
    if (event.key === "ArrowUp" || event.key === "ArrowDown") {
      event.preventDefault();
      if (held.has(event.key)) return;
      held.add(event.key);
      const { accelerator, brake } = pedals.value;
      if (event.key === "ArrowUp") press({ accelerator: moved(accelerator, true, AT_ONCE) });
      else press({ brake: moved(brake, true, AT_ONCE) });
      return;
    }
    const gear = SELECT[event.key.toLowerCase()];
    if (gear) press({ gear });
    else if (event.key.toLowerCase() === "e") press({ electricOnly: !pedals.value.electricOnly });
    else return;
    event.preventDefault();
  };
  const up = (event: KeyboardEvent): void => {
    held.delete(event.key);
  };
  const release = (): void => held.clear();
  document.addEventListener("keydown", down);
  document.addEventListener("keyup", up);
  window.addEventListener("blur", release);
  frame = requestAnimationFrame(beat);
  return () => {
    cancelAnimationFrame(frame);
    document.removeEventListener("keydown", down);
    document.removeEventListener("keyup", up);
    window.removeEventListener("blur", release);
  };
}
