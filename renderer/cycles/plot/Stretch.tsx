import { useId, useState } from "preact/hooks";
import { t } from "../../texts/catalogue.ts";
import { SignButton } from "../../ui/SignButton.tsx";
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

function Zoom() {
  const whole = !shownSpan.value;
  return (
    <fieldset class="cy-zoom" aria-label={zoomWords.name}>
      <SignButton sign="+" name={zoomWords.closer} onClick={() => zoomBy(0.5)} />
      <SignButton sign="−" name={zoomWords.wider} disabled={whole} onClick={() => zoomBy(2)} />
      <SignButton sign="‹" name={zoomWords.back} disabled={whole} onClick={() => panBy(-0.5)} />
      <SignButton sign="›" name={zoomWords.on} disabled={whole} onClick={() => panBy(0.5)} />
      <SignButton
        sign={zoomWords.whole}
        name={zoomWords.wholeName}
        disabled={whole}
        onClick={() => {
          shownSpan.value = null;
        }}
      />
    </fieldset>
  );
}

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
          <SignButton
            sign="×"
            name={words.clear}
            onClick={() => {
              chosenSpan.value = null;
            }}
          />
        </>
      )}
      <span class="grow" />
      <Zoom />
    </div>
  );
}
