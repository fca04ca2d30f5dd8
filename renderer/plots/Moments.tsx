import type { Moment } from "../../sim/run/moments.ts";
import { ViewHead } from "../bench/ViewHead.tsx";
import { kilowatts, num, roadSpeed } from "../state/format.ts";
import { hidden } from "../state/predict.ts";
import { cursor, moveTo, playing, run } from "../state/road.ts";
import { ROW } from "../state/run.ts";
import { units } from "../state/settings.ts";
import { t } from "../texts/catalogue.ts";
import { clockTime } from "../ui/time.ts";

function shownOf({ value, unit }: Moment): string {
  if (hidden.value.size > 0) return "";
  if (unit === "m/s") return roadSpeed(units.value, value);
  if (unit === "W") return `${kilowatts(value)} kW`;
  return unit === "s" ? `${num(value, 0)} s` : num(value, 2);
}

/** View F: the instants worth explaining; a click goes there. */
export function Moments() {
  const list = run.value?.summary?.moments ?? [];
  const last = list.filter(({ time }) => time <= cursor.value + ROW / 2).at(-1);
  return (
    <section class="view moments" aria-labelledby="view-f">
      <ViewHead id="view-f" tag="F" title={t.plots.moments.title} sub={t.plots.moments.sub} />
      {list.length === 0 && <p>{t.plots.moments.none}</p>}
      <ol>
        {list.map((moment) => (
          <li key={moment.id}>
            <button
              type="button"
              title={moment.sentence}
              aria-current={moment === last ? "true" : undefined}
              onClick={() => {
                playing.value = false;
                moveTo(moment.time);
              }}
            >
              <span class="when">{clockTime(moment.time, 0)}</span>
              <span class="what">{t.plots.moments.ids[moment.id] ?? moment.sentence}</span>
              <b>{shownOf(moment)}</b>
            </button>
          </li>
        ))}
      </ol>
    </section>
  );
}
