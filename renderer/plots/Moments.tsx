import { useComputed } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { mpsToKmh, mpsToMph } from "../../shared/units.ts";
import type { Moment } from "../../sim/run/moments.ts";
import { ViewHead } from "../bench/ViewHead.tsx";
import { kilowatts, num, roadUnitName, type Units } from "../state/format.ts";
import { type HideableId, hidden } from "../state/predict.ts";
import { cursor, moveTo, playing, run } from "../state/road.ts";
import { ROW } from "../state/run.ts";
import { units } from "../state/settings.ts";
import { t } from "../texts/catalogue.ts";
import { metrics } from "../ui/metrics.ts";
import { clockTime } from "../ui/time.ts";

const words = t.plots.moments;

/** What a moment's value would tell while it is asked for. */
const TELLS: Readonly<Record<string, HideableId>> = {
  "strongest-regeneration": "output-machine-power",
  "strongest-assist": "battery-power",
};

/** A moment's value in few words. Road speeds to the whole unit: the instant is read at the cursor. */
export function momentValue({ value, unit }: Pick<Moment, "value" | "unit">, read: Units): string {
  if (unit === "m/s") {
    const speed = read.road === "kmh" ? mpsToKmh(value) : mpsToMph(value);
    return `${num(speed)} ${roadUnitName(read)}`;
  }
  if (unit === "W") return `${kilowatts(value)} kW`;
  return unit === "s" ? `${num(value)} s` : num(value, 2);
}

const isAsked = ({ id, unit }: Moment): boolean => {
  const tells = TELLS[id] ?? (unit === "m/s" ? "road-speed" : null);
  return tells !== null && hidden.value.has(tells);
};

/** Index of the last moment that the cursor has passed; −1 before the first. */
export const lastPassed = (list: readonly Moment[], time: number): number =>
  list.findLastIndex((moment) => moment.time <= time + ROW / 2);

function go({ time }: Moment): void {
  playing.value = false;
  moveTo(time);
}

const Row = ({ moment, current }: { moment: Moment; current: boolean }) => (
  <li>
    <button
      type="button"
      title={moment.sentence}
      aria-current={current ? "true" : undefined}
      onClick={() => go(moment)}
    >
      <span class="when">{clockTime(moment.time, 0)}</span>
      <span class="what">{words.short[moment.id] ?? moment.sentence}</span>
      <b>{isAsked(moment) ? "?" : momentValue(moment, units.value)}</b>
    </button>
  </li>
);

/** View F: the instants worth explaining; a click goes there. */
export function Moments() {
  const list = run.value?.summary?.moments ?? [];
  const passed = useComputed(() => lastPassed(run.value?.summary?.moments ?? [], cursor.value));
  const box = useRef<HTMLOListElement>(null);
  const current = passed.value;
  useEffect(() => {
    box.current?.children[Math.max(0, current)]?.scrollIntoView({ block: "nearest" });
  }, [current]);
  return (
    <section class="view moments" aria-labelledby="view-f">
      <ViewHead id="view-f" tag="F" title={words.title} sub={metrics.value.compact ? "" : words.sub} />
      {list.length === 0 && <p>{words.none}</p>}
      <ol ref={box}>
        {list.map((moment, i) => (
          <Row key={moment.id} moment={moment} current={i === current} />
        ))}
      </ol>
    </section>
  );
}
