import { useEffect, useRef } from "preact/hooks";
import { num } from "../state/format.ts";
import { t } from "../texts/catalogue.ts";
import { Icon } from "../ui/icons.tsx";
import { isRight } from "./answer.ts";
import { Blocks } from "./Prose.tsx";
import { Question } from "./Question.tsx";
import { Stage } from "./Stage.tsx";
import { answers, faults, goToStep, step, stepIndex, stepsGone, worked, working } from "./state.ts";

const l = t.lesson;

/** The steps, each with what is answered in it. */
export const Steps = () => (
  <nav class="l-steps" aria-label={l.steps}>
    <h2>{l.steps}</h2>
    <ol>
      {worked.value?.steps.map(({ title, asks, line }, place) => {
        const right = asks.filter((ask) => isRight(ask, answers.value[ask.name])).length;
        const state =
          asks.length === 0
            ? ""
            : right > 0
              ? l.stepState.right(num(right), num(asks.length))
              : l.stepState.open(num(asks.length));
        return (
          <li key={line}>
            <button
              type="button"
              aria-current={place === stepIndex.value ? "step" : undefined}
              onClick={() => goToStep(place)}
            >
              <span class={right === asks.length && right > 0 ? "square done" : "square"}>
                {num(place + 1)}
              </span>
              <span>
                {title}
                {state && <small>{state}</small>}
              </span>
            </button>
          </li>
        );
      })}
    </ol>
  </nav>
);

/** Back and on. */
function StepFoot() {
  const count = worked.value?.steps.length ?? 0;
  const at = stepIndex.value;
  return (
    <footer class="l-step-foot">
      {at > 0 && (
        <button type="button" class="btn" aria-label={l.backName(num(at))} onClick={() => goToStep(at - 1)}>
          <Icon name="less" /> {l.back(num(at))}
        </button>
      )}
      <span class="grow" />
      {at < count - 1 && (
        <button type="button" class="btn" aria-label={l.onName(num(at + 2))} onClick={() => goToStep(at + 1)}>
          {l.on(num(at + 2))} <Icon name="more" />
        </button>
      )}
    </footer>
  );
}

/** The text of the step with its questions. */
export function StepPane() {
  const now = step.value;
  const of = worked.value;
  const heading = useRef<HTMLHeadingElement>(null);
  const body = useRef<HTMLDivElement>(null);
  const gone = stepsGone.value;
  const before = useRef(gone);
  useEffect(() => {
    if (before.current === gone) return;
    before.current = gone;
    body.current?.scrollTo(0, 0);
    heading.current?.focus();
  }, [gone]);
  if (!now || !of) return null;
  const question = (name: string) => {
    const ask = now.asks.find((one) => one.name === name);
    return ask ? <Question key={`${of.id}:${name}`} ask={ask} /> : null;
  };
  const at = stepIndex.value;
  return (
    <section class="l-step" aria-labelledby="step-title">
      <div class="l-step-body" ref={body}>
        <p class="step-of">{l.stepOf(num(at + 1), num(of.steps.length))}</p>
        <h2 id="step-title" ref={heading} tabIndex={-1}>
          {now.title}
        </h2>
        {at === 0 && <Blocks of={of.intro} question={() => null} />}
        <Blocks of={now.body} question={question} />
        {faults.value.length > 0 && <p class="bad">{l.broken(num(faults.value.length))}</p>}
      </div>
      <StepFoot />
    </section>
  );
}

/** How far the working of the lesson is; nothing once it stands. */
export const Working = () =>
  working.value === null ? null : (
    <p class="empty" role="status">
      {l.working(num(working.value))}
    </p>
  );

/** A lesson as it is read: steps, text, stage. */
export const Player = () =>
  worked.value ? (
    <main class="lesson-read" id="place">
      <Steps />
      <StepPane />
      <Stage />
    </main>
  ) : (
    <main class="lesson-waits" id="place">
      <Working />
    </main>
  );
