import { useImperativeHandle, useLayoutEffect, useRef, useState } from "preact/hooks";
import { type LineMark, lineAt, lineCount, lineSpan, marksByLine } from "./editor-lines.ts";

export type { LineMark } from "./editor-lines.ts";

/** What can be done with an editor from outside. */
export interface EditorHandle {
  /** Puts the cursor on a line, from 1, selects it and brings it into view. */
  readonly goToLine: (line: number) => void;
  /** Puts text in place of what is selected; it can be undone like typing. */
  readonly insert: (text: string) => void;
  /** The line of the cursor, from 1. */
  readonly line: () => number;
}

interface TextEditorProps {
  readonly name: string;
  /** shown when it differs from what was typed last: another text, or one changed from outside */
  readonly value: string;
  readonly onText: (text: string) => void;
  /** lines that are marked: a sign beside their number, a ground below them, their text as a hint */
  readonly marks?: readonly LineMark[];
  readonly readOnly?: boolean;
  /** characters; the field takes no more */
  readonly most?: number;
  /** id of a text that describes it */
  readonly describedBy?: string;
  readonly handle?: { current: EditorHandle | null };
}

/** Inserts as if it were typed, so that the field's own undo takes it back. */
function insertTyped(field: HTMLTextAreaElement, text: string): void {
  field.focus();
  // The only way into a field's own undo; a field that refuses it gets the text all the same.
  if (!document.execCommand("insertText", false, text)) {
    field.setRangeText(text, field.selectionStart, field.selectionEnd, "end");
    field.dispatchEvent(new Event("input", { bubbles: true }));
  }
}

/**
 * A plain text field with line numbers and marked lines. Tab leaves it; undo is the field's own. Lines do not wrap, so
 * that each stands beside its number.
 */
export function TextEditor(props: TextEditorProps) {
  const { name, value, onText, marks = [], readOnly = false, most, describedBy, handle } = props;
  const field = useRef<HTMLTextAreaElement>(null);
  const [text, setText] = useState(value);
  const [top, setTop] = useState(0);
  const last = useRef(value);
  useLayoutEffect(() => {
    if (value === last.current || !field.current) return;
    last.current = value;
    field.current.value = value;
    setText(value);
  }, [value]);
  const own: EditorHandle = {
    goToLine: (line) => {
      const at = field.current;
      if (!at) return;
      const { start, end } = lineSpan(at.value, line);
      at.focus();
      at.setSelectionRange(start, end);
      const height = Number.parseFloat(getComputedStyle(at).lineHeight);
      at.scrollTop = Math.max(0, (line - 1) * height - at.clientHeight / 3);
      at.scrollLeft = 0;
    },
    insert: (inserted) => {
      if (field.current && !readOnly) insertTyped(field.current, inserted);
    },
    line: () => lineAt(field.current?.value ?? "", field.current?.selectionStart ?? 0),
  };
  const unused = useRef<EditorHandle>(null);
  useImperativeHandle(handle ?? unused, () => own);
  const lines = lineCount(text);
  const marked = marksByLine(marks, lines);
  const numbers = Array.from({ length: lines }, (_, i) => i + 1).join("\n");
  return (
    <div class="text-editor">
      <div class="editor-gutter" aria-hidden="true">
        <div style={{ transform: `translateY(${-top}px)` }}>
          <pre>{numbers}</pre>
          {[...marked].map(([line, hint]) => (
            <span key={line} class="editor-sign" title={hint} style={{ "--line": line - 1 }}>
              !
            </span>
          ))}
        </div>
      </div>
      <div class="editor-field">
        <div class="editor-marks" aria-hidden="true" style={{ transform: `translateY(${-top}px)` }}>
          {[...marked.keys()].map((line) => (
            <span key={line} style={{ "--line": line - 1 }} />
          ))}
        </div>
        <textarea
          ref={field}
          aria-label={name}
          aria-invalid={marked.size > 0}
          aria-describedby={describedBy}
          wrap="off"
          spellcheck={false}
          autocomplete="off"
          readOnly={readOnly}
          maxLength={most}
          defaultValue={value}
          onInput={(event) => {
            last.current = event.currentTarget.value;
            setText(last.current);
            onText(last.current);
          }}
          onScroll={(event) => setTop(event.currentTarget.scrollTop)}
        />
      </div>
    </div>
  );
}
