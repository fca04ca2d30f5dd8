import { useState } from "preact/hooks";
import { mpsToKmh } from "../../../shared/units.ts";
import type { RunSummary } from "../../../sim/run/summary.ts";
import { num } from "../../state/format.ts";
import { ownId } from "../../state/own-strategies.ts";
import { t } from "../../texts/catalogue.ts";
import type { OwnText } from "../../workers/contract.ts";
import { CycleOptions } from "../CycleOptions.tsx";
import { chosenStrategies, compareView } from "../state.ts";
import { cancelTrial, setText, tryStrategy } from "./actions.ts";
import { Editor, type Marked } from "./Editor.tsx";
import { OwnGuide } from "./OwnGuide.tsx";
import { OwnList } from "./OwnList.tsx";
import { mended, type Slip, slipsIn } from "./slips.ts";
import { editedStrategy, type Trial, trial, trialCycle, trying } from "./state.ts";

const c = t.compare.own;

/** Check, Run and its cycle; or how far the run is, with the way out. */
function Tries() {
  const share = trying.value;
  if (share !== null) {
    return (
      <span class="runs-now">
        <progress max={1} value={share} aria-label={c.working(num(share * 100))} />
        <button type="button" class="btn" onClick={cancelTrial}>
          {c.cancel}
        </button>
      </span>
    );
  }
  return (
    <>
      <button type="button" class="btn" onClick={() => void tryStrategy(false)}>
        {c.check}
      </button>
      <button type="button" class="btn filled" onClick={() => void tryStrategy(true)}>
        {c.run}
      </button>
      <label class="reference">
        {c.on}{" "}
        <select
          value={trialCycle.value}
          onChange={(event) => {
            trialCycle.value = event.currentTarget.value;
          }}
        >
          <CycleOptions />
        </select>
      </label>
    </>
  );
}

/** Misspelt inputs, each with the push that mends it. */
const Slips = ({ own }: { own: OwnText }) => (
  <>
    {slipsIn(own.text)
      .slice(0, 3)
      .map((slip: Slip) => (
        <p key={slip.from}>
          {c.slip(num(slip.line), slip.name)} {c.nearest}{" "}
          <button type="button" class="btn" onClick={() => setText(mended(own.text, slip))}>
            {c.put(slip.nearest)}
          </button>
        </p>
      ))}
  </>
);

const figuresOf = (summary: RunSummary): readonly (readonly [string, string])[] => [
  [c.figures.fuel, `${num(summary.fuel.l_per_100km, 2)} L/100 km`],
  [
    c.figures.charge,
    `${num(summary.battery.soc_start * 100, 1)} → ${num(summary.battery.soc_end * 100, 1)} %`,
  ],
  [c.figures.starts, num(summary.engine.starts)],
  [c.figures.engine, `${num(summary.engine.seconds_on)} s`],
  [c.figures.recovered, `${num(summary.recovered.share * 100)} %`],
  [c.figures.trace, `${num(mpsToKmh(summary.trace.rmsError), 2)} km/h`],
];

function Drove({ own, summary, cycle }: { own: OwnText; summary: RunSummary; cycle: string }) {
  const id = ownId(own.title);
  return (
    <>
      <p>{c.drove(cycle)}</p>
      <dl class="own-figures">
        {figuresOf(summary).map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      <button
        type="button"
        class="btn"
        onClick={() => {
          if (!chosenStrategies.value.includes(id)) chosenStrategies.value = [...chosenStrategies.value, id];
          compareView.value = "strategies";
        }}
      >
        {c.compareIt}
      </button>
    </>
  );
}

interface FaultProps {
  readonly reply: Extract<Trial["reply"], { ok: false }>;
  readonly marked: Marked | null;
  readonly onGo: () => void;
}

/** What was wrong: line, second and message; a push goes to the line. */
function Fault({ reply, marked, onGo }: FaultProps) {
  const { fault, message } = reply;
  const line = marked?.line ?? null;
  const second = fault?.second ?? null;
  return (
    <div class="own-fault" role="alert">
      <p>
        <b>{line === null ? c.asWhole : c.atLine(num(line))}</b>
        {second !== null && <> {c.atSecond(num(second, 1))}</>}
      </p>
      <p>{message}</p>
      {line !== null && (
        <button type="button" class="btn" onClick={onGo}>
          {c.goToLine(num(line))}
        </button>
      )}
    </div>
  );
}

/** What came of the last check or run of the strategy in hand. */
function Outcome({ own, onGo }: { own: OwnText; onGo: () => void }) {
  const last = trial.value;
  if (last?.own.title !== own.title) return null;
  const { reply, cycle } = last;
  return (
    <div class="own-outcome" aria-live="polite">
      {last.own.text !== own.text && <p class="unit">{c.changed}</p>}
      {!reply.ok && <Fault reply={reply} marked={markedIn(own, last)} onGo={onGo} />}
      {reply.ok && !reply.summary && <p>{c.sound}</p>}
      {reply.ok && reply.summary && <Drove own={own} summary={reply.summary} cycle={cycle} />}
    </div>
  );
}

/**
 * The line to mark: the engine's, but for a bad answer, whose line is only that of `decide`: there a misspelt input is
 * the likelier place.
 */
function markedIn(own: OwnText, last: Trial | null): Marked | null {
  if (!last || last.reply.ok || last.own.title !== own.title) return null;
  const { fault } = last.reply;
  const [slip] = fault?.kind === "answer" ? slipsIn(last.own.text) : [];
  if (slip) return slip;
  return fault?.line ? { line: fault.line, column: fault.column } : null;
}

function Writing({ own }: { own: OwnText }) {
  const [going, setGoing] = useState(0);
  return (
    <>
      <Editor
        key={own.title}
        text={own.text}
        latest={() => editedStrategy.peek()?.text ?? ""}
        onText={setText}
        marked={markedIn(own, trial.value)}
        going={going}
      />
      <div class="own-foot">
        <div class="own-tries">
          <Tries />
          <span class="unit">{c.leave}</span>
        </div>
        <Slips own={own} />
        <Outcome own={own} onGo={() => setGoing(going + 1)} />
      </div>
    </>
  );
}

/** A person's own strategies: the list, the text of one, and what it is told. */
export function OwnView() {
  const own = editedStrategy.value;
  return (
    <div class="own-view">
      <OwnList />
      <section class="view o-text" aria-labelledby="view-b">
        <h2 class="view-head" id="view-b">
          <span class="tag">B</span> {own?.title ?? c.editor} <small>{c.editorSub}</small>
        </h2>
        {own ? <Writing own={own} /> : <p class="empty">{c.unchosen}</p>}
      </section>
      <OwnGuide />
    </div>
  );
}
