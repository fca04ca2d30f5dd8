import { useRef } from "preact/hooks";
import { endGesture } from "../state/store.ts";

interface DragOptions {
  /** called with the distance since the start, px: to the right and down */
  readonly onMove: (dx: number, dy: number, shift: boolean) => void;
  readonly onStart?: () => void;
  readonly onEnd?: () => void;
}

/** Pointer handlers of a drag that captures the pointer and counts as one step for undo. */
export function useDrag({ onMove, onStart, onEnd }: DragOptions) {
  const from = useRef<{ x: number; y: number } | null>(null);
  return {
    onPointerDown: (event: PointerEvent) => {
      if (event.button !== 0 || !(event.currentTarget instanceof Element)) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      from.current = { x: event.clientX, y: event.clientY };
      onStart?.();
    },
    onPointerMove: (event: PointerEvent) => {
      if (!from.current) return;
      onMove(event.clientX - from.current.x, event.clientY - from.current.y, event.shiftKey);
    },
    onPointerUp: () => finish(),
    onPointerCancel: () => finish(),
  };
  function finish(): void {
    if (!from.current) return;
    from.current = null;
    endGesture();
    onEnd?.();
  }
}
