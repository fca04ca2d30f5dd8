import { useId, useState } from "preact/hooks";
import { t } from "../../texts/catalogue.ts";
import { clockTime } from "../../ui/time.ts";
import { keepStretch } from "../edit.ts";
import { chosenSpan, recordingShown, shownSpan } from "../state.ts";
import { parseClock } from "./clock.ts";
import { durationShown, panBy, stretchBetween, zoomBy } from "./window.ts";

const words = t.cycles.stretch;
const zoomWords = t.cycles.window;

interface EndProps {
  readonly which: "from" | "to";
  readonly onFault: (text: string) => void;
  readonly describedBy: string;
}

/** One end of the stretch, typed. */
function End({ which, onFault, describedBy }: EndProps) {
  const span = chosenSpan.value;
  const shown = span ? clockTime(span[which]) : "";
  const commit = (text: string): void => {
    const end = durationShown.value;
    const typed = parseClock(text);
    const other = which === "from" ? (span?.to ?? end) : (span?.from ?? 0);
    const next = typed === null || typed > end ? null : stretchBetween(typed, other, end);
    onFault(next ? "" : words.bad(clockTime(end)));
    if (next) chosenSpan.value = next;
  };
  return (
    <label class="cy-end">
      {words[which]}
      <input
        type="text"
        autocomplete="off"
        aria-label={which === "from" ? words.fromName : words.toName}
        aria-describedby={describedBy}
        placeholder={words.none}
        value={shown}
        size={7}
        onChange={(event) => commit(event.currentTarget.value)}
      />
    </label>
  );
}

const Zoom = () => (
  <fieldset class="cy-zoom" aria-label={zoomWords.name}>
    <button
      type="button"
      class="btn quiet"
      aria-label={zoomWords.closer}
      title={zoomWords.closer}
      onClick={() => zoomBy(0.5)}
    >
      +
    </button>
    <button
      type="button"
      class="btn quiet"
      aria-label={zoomWords.wider}
      title={zoomWords.wider}
      disabled={!shownSpan.value}
      onClick={() => zoomBy(2)}
    >
      −
    </button>
    <button
      type="button"
      class="btn quiet"
      aria-label={zoomWords.back}
      title={zoomWords.back}
      disabled={!shownSpan.value}
      onClick={() => panBy(-0.5)}
    >
      ‹
    </button>
    <button
      type="button"
      class="btn quiet"
      aria-label={zoomWords.on}
      title={zoomWords.on}
      disabled={!shownSpan.value}
      onClick={() => panBy(0.5)}
    >
      ›
    </button>
    <button
      type="button"
      class="btn quiet"
      aria-label={zoomWords.wholeName}
      disabled={!shownSpan.value}
      onClick={() => {
        shownSpan.value = null;
      }}
    >
      {zoomWords.whole}
    </button>
  </fieldset>
);

/** The stretch chosen, what can be done with it, and the window of time. */
export function Stretch() {
  const [fault, setFault] = useState("");
  const id = useId();
  const span = chosenSpan.value;
  return (
    <div class="cy-stretch">
      <span class="word">{words.name}</span>
      <End which="from" onFault={setFault} describedBy={id} />
      <End which="to" onFault={setFault} describedBy={id} />
      <span id={id} class={fault ? "bad" : "hint"} role={fault ? "alert" : undefined}>
        {fault || (span ? "" : words.hint)}
      </span>
      {span && (
        <>
          <button type="button" class="btn" onClick={() => void keepStretch(span)}>
            {recordingShown.value ? words.keep : words.keepOther}
          </button>
          <button
            type="button"
            class="btn quiet"
            onClick={() => {
              shownSpan.value = span;
              chosenSpan.value = null;
            }}
          >
            {words.look}
          </button>
          <button
            type="button"
            class="btn quiet"
            aria-label={words.clear}
            title={words.clear}
            onClick={() => {
              chosenSpan.value = null;
            }}
          >
            ×
          </button>
        </>
      )}
      <span class="grow" />
      <Zoom />
    </div>
  );
}
