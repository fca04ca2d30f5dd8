import { listCycles } from "../../cycles/catalogue.ts";
import { COMPOSITE_TESTS } from "../../cycles/composite/registry.ts";
import type { CycleTrace } from "../../shared/cycle.ts";
import { num } from "../state/format.ts";
import { t } from "../texts/catalogue.ts";
import { clockTime } from "../ui/time.ts";
import { rename } from "./edit.ts";
import { Faults } from "./Faults.tsx";
import { ManoeuvreForm } from "./ManoeuvreForm.tsx";
import { ReadForm } from "./ReadForm.tsx";
import { cycleShown, draft, kindShown, recordingShown, refusal, selected } from "./state.ts";
import { Treatments } from "./Treatments.tsx";

const words = t.cycles;

/** A file that was refused. */
function Refusal() {
  const now = refusal.value;
  if (!now) return null;
  return (
    <div class="cy-refusal" role="alert">
      <p>{words.refusedFile(now.name)}</p>
      <Faults faults={now.faults} />
      <button
        type="button"
        class="btn"
        onClick={() => {
          refusal.value = null;
        }}
      >
        {words.dismiss}
      </button>
    </div>
  );
}

/** Where a cycle of the catalogue comes from. */
function Published({ trace }: { trace: CycleTrace }) {
  const info = listCycles().find(({ id }) => id === trace.id);
  const used = COMPOSITE_TESTS.flatMap((test) =>
    test.parts
      .filter(({ cycle }) => cycle === trace.id)
      .map(({ weight }) => words.weight(test.title, num(weight, 2))),
  );
  return (
    <dl class="cy-facts">
      <dt>{words.source}</dt>
      <dd>{trace.source}</dd>
      {info && info.standing !== "" && (
        <>
          <dt>{words.standing}</dt>
          <dd>{info.standing}</dd>
        </>
      )}
      {used.length > 0 && (
        <>
          <dt>{words.usedIn}</dt>
          <dd>{used.join("; ")}</dd>
        </>
      )}
    </dl>
  );
}

const Phases = ({ trace }: { trace: CycleTrace }) =>
  trace.phases.length > 0 ? (
    <>
      <h3>{words.phases}</h3>
      <ol class="cy-parts">
        {trace.phases.map(({ id, title, start, end }) => (
          <li key={id}>
            <span>{title}</span>
            <span class="cy-long">
              {clockTime(start, 0)} – {clockTime(end, 0)}
            </span>
          </li>
        ))}
      </ol>
    </>
  ) : null;

/** What was done to the data: kept with the cycle wherever it goes. */
const Done = ({ sentences, none }: { sentences: readonly string[]; none: string }) => (
  <>
    <h3>{words.done}</h3>
    {sentences.length === 0 ? (
      <p>{none}</p>
    ) : (
      <ol class="cy-done">
        {sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ol>
    )}
  </>
);

/** Words for a cycle to which nothing was done. */
function nothingDone(trace: CycleTrace): string {
  const info = listCycles().find(({ id }) => id === trace.id);
  if (!info) return words.noTreatment;
  return info.kind === "composite" ? words.putTogether : words.untouched;
}

const Title = ({ trace }: { trace: CycleTrace }) => (
  <label class="cy-pair cy-title">
    {words.title}
    <input
      type="text"
      autocomplete="off"
      value={trace.title}
      onChange={(event) => {
        rename(event.currentTarget.value);
        // An empty name is not taken: the one in force stands there again.
        event.currentTarget.value = cycleShown.value?.title ?? trace.title;
      }}
    />
  </label>
);

function Own({ trace }: { trace: CycleTrace }) {
  const recording = recordingShown.value;
  return (
    <>
      <Title trace={trace} />
      <dl class="cy-facts">
        <dt>{words.source}</dt>
        <dd>{trace.source}</dd>
        {recording?.overlay && recording.overlay.channels.length > 0 && (
          <>
            <dt>{words.overlay}</dt>
            <dd>{recording.overlay.channels.map(({ id }) => words.overlayChannels[id]).join(", ")}</dd>
          </>
        )}
      </dl>
    </>
  );
}

/** View D: what the cycle is, how it was read, and what is done to it. */
export function Details() {
  const trace = cycleShown.value;
  const kind = kindShown.value;
  const recording = recordingShown.value;
  const opened = kind === "draft" ? draft.value : null;
  return (
    <div class="cy-details">
      <Refusal />
      {(kind === "own" || kind === "draft") && trace && <Own trace={trace} />}
      {opened && <ReadForm draft={opened} />}
      {recording && <Treatments recording={recording} />}
      {kind === "own" && recording && (
        <>
          <h3>{words.read}</h3>
          <ul class="cy-done">
            {recording.raw.reading.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
          <p class="hint">{words.readOnce}</p>
        </>
      )}
      {kind === "manoeuvre" && <ManoeuvreForm key={selected.value} id={selected.value} />}
      {kind === "catalogue" && trace && <Published trace={trace} />}
      {trace && <Phases trace={trace} />}
      {trace && !recording && kind !== "manoeuvre" && (
        <Done sentences={trace.treatment} none={nothingDone(trace)} />
      )}
    </div>
  );
}
