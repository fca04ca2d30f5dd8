import { canLayOver, laidOver } from "../state/recorded-overlay.ts";
import {
  chosen,
  cursor,
  duration,
  frame,
  looping,
  moveTo,
  playing,
  RATES,
  rate,
  run,
  toMoment,
} from "../state/road.ts";
import { t } from "../texts/catalogue.ts";
import { Icon, type IconName } from "../ui/icons.tsx";
import { clockTime } from "../ui/time.ts";
import { saveCsv, saveReport } from "./export.ts";
import { openPanel } from "./panel.ts";

/** Starts or stops the playing; at the end it begins anew. */
export function togglePlay(): void {
  if (!run.value) return;
  if (!playing.value && cursor.value >= duration.value) moveTo(0);
  playing.value = !playing.value;
}

const Step = ({ name, icon, act }: { name: string; icon: IconName; act: () => void }) => (
  <button type="button" class="iconbtn" aria-label={name} title={name} onClick={act} disabled={!run.value}>
    <Icon name={icon} />
  </button>
);

const Rates = () => (
  <fieldset class="segments" aria-label={t.road.transport.rate}>
    {RATES.map((times) => (
      <button
        key={times}
        type="button"
        aria-pressed={rate.value === times}
        onClick={() => {
          rate.value = times;
        }}
      >
        ×{times}
      </button>
    ))}
  </fieldset>
);

/** Goes round in the chosen stretch; without one, in the ten seconds about the cursor. */
function toggleLoop(): void {
  if (!looping.value && !chosen.value) {
    const from = Math.max(0, Math.min(cursor.value - 5, duration.value - 10));
    chosen.value = { from, to: Math.min(duration.value, from + 10) };
  }
  looping.value = !looping.value;
}

/** Lays what was recorded over the run's curves; only where the run's cycle carries something recorded. */
const LayOver = () =>
  canLayOver.value ? (
    <button
      type="button"
      class="btn layover"
      aria-label={t.cycles.layOverName}
      title={t.cycles.layOverName}
      aria-pressed={laidOver.value}
      onClick={() => {
        laidOver.value = !laidOver.value;
      }}
    >
      {t.cycles.layOver}
    </button>
  ) : null;

/** What can be taken out of the app: pictures, a clip, the run's columns; and the other runs. */
const Out = () => (
  <select
    aria-label={t.road.transport.out}
    class="out"
    value=""
    disabled={!run.value}
    onChange={(event) => {
      const what = event.currentTarget.value;
      event.currentTarget.value = "";
      if (what === "csv") void saveCsv();
      else if (what === "report") void saveReport();
      else if (what === "picture" || what === "clip" || what === "runs" || what === "figures")
        openPanel.value = what;
    }}
  >
    <option value="">{t.road.transport.out}</option>
    <option value="figures">{t.road.figures}</option>
    <option value="runs">{t.road.runs}</option>
    <option value="picture">{t.picture.title}</option>
    <option value="clip">{t.picture.clip.title}</option>
    <option value="csv">{t.road.transport.save}</option>
    <option value="report">{t.road.transport.report}</option>
  </select>
);

/** Plays the run: moves the cursor, and nothing else. */
export const Transport = () => (
  <section class="transport" aria-label={t.road.transport.name}>
    <Step name={t.road.transport.momentBack} icon="first" act={() => toMoment(-1)} />
    <Step name={t.road.transport.frameBack} icon="less" act={() => frame(-1)} />
    <button type="button" class="btn filled play" onClick={togglePlay} disabled={!run.value}>
      <Icon name={playing.value ? "pause" : "play"} />{" "}
      {playing.value ? t.road.transport.pause : t.road.transport.play}
    </button>
    <Step name={t.road.transport.frameOn} icon="more" act={() => frame(1)} />
    <Step name={t.road.transport.momentOn} icon="last" act={() => toMoment(1)} />
    <span class="r-time">
      <b>{clockTime(cursor.value)}</b> {t.road.transport.of(clockTime(duration.value))}
    </span>
    <span class="grow" />
    <span class="ratename">{t.road.transport.speed}</span>
    <Rates />
    <button type="button" class="btn" aria-pressed={looping.value} onClick={toggleLoop} disabled={!run.value}>
      <Icon name="loop" /> {t.road.transport.loop}
    </button>
    <LayOver />
    <Out />
  </section>
);
