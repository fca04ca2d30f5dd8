import { useEffect } from "preact/hooks";
import { TeachingCell, TeethCell } from "../app/strip-parts.tsx";
import { ActionButton, ProjectorButton } from "../app/top-parts.tsx";
import { num, ratio } from "../state/format.ts";
import { openLesson } from "../state/lessons.ts";
import { projector } from "../state/settings.ts";
import { t } from "../texts/catalogue.ts";
import { isRight } from "./answer.ts";
import { HandoutPane } from "./HandoutPane.tsx";
import { LessonList } from "./LessonList.tsx";
import { MarkPane } from "./MarkPane.tsx";
import { Player } from "./Player.tsx";
import { followLesson, vehicle } from "./stage.ts";
import { answers, beginAnew, entry, MODES, mode, openById, reading, worked } from "./state.ts";
import { Writer } from "./Writer.tsx";
import { refusals } from "./work.ts";

const l = t.lesson;

/** Read, write, hand out or mark. */
const Modes = () => (
  <fieldset class="segments" aria-label={l.modesName}>
    {MODES.map((one) => (
      <button
        key={one}
        type="button"
        aria-pressed={mode.value === one}
        onClick={() => {
          refusals.value = [];
          mode.value = one;
        }}
      >
        {l.modes[one]}
      </button>
    ))}
  </fieldset>
);

/** Top bar of Lessons. */
export function LessonTop() {
  const lesson = entry.value ? reading.value?.lesson : undefined;
  return (
    <header class="top lesson-top">
      <h1>{l.name}</h1>
      {lesson ? (
        <>
          <span class="fact lesson-title">
            <b>{lesson.title}</b>
          </span>
          <span class="fact wide">
            {lesson.minutes > 0
              ? l.facts(num(lesson.minutes), num(lesson.steps.length))
              : l.factsShort(num(lesson.steps.length))}
          </span>
          <span class="grow" />
          <ActionButton icon="list" text={l.toList} onClick={() => openById(null)} />
          {mode.value === "read" && <ActionButton icon="first" text={l.again} onClick={beginAnew} />}
          {!projector.value && <Modes />}
        </>
      ) : (
        <>
          <span class="fact wide">{l.allSub}</span>
          <span class="grow" />
        </>
      )}
      <ProjectorButton />
    </header>
  );
}

/** The list, or what is done with the open lesson. On a projector it is always read. */
export function LessonSheet() {
  useEffect(() => followLesson(), []);
  const now = entry.value;
  if (!now || openLesson.value === null) return <LessonList />;
  if (projector.value) return <Player />;
  switch (mode.value) {
    case "read":
      return <Player />;
    case "write":
      return <Writer entry={now} />;
    case "handout":
      return <HandoutPane />;
    case "mark":
      return <MarkPane />;
  }
}

/** Title block of Lessons: what stands on the stage, and how much is answered. */
export function LessonStrip() {
  const asks = worked.value?.steps.flatMap((step) => step.asks) ?? [];
  const right = asks.filter((ask) => isRight(ask, answers.value[ask.name])).length;
  const { gearSet } = vehicle.value;
  return (
    <footer class="strip" aria-label={t.strip.name}>
      {worked.value && (
        <>
          <TeethCell gearSet={gearSet} />
          <div class="wide">
            <i class="math">k</i> = <b>{ratio(gearSet.ringTeeth / gearSet.sunTeeth)}</b>
          </div>
          <div class="wide">
            {l.strip.key} <b>{l.strip.keyWords}</b>
          </div>
          <div>
            {l.strip.answers} <b>{l.strip.answersOf(num(right), num(asks.length))}</b>
          </div>
        </>
      )}
      <TeachingCell />
    </footer>
  );
}
