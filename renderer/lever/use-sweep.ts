import { useLayoutEffect, useRef, useState } from "preact/hooks";
import { eachShaft, type ShaftValues } from "../../sim/bench/shafts.ts";
import { reducedMotion } from "../state/settings.ts";

const SWEEP_MS = 180;

/** The speeds to draw: the set ones, or on their way to those of a situation just loaded. */
export function useSweep(speeds: ShaftValues, loaded: number): ShaftValues {
  const [shown, setShown] = useState<ShaftValues | null>(null);
  const before = useRef({ speeds, loaded });
  const isNew = before.current.loaded !== loaded;
  const from = before.current.speeds;
  useLayoutEffect(() => {
    before.current = { speeds, loaded };
    if (!isNew || reducedMotion.value) {
      setShown(null);
      return;
    }
    const start = performance.now();
    let frame = 0;
    const draw = (now: number): void => {
      const share = Math.min(1, Math.max(0, (now - start) / SWEEP_MS));
      const eased = 1 - (1 - share) ** 3;
      setShown(share < 1 ? eachShaft((s) => from[s] + (speeds[s] - from[s]) * eased) : null);
      if (share < 1) frame = requestAnimationFrame(draw);
    };
    setShown(from);
    frame = requestAnimationFrame(draw);
    return () => cancelAnimationFrame(frame);
  }, [speeds, loaded]);
  return shown ?? speeds;
}
