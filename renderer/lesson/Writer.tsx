import { useEffect, useRef, useState } from "preact/hooks";
import { faultText } from "../../shared/errors.ts";
import { LONGEST_LESSON } from "../../sim/lesson/read.ts";
import { num } from "../state/format.ts";
import { writeLesson } from "../state/lessons.ts";
import { t } from "../texts/catalogue.ts";
import { lessonSnippets } from "../texts/lesson-snippets-en.ts";
import { Dialog } from "../ui/Dialog.tsx";
import { Icon } from "../ui/icons.tsx";
import { type EditorHandle, TextEditor } from "../ui/TextEditor.tsx";
import { type LessonEntry, readingOf } from "./catalogue.ts";
import { copyLesson, saveLesson } from "./files.ts";
import { StepPane, Steps, Working } from "./Player.tsx";
import { Reference } from "./Reference.tsx";
import { Stage } from "./Stage.tsx";
import { faults, reading, worked, working } from "./state.ts";

const w = t.lesson.write;

/** Time after the last key at which the lesson is read and worked anew, ms. */
const SETTLED = 350;

const SNIPPETS = Object.keys(w.blocks) as (keyof typeof w.blocks)[];

/** A block to be put where the cursor stands. */
function Insert({ editor }: { editor: { current: EditorHandle | null } }) {
  const [chosen, setChosen] = useState<keyof typeof w.blocks>("ask");
  return (
    <>
      <select
        aria-label={w.insertName}
        value={chosen}
        onChange={(event) => {
          const found = SNIPPETS.find((name) => name === event.currentTarget.value);
          if (found) setChosen(found);
        }}
      >
        {SNIPPETS.map((name) => (
          <option key={name} value={name}>
            {w.blocks[name]}
          </option>
        ))}
      </select>
      <button
        type="button"
        class="btn"
        onClick={() => editor.current?.insert(`\n${lessonSnippets[chosen]}\n`)}
      >
        {w.insert}
      </button>
    </>
  );
}

/** What is wrong, each with its line; a press goes there. */
function Faults({ editor, settled }: { editor: { current: EditorHandle | null }; settled: boolean }) {
  const list = faults.value;
  const busy = !settled || working.value !== null;
  return (
    <section class="editor-faults" aria-label={w.faults(num(list.length))}>
      <p role="status">
        {busy ? w.checking : list.length === 0 ? w.good : <b>{w.faults(num(list.length))}</b>}
      </p>
      {list.length > 0 && (
        <ul>
          {list.map((fault, i) => (
            <li key={i}>
              <button type="button" onClick={() => editor.current?.goToLine(fault.line)}>
                <b>{w.fault(num(fault.line), fault.what)}</b>{" "}
                <span>
                  {fault.value !== "" && w.found(fault.value)}{" "}
                  {fault.accepted !== "" && w.accepted(fault.accepted)}
                </span>
              </button>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

/** The text of the open lesson; a built-in one can be read here, and made one's own. */
function TextPane({ entry }: { entry: LessonEntry }) {
  const editor = useRef<EditorHandle | null>(null);
  const timer = useRef(0);
  const typed = useRef<string | null>(null);
  const [settled, setSettled] = useState(true);
  const [reference, setReference] = useState(false);
  const take = (): void => {
    window.clearTimeout(timer.current);
    const text = typed.current;
    typed.current = null;
    if (text !== null) writeLesson(entry.id, readingOf({ text, file: entry.file }).lesson.title, text);
  };
  // What was typed last is never lost: not by leaving the place, not by closing the window.
  useEffect(() => {
    window.addEventListener("pagehide", take, { capture: true });
    return () => {
      window.removeEventListener("pagehide", take, { capture: true });
      take();
    };
  }, [entry.id]);
  const onText = (text: string): void => {
    typed.current = text;
    setSettled(false);
    window.clearTimeout(timer.current);
    timer.current = window.setTimeout(() => {
      take();
      setSettled(true);
    }, SETTLED);
  };
  const title = reading.value?.lesson.title ?? "";
  return (
    <section class="l-text" aria-labelledby="lesson-text">
      <h2 class="view-head" id="lesson-text">
        {w.title} <small>{w.sub}</small>
      </h2>
      <div class="editor-tools">
        {entry.own ? (
          <Insert editor={editor} />
        ) : (
          <button type="button" class="btn filled" onClick={() => copyLesson(title, entry.text)}>
            {w.copy}
          </button>
        )}
        <button type="button" class="btn quiet" onClick={() => setReference(true)}>
          <Icon name="list" /> {w.reference}
        </button>
        <span class="grow" />
        <button
          type="button"
          class="btn quiet"
          onClick={() => void saveLesson(entry.id, typed.current ?? entry.text)}
        >
          <Icon name="save" /> {w.save}
        </button>
      </div>
      {!entry.own && <p class="editor-note">{w.builtIn}</p>}
      <TextEditor
        key={entry.id}
        name={w.editor}
        value={entry.text}
        onText={onText}
        readOnly={!entry.own}
        most={LONGEST_LESSON}
        marks={faults.value.map((fault) => ({ line: fault.line, text: faultText(fault) }))}
        handle={editor}
      />
      <Faults editor={editor} settled={settled} />
      {reference && (
        <Dialog title={w.reference} onClose={() => setReference(false)}>
          <Reference />
        </Dialog>
      )}
    </section>
  );
}

/** A lesson as it is written: its text at the left, as it is read at the right. */
export const Writer = ({ entry }: { entry: LessonEntry }) => (
  <main class="lesson-write" id="place">
    <TextPane key={entry.id} entry={entry} />
    <section class="l-preview" aria-labelledby="lesson-preview">
      <h2 class="view-head" id="lesson-preview">
        {w.preview} <small>{w.previewSub}</small>
      </h2>
      {worked.value ? (
        <div class="preview-body">
          <Steps />
          <StepPane />
          <Stage />
        </div>
      ) : (
        <Working />
      )}
    </section>
  </main>
);
