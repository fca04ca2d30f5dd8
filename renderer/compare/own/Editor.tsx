import { useEffect, useRef, useState } from "preact/hooks";
import { t } from "../../texts/catalogue.ts";
import type { CodeEditor } from "./code-editor.ts";

const c = t.compare.own;

/** The line that is marked, and the word in it. */
export interface Marked {
  readonly line: number;
  readonly column: number | null;
}

interface EditorProps {
  readonly text: string;
  /** the text as it is at the moment: while somebody types quickly, what was drawn last is already old */
  readonly latest: () => string;
  readonly onText: (text: string) => void;
  readonly marked: Marked | null;
  /** counts up with each wish to go to the marked line */
  readonly going: number;
}

/** Keys that the page would take for its own. */
const isPlain = (event: KeyboardEvent): boolean => !(event.ctrlKey || event.metaKey || event.altKey);

/** The text of a strategy with its line numbers. The editor's own code is loaded when it is first shown. */
export function Editor({ text, latest, onText, marked, going }: EditorProps) {
  const host = useRef<HTMLDivElement>(null);
  const editor = useRef<CodeEditor | null>(null);
  const [ready, setReady] = useState(false);
  useEffect(() => {
    let left = false;
    const open = async (): Promise<void> => {
      const { codeEditor } = await import("./code-editor.ts");
      if (left || !host.current) return;
      editor.current = codeEditor(host.current, { text: latest(), name: c.field, hint: c.leave, onText });
      setReady(true);
    };
    void open();
    return () => {
      left = true;
      editor.current?.destroy();
      editor.current = null;
    };
  }, []);
  useEffect(() => editor.current?.setText(latest()), [text]);
  useEffect(
    () => editor.current?.mark(marked?.line ?? null, marked?.column ?? null),
    [ready, marked?.line, marked?.column],
  );
  useEffect(() => {
    if (going > 0 && marked) editor.current?.goTo(marked.line);
  }, [going]);
  return (
    <div class="code">
      {!ready && <p class="unit">{c.loading}</p>}
      <div
        class="code-host"
        ref={host}
        onKeyDown={(event) => {
          if (isPlain(event)) event.stopPropagation();
        }}
      />
    </div>
  );
}
