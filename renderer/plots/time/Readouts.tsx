import { useComputed } from "@preact/signals";
import { cursor } from "../../state/road.ts";
import { overlays } from "../../state/road-overlay.ts";
import { roadWorking, showRoadWorking } from "../../state/road-working.ts";
import { units } from "../../state/settings.ts";
import { t } from "../../texts/catalogue.ts";
import { metrics } from "../../ui/metrics.ts";
import { type Plot, type Reading, readingsOf, said, unitOf } from "../registry.ts";
import { recordedAt } from "./laid-over.ts";
import type { TimeLayout } from "./layout.ts";
import { isAsked, readingNow } from "./words.ts";

interface ValueProps {
  readonly plot: Plot;
  readonly reading: Reading;
}

/** Height of a line of readouts, in sizes of text. */
const LINE = 1.22;

/** Name and value of one quantity. Its text alone changes with the cursor. */
function Value({ plot, reading }: ValueProps) {
  const text = useComputed(() => readingNow(reading, plot));
  const { short, long } = t.plots.curves[reading.id];
  const { working, ink } = reading;
  const asked = isAsked(reading);
  const unit = reading.shown ? "" : plot.shown.unit(units.value);
  return (
    <tr>
      <th scope="row" title={long}>
        {short}
      </th>
      <td class={`value${asked ? " asked" : ""}`}>
        <button
          type="button"
          class={`number ink ${ink}`}
          data-point={working}
          data-reading={reading.id}
          title={long}
          aria-expanded={roadWorking.value === working}
          onClick={() => showRoadWorking(working)}
        >
          {text}
        </button>
        {unit && <span class="unseen"> {unit}</span>}
      </td>
    </tr>
  );
}

/** What was recorded of a quantity, at the cursor. */
function Recorded({ plot, reading, only }: ValueProps & { only: boolean }) {
  const overlay = overlays.value;
  const { source } = reading;
  const values = "channel" in source ? overlay?.channels[source.channel] : undefined;
  const text = useComputed(() => {
    if (isAsked(reading) || !overlay || !values) return "?";
    const value = recordedAt(overlay.time, values, cursor.value);
    return value === null ? "–" : said(reading.shown ?? plot.shown, units.value, value);
  });
  if (!overlay || !values) return null;
  const { short } = t.plots.curves[reading.id];
  return (
    <tr class="recorded">
      <th scope="row" title={overlay.name}>
        {only ? t.plots.recorded : t.plots.recordedOf(short)}
      </th>
      <td class="value">{text}</td>
    </tr>
  );
}

interface ReadoutsProps {
  readonly plot: Plot;
  readonly height: number;
  readonly layout: TimeLayout;
}

/** The values of a plot at the cursor, as a table of names and values; a press on a value shows its working. */
export function Readouts({ plot, height, layout }: ReadoutsProps) {
  const readings = readingsOf(plot);
  const overlay = overlays.value;
  const laid = plot.curves.filter(
    ({ source }) => "channel" in source && overlay?.channels[source.channel] !== undefined,
  );
  const line = Math.min(metrics.value.text * LINE, height / (readings.length + laid.length));
  return (
    <table
      class="readouts"
      aria-label={t.plots.values(`${t.plots.names[plot.id]}, ${unitOf(plot, units.value)}`)}
      style={{
        left: `${layout.right}px`,
        width: `${layout.readouts}px`,
        lineHeight: `${line}px`,
      }}
    >
      <tbody>
        {readings.map((reading) => (
          <Value key={reading.id} plot={plot} reading={reading} />
        ))}
        {laid.map((reading) => (
          <Recorded key={reading.id} plot={plot} reading={reading} only={laid.length === 1} />
        ))}
      </tbody>
    </table>
  );
}
