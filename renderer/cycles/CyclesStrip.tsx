import { TeachingCell } from "../app/strip-parts.tsx";
import { num } from "../state/format.ts";
import { units } from "../state/settings.ts";
import { t } from "../texts/catalogue.ts";
import { clockTime } from "../ui/time.ts";
import { rowShown } from "./figures-state.ts";
import { cycleShown } from "./state.ts";
import { distanceText } from "./units.ts";

const words = t.cycles.strip;

/** Title block of Cycles: what is drawn, how long and how far. */
export function CyclesStrip() {
  const trace = cycleShown.value;
  const row = rowShown.value;
  return (
    <footer class="strip" aria-label={t.strip.name}>
      {trace && (
        <div class="cy-strip-title">
          {words.cycle} <b>{trace.title}</b>
        </div>
      )}
      {row && (
        <div>
          {words.duration} <b>{clockTime(row.statistics.duration, 0)}</b>
        </div>
      )}
      {row && (
        <div>
          {words.distance} <b>{distanceText(units.value, row.statistics.distance)}</b>
        </div>
      )}
      {trace && (
        <div class="wide">
          {words.samples} <b>{num(trace.time.length)}</b>
        </div>
      )}
      <TeachingCell />
    </footer>
  );
}
