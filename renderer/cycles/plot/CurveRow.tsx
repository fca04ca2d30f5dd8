import { effect } from "@preact/signals";
import { useLayoutEffect, useRef } from "preact/hooks";
import type { Range } from "../../plots/time/range.ts";
import { placedTicks, tickDecimals, valueTicks } from "../../plots/time/ticks.ts";
import { num } from "../../state/format.ts";
import { projector, theme } from "../../state/settings.ts";
import { metrics } from "../../ui/metrics.ts";
import { type CurveData, Curves } from "./curves.ts";
import { windowShown } from "./window.ts";

interface RowProps {
  readonly name: string;
  readonly unit: string;
  /** factor to the unit */
  readonly times: number;
  readonly after: CurveData;
  readonly before: CurveData | null;
  readonly range: Range;
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** One quantity over time: name and unit, ticks, curves. */
export function CurveRow({ name, unit, times, after, before, range, left, top, width, height }: RowProps) {
  const host = useRef<HTMLDivElement>(null);
  const { text } = metrics.value;
  const ticks = valueTicks(range, times, height / (text * 1.4));
  const look = `${theme.value} ${projector.value} ${text}`;
  useLayoutEffect(() => {
    if (!host.current || width < 1) return;
    const spec = { after, before, range, ticks, width, height };
    const made = new Curves(host.current, spec, () => windowShown.peek());
    let first = true;
    const stop = effect(() => {
      windowShown.value;
      if (!first) made.refresh();
      first = false;
    });
    return () => {
      stop();
      made.end();
    };
  }, [after, before, range.least, range.most, times, width, height, look]);
  const decimals = tickDecimals(ticks, times);
  return (
    <div class="cy-row" style={{ top: `${top}px`, height: `${height}px` }}>
      <h3 class="cy-row-name">
        <b>{name}</b>
        <span class="unit">{unit}</span>
      </h3>
      <div class="value-ticks" style={{ width: `${left - 6}px` }} aria-hidden="true">
        {placedTicks(ticks, range, height, text).map(({ value, y }) => (
          <span key={value} style={{ top: `${y}px` }}>
            {num(value * times, decimals)}
          </span>
        ))}
      </div>
      <div class="curves" ref={host} style={{ left: `${left}px`, width: `${width}px` }} />
    </div>
  );
}
