import { tell } from "../app/window.ts";
import { num } from "../state/format.ts";
import { bringBackLesson, deletedLesson, deleteLesson, lessonProgress } from "../state/lessons.ts";
import { t } from "../texts/catalogue.ts";
import { FilePick } from "../ui/FilePick.tsx";
import { Icon } from "../ui/icons.tsx";
import { answeredCount, type LessonEntry, questionCount, readingOf } from "./catalogue.ts";
import { MOST_LESSON_BYTES, newLesson, refuseLargeLesson, takeLessonFile } from "./files.ts";
import { LessonGlyph } from "./LessonGlyph.tsx";
import { entries, openById } from "./state.ts";

const l = t.lesson.list;

function progressText(entry: LessonEntry): string {
  const { lesson, faults } = readingOf(entry);
  if (faults.length > 0) return l.broken(num(faults.length));
  const begun = lessonProgress.value[entry.id];
  if (!begun) return l.notBegun;
  const answered = answeredCount(lesson, begun.answers);
  return l.done(num(answered), num(questionCount(lesson)), num(begun.step + 1));
}

function Row({ entry }: { entry: LessonEntry }) {
  const { lesson, faults } = readingOf(entry);
  return (
    <tr>
      <td class="lesson-glyph">{faults.length === 0 && <LessonGlyph lesson={lesson} />}</td>
      <th scope="row">
        <button type="button" class="lesson-open" onClick={() => openById(entry.id)}>
          {lesson.title}
        </button>
        <p>{lesson.about}</p>
      </th>
      <td class="n">{lesson.minutes > 0 ? num(lesson.minutes) : "–"}</td>
      <td class="n">{num(lesson.steps.length)}</td>
      <td class="n">{num(questionCount(lesson))}</td>
      <td>{progressText(entry)}</td>
      <td>
        {entry.own ? (
          <button
            type="button"
            class="btn quiet"
            aria-label={l.delete(lesson.title)}
            onClick={() => {
              deleteLesson(entry.id);
              tell(l.deleted(lesson.title));
            }}
          >
            <Icon name="close" /> {l.deleteWord}
          </button>
        ) : (
          l.builtIn
        )}
      </td>
    </tr>
  );
}

/** All lessons: built-in ones in the order of a course, then own ones. */
export const LessonList = () => (
  <main class="lesson-list" id="place">
    <div class="list-tools">
      <button type="button" class="btn" onClick={newLesson}>
        <Icon name="plus" /> {l.new}
      </button>
      <FilePick
        name={l.open}
        accept=".md,.markdown,text/markdown,text/plain"
        most={MOST_LESSON_BYTES}
        onText={takeLessonFile}
        onTooLarge={refuseLargeLesson}
      />
      {deletedLesson.value && (
        <button type="button" class="btn quiet" onClick={bringBackLesson}>
          <Icon name="undo" /> {l.bringBack(deletedLesson.value.title)}
        </button>
      )}
    </div>
    <table class="lessons">
      <thead>
        <tr>
          <td />
          <th scope="col">{l.title}</th>
          <th scope="col" class="n">
            {l.minutes}
          </th>
          <th scope="col" class="n">
            {l.steps}
          </th>
          <th scope="col" class="n">
            {l.questions}
          </th>
          <th scope="col">{l.progress}</th>
          <th scope="col">{l.kind}</th>
        </tr>
      </thead>
      <tbody>
        {entries.value.map((entry) => (
          <Row key={entry.id} entry={entry} />
        ))}
      </tbody>
    </table>
    <p class="caution">{t.caution}</p>
  </main>
);
