import { useState } from "preact/hooks";
import type { Mark, Marking } from "../../sim/lesson/marking/mark.ts";
import { num } from "../state/format.ts";
import { lessonSeed } from "../state/lessons.ts";
import { t } from "../texts/catalogue.ts";
import { FilePick } from "../ui/FilePick.tsx";
import { Icon } from "../ui/icons.tsx";
import { MOST_ANSWER_BYTES, refuseLargeAnswers, saveTable } from "./files.ts";
import { Making, Refusals, SeedField } from "./HandoutPane.tsx";
import { marked, markFile, onlyClass, students, whom } from "./handout-state.ts";
import { entry } from "./state.ts";

const m = t.lesson.mark;

const Cell = ({ mark }: { mark: Mark | undefined }) => {
  if (!mark) return <td />;
  return (
    <td class={`mark ${mark.result}`} title={mark.remark || m.words[mark.result]}>
      <span aria-hidden="true">{m.signs[mark.result]}</span>
      <span class="unseen">{m.words[mark.result]}</span>
    </td>
  );
};

interface PointsProps {
  readonly marking: Marking;
  readonly chosen: string | null;
  readonly onChoose: (student: string) => void;
}

/** Points of each student and question. */
function Points({ marking, chosen, onChoose }: PointsProps) {
  const { students: rows, questions, marks } = marking;
  const of = new Map(marks.map((mark) => [`${mark.student}\n${mark.question}`, mark]));
  return (
    <table class="points">
      <thead>
        <tr>
          <th scope="col">{m.student}</th>
          <th scope="col" class="n">
            {m.points}
          </th>
          {questions.map(({ name }) => (
            <th key={name} scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map(({ name, right, of: all }) => (
          <tr key={name} class={name === chosen ? "picked" : ""}>
            <th scope="row">
              <button type="button" aria-pressed={name === chosen} onClick={() => onChoose(name)}>
                {name}
              </button>
            </th>
            <td class="n">{m.of(num(right), num(all))}</td>
            {questions.map((question) => (
              <Cell key={question.name} mark={of.get(`${name}\n${question.name}`)} />
            ))}
          </tr>
        ))}
      </tbody>
      <tfoot>
        <tr>
          <th scope="row">{m.total}</th>
          <td />
          {questions.map(({ name, right, of: all }) => (
            <td key={name}>{m.of(num(right), num(all))}</td>
          ))}
        </tr>
      </tfoot>
    </table>
  );
}

/** All answers of one student, with the keys of that student's numbers. */
const Detail = ({ marking, student }: { marking: Marking; student: string }) => (
  <section class="mark-detail" aria-label={m.detail(student)}>
    <h3>{m.detail(student)}</h3>
    <table>
      <thead>
        <tr>
          {[m.question, m.given, m.key, m.within, m.result, m.remark].map((name) => (
            <th key={name} scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {marking.marks
          .filter((mark) => mark.student === student)
          .map((mark) => (
            <tr key={mark.question}>
              <th scope="row">{mark.question}</th>
              <td>{mark.given}</td>
              <td>{mark.key}</td>
              <td>{mark.tolerance}</td>
              <td>{m.words[mark.result]}</td>
              <td>{mark.remark}</td>
            </tr>
          ))}
      </tbody>
    </table>
  </section>
);

function Results() {
  const [chosen, setChosen] = useState<string | null>(null);
  const found = marked.value;
  if (!found || found.id !== entry.value?.id) return <p class="empty">{m.none}</p>;
  const { marking, csv, fileName, id } = found;
  const student = marking.students.some(({ name }) => name === chosen) ? chosen : null;
  return (
    <>
      <div class="editor-tools">
        <h3>{m.results(fileName)}</h3>
        <span class="grow" />
        <button type="button" class="btn" onClick={() => void saveTable(`${id}-marks.csv`, csv)}>
          <Icon name="save" /> {m.save}
        </button>
      </div>
      <div class="points-scroll" tabIndex={0} role="region" aria-label={m.results(fileName)}>
        <Points marking={marking} chosen={student} onChoose={setChosen} />
        <p class="form-note">{m.legend}</p>
        {student !== null && <Detail marking={marking} student={student} />}
      </div>
    </>
  );
}

/** Marking: the file at the left, the points at the right. */
export const MarkPane = () => (
  <main class="lesson-hand" id="place">
    <section class="l-form" aria-labelledby="mark-title">
      <h2 class="view-head" id="mark-title">
        {m.title} <small>{m.sub}</small>
      </h2>
      <div class="form-body">
        <p class="form-note">{m.form}</p>
        <SeedField />
        <p class="form-note">{m.seedIs(String(lessonSeed.value))}</p>
        <label class="check">
          <input
            type="checkbox"
            checked={onlyClass.value}
            disabled={whom.value === "one" || students() === null}
            onChange={() => {
              onlyClass.value = !onlyClass.value;
            }}
          />
          {m.onlyClass}
        </label>
        <FilePick
          name={m.open}
          accept=".csv,text/csv,text/plain"
          most={MOST_ANSWER_BYTES}
          onText={(text, name) => void markFile(text, name)}
          onTooLarge={refuseLargeAnswers}
        />
        <Making />
        <Refusals title={m.refused} />
      </div>
    </section>
    <section class="l-pages" aria-label={m.title}>
      <Results />
    </section>
  </main>
);
