import { useEffect, useRef, useState } from "preact/hooks";
import { keyWords } from "../../sim/lesson/handout/handout.ts";
import { choiceLetter } from "../../sim/lesson/judge.ts";
import type { WorkedAsk, WorkedChoice, WorkedNumber } from "../../sim/lesson/work.ts";
import { num } from "../state/format.ts";
import { t } from "../texts/catalogue.ts";
import { answerText, hintAfter, judged, unitsFor, wholeWorking } from "./answer.ts";
import { HintLines } from "./HintLines.tsx";
import { Inlines } from "./Prose.tsx";
import { answer, answers, shownWorkings, showWorking, tries } from "./state.ts";

const q = t.lesson.question;

/** What is said of the answer that was checked last; empty before the first. */
function verdictOf(ask: WorkedAsk, given: string | undefined): { right: boolean; text: string } | null {
  if (given === undefined) return null;
  const found = judged(ask, given);
  if (found.kind === "unreadable")
    return { right: false, text: q.unreadable(found.fault.what, found.fault.accepted) };
  const { right, remark } = found.verdict;
  if (right) return { right, text: ask.kind === "number" ? q.rightWith(ask.keyText) : q.right };
  const wrong = q.wrong(num(tries.value[ask.name] ?? 0));
  return { right, text: remark === "" ? wrong : `${wrong} ${q.remarks[remark]}` };
}

/** The hint or the working below a question. */
function Help({ ask, right, wrong }: { ask: WorkedAsk; right: boolean; wrong: boolean }) {
  const shown = shownWorkings.value.has(ask.name);
  const whole = right || shown;
  // A kept wrong answer, read again after a reload, has its first hint.
  const count = Math.max(tries.value[ask.name] ?? 0, wrong ? 1 : 0);
  if (!whole && count === 0) return null;
  const hint = whole ? wholeWorking(ask) : hintAfter(ask, count);
  return (
    <div class="help">
      <h4>
        {whole ? q.working : q.hint}
        {hint && !whole && <small>{q.hintOf(num(hint.level), num(hint.last))}</small>}
      </h4>
      {shown && !right && <p class="answer-is">{q.shown(keyWords(ask))}</p>}
      {hint && <HintLines hint={hint} />}
      {!whole && (
        <button type="button" class="btn" onClick={() => showWorking(ask.name)}>
          {q.show}
        </button>
      )}
    </div>
  );
}

interface FieldProps {
  readonly onText: (text: string) => void;
  readonly named: string;
}

function NumberField({ ask, onText, named }: FieldProps & { ask: WorkedNumber }) {
  const units = unitsFor(ask);
  const [typed, setTyped] = useState(answers.value[ask.name] ?? "");
  const [unit, setUnit] = useState(ask.unit);
  const now = useRef(typed);
  return (
    <form
      class="answer-row"
      onSubmit={(event) => {
        event.preventDefault();
        onText(answerText(ask, now.current, unit));
      }}
    >
      <input
        type="text"
        inputMode="decimal"
        autocomplete="off"
        spellcheck={false}
        class="answer-field"
        aria-label={q.answer}
        aria-describedby={named}
        value={typed}
        onInput={(event) => {
          now.current = event.currentTarget.value;
          setTyped(now.current);
        }}
      />
      {units.length > 1 ? (
        <select aria-label={q.unit} value={unit} onChange={(event) => setUnit(event.currentTarget.value)}>
          {units.map(({ id }) => (
            <option key={id} value={id}>
              {id === "" ? q.bare : id}
            </option>
          ))}
        </select>
      ) : (
        <span class="answer-unit">{ask.unit}</span>
      )}
      <span class="grow" />
      <button type="submit" class="btn filled">
        {q.check}
      </button>
    </form>
  );
}

function ChoiceField({ ask, onText, named }: FieldProps & { ask: WorkedChoice }) {
  const [picked, setPicked] = useState(answers.value[ask.name] ?? "");
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        onText(picked);
      }}
    >
      <fieldset class="choices-field" aria-labelledby={named}>
        {ask.choices.map(({ text }, place) => {
          const letter = choiceLetter(place);
          return (
            <label key={letter} class="check">
              <input
                type="radio"
                name={`choice-${ask.name}`}
                value={letter}
                checked={picked === letter}
                onChange={() => setPicked(letter)}
              />
              <span>
                <Inlines of={text} />
              </span>
            </label>
          );
        })}
      </fieldset>
      <div class="answer-row">
        <span class="grow" />
        <button type="submit" class="btn filled">
          {q.check}
        </button>
      </div>
    </form>
  );
}

/** A question: its field, the verdict, and help from the working. */
export function Question({ ask }: { ask: WorkedAsk }) {
  const [empty, setEmpty] = useState(false);
  const named = `question-${ask.name}`;
  const given = answers.value[ask.name];
  const verdict = verdictOf(ask, given);
  const right = verdict?.right === true;
  useEffect(() => setEmpty(false), [given]);
  const take = (text: string): void => {
    setEmpty(text.trim() === "");
    if (text.trim() !== "") answer(ask, text);
  };
  return (
    <section class={right ? "question right" : "question"} aria-labelledby={named}>
      <div class="question-body">
        <p class="question-text" id={named}>
          <Inlines of={ask.question} />
        </p>
        {ask.kind === "number" ? (
          <NumberField key={ask.name} ask={ask} onText={take} named={named} />
        ) : (
          <ChoiceField key={ask.name} ask={ask} onText={take} named={named} />
        )}
        <p class="question-foot">{ask.kind === "number" ? q.within(ask.toleranceText) : q.choose}</p>
        <p class="verdict" role="status">
          {empty ? q.empty : verdict && <b>{verdict.text}</b>}
        </p>
      </div>
      <Help ask={ask} right={right} wrong={verdict !== null && !right} />
    </section>
  );
}
