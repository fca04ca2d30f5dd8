import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import { faultText } from "../../shared/errors.ts";
import { varies } from "../../sim/lesson/draw.ts";
import { take } from "../app/project.ts";
import { tell } from "../app/window.ts";
import { bridge } from "../bridge/chooser.ts";
import { num } from "../state/format.ts";
import { lessonSeed } from "../state/lessons.ts";
import { t } from "../texts/catalogue.ts";
import { Icon } from "../ui/icons.tsx";
import { savePage, saveTable } from "./files.ts";
import {
  count,
  isCurrent,
  madeNow,
  makeHandout,
  names,
  PAPERS,
  paper,
  students,
  whom,
} from "./handout-state.ts";
import { printAlone, putInto, takenApart } from "./paper.ts";
import { entry, reading } from "./state.ts";
import { readSeed, type Whom } from "./students.ts";
import { making, refusals, stopMaking } from "./work.ts";

const h = t.lesson.handout;

/** The seed, typed; kept with the project. */
export function SeedField() {
  const [typed, setTyped] = useState(String(lessonSeed.value));
  useEffect(() => setTyped(String(lessonSeed.value)), [lessonSeed.value]);
  const bad = readSeed(typed) === null;
  return (
    <label class="form-row">
      <span>{h.seed}</span>
      <input
        type="text"
        inputMode="numeric"
        autocomplete="off"
        value={typed}
        aria-invalid={bad}
        aria-describedby="seed-help"
        onInput={(event) => {
          setTyped(event.currentTarget.value);
          const seed = readSeed(event.currentTarget.value);
          if (seed !== null) lessonSeed.value = seed;
        }}
      />
      <small id="seed-help" class={bad ? "bad" : ""}>
        {bad ? h.badSeed : h.seedHelp}
      </small>
    </label>
  );
}

const WHOM: readonly Whom[] = ["one", "count", "names"];

/** For whom: one sheet, a number of them, or named students. */
function WhomField() {
  return (
    <fieldset class="form-set">
      <legend>{h.whom}</legend>
      {WHOM.map((one) => (
        <label key={one} class="check">
          <input
            type="radio"
            name="whom"
            checked={whom.value === one}
            onChange={() => {
              whom.value = one;
            }}
          />
          <span>{h[one]}</span>
        </label>
      ))}
      {whom.value === "count" && (
        <label class="form-row">
          <span>{h.countName}</span>
          <input
            type="text"
            inputMode="numeric"
            autocomplete="off"
            value={count.value}
            aria-invalid={students() === null}
            onInput={(event) => {
              count.value = event.currentTarget.value;
            }}
          />
          {students() === null && <small class="bad">{h.badCount}</small>}
        </label>
      )}
      {whom.value === "names" && (
        <label class="form-names">
          <span>{h.class}</span>
          <textarea
            rows={8}
            spellcheck={false}
            value={names.value}
            onInput={(event) => {
              names.value = event.currentTarget.value;
            }}
          />
        </label>
      )}
    </fieldset>
  );
}

/** What refused the last piece of work, in full. */
export const Refusals = ({ title }: { title: string }) =>
  refusals.value.length === 0 ? null : (
    <section class="refusals" role="alert">
      <h3>{title}</h3>
      <ul>
        {refusals.value.map((fault, i) => (
          <li key={i}>{faultText(fault)}</li>
        ))}
      </ul>
    </section>
  );

/** What is under way, and its end. */
export const Making = () =>
  making.value === null ? null : (
    <p class="making" role="status">
      {h.making(num(making.value))}{" "}
      <button type="button" class="btn quiet" onClick={stopMaking}>
        {t.lesson.cancel}
      </button>
    </p>
  );

/** A page as it will be printed; it takes the focus, so that keys scroll it. */
function PagePreview({ html, name }: { html: string; name: string }) {
  const host = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    if (host.current) putInto(host.current, takenApart(html));
  }, [html]);
  return (
    <div class="pages" tabIndex={0} role="region" aria-label={name}>
      <div class="page-host" ref={host} />
    </div>
  );
}

async function print(html: string, name: string): Promise<void> {
  await printAlone(html, async () => {
    const result = await bridge.printToPdf({ suggestedName: `${name}.pdf`, landscape: false });
    take(result, (file) => tell(h.printed(file.name)), t.notice.notSaved);
  });
}

function Pages() {
  const [shown, setShown] = useState<"sheets" | "key">("sheets");
  const made = madeNow();
  const id = entry.value?.id ?? "";
  if (!made) return <p class="empty">{h.none}</p>;
  const html = made[shown];
  const name = `${id}-${shown}`;
  return (
    <>
      <div class="editor-tools">
        <fieldset class="segments" aria-label={h.shown}>
          {(["sheets", "key"] as const).map((one) => (
            <button key={one} type="button" aria-pressed={shown === one} onClick={() => setShown(one)}>
              {h[one]}
            </button>
          ))}
        </fieldset>
        <span class="made">{isCurrent() ? h.made(num(made.sheetCount)) : h.notSame}</span>
        <span class="grow" />
        <button type="button" class="btn" onClick={() => void print(html, name)}>
          <Icon name="print" /> {h.print}
        </button>
        <button type="button" class="btn" onClick={() => void savePage(`${id}-sheets.html`, made.sheets)}>
          {h.saveSheets}
        </button>
        <button type="button" class="btn" onClick={() => void savePage(`${id}-key.html`, made.key)}>
          {h.saveKey}
        </button>
        <button
          type="button"
          class="btn quiet"
          onClick={() => void saveTable(`${id}-answers.csv`, made.form)}
        >
          {h.saveForm}
        </button>
      </div>
      <PagePreview html={html} name={h[shown]} />
    </>
  );
}

/** The handout: for whom at the left, the pages at the right. */
export const HandoutPane = () => (
  <main class="lesson-hand" id="place">
    <section class="l-form" aria-labelledby="handout-title">
      <h2 class="view-head" id="handout-title">
        {h.title} <small>{h.sub}</small>
      </h2>
      <form
        class="form-body"
        onSubmit={(event) => {
          event.preventDefault();
          void makeHandout();
        }}
      >
        <WhomField />
        <SeedField />
        {reading.value && !varies(reading.value.lesson) && <p class="form-note">{h.noVariety}</p>}
        <label class="form-row">
          <span>{h.paper}</span>
          <select
            value={paper.value}
            onChange={(event) => {
              paper.value = PAPERS.find((one) => one === event.currentTarget.value) ?? "a4";
            }}
          >
            {PAPERS.map((one) => (
              <option key={one} value={one}>
                {h.papers[one]}
              </option>
            ))}
          </select>
        </label>
        <button type="submit" class="btn filled" disabled={making.value !== null || students() === null}>
          {h.make}
        </button>
        <Making />
        <Refusals title={h.refused} />
        <p class="caution">{t.caution}</p>
      </form>
    </section>
    <section class="l-pages" aria-label={h.preview}>
      <Pages />
    </section>
  </main>
);
