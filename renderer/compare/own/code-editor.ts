import {
  autocompletion,
  type Completion,
  type CompletionContext,
  type CompletionResult,
} from "@codemirror/autocomplete";
import { defaultKeymap, history, historyKeymap, indentWithTab } from "@codemirror/commands";
import { javascript } from "@codemirror/lang-javascript";
import { bracketMatching, HighlightStyle, indentOnInput, syntaxHighlighting } from "@codemirror/language";
import { EditorState, Prec, RangeSet, StateEffect, StateField } from "@codemirror/state";
import {
  Decoration,
  type DecorationSet,
  EditorView,
  GutterMarker,
  gutterLineClass,
  highlightSpecialChars,
  keymap,
  lineNumbers,
  MatchDecorator,
  ViewPlugin,
  type ViewUpdate,
} from "@codemirror/view";
import { tags } from "@lezer/highlight";
import { INPUT_NAMES, VEHICLE_NAMES } from "./slips.ts";

/** A text editor in an element. */
export interface CodeEditor {
  readonly text: () => string;
  /** Puts another text in; what listens to edits is not told. */
  readonly setText: (text: string) => void;
  /** Marks a line, and the word at a column of it; both count from 1; null takes the mark away. */
  readonly mark: (line: number | null, column: number | null) => void;
  readonly goTo: (line: number) => void;
  readonly destroy: () => void;
}

interface EditorInput {
  readonly text: string;
  readonly name: string;
  readonly hint: string;
  readonly onText: (text: string) => void;
}

interface Spot {
  readonly line: number;
  readonly column: number | null;
}

const setMark = StateEffect.define<Spot | null>();

const faultLine = Decoration.line({ class: "cm-fault-line" });
const faultWord = Decoration.mark({ class: "cm-fault-word" });

function decorate(state: EditorState, { line, column }: Spot): DecorationSet {
  const found = state.doc.line(Math.min(state.doc.lines, Math.max(1, line)));
  const ranges = [faultLine.range(found.from)];
  const first = column === null ? found.text.search(/\S/) : Math.min(column - 1, found.length);
  const word = /^[\w$]+/.exec(found.text.slice(first))?.[0] ?? "";
  const to = column === null || word === "" ? found.length : first + word.length;
  if (first >= 0 && to > first) ranges.push(faultWord.range(found.from + first, found.from + to));
  return Decoration.set(ranges);
}

/** The marked line and word; they move with the text as it is edited. */
const marks = StateField.define<DecorationSet>({
  create: () => Decoration.none,
  update(old, transaction) {
    let now = old.map(transaction.changes);
    for (const effect of transaction.effects) {
      if (effect.is(setMark))
        now = effect.value ? decorate(transaction.state, effect.value) : Decoration.none;
    }
    return now;
  },
  provide: (field) => EditorView.decorations.from(field),
});

class FaultGutter extends GutterMarker {
  override elementClass = "cm-fault-number";
}
const faultGutter = new FaultGutter();

/** The hatch beside the marked line's number. */
const gutterMarks = gutterLineClass.compute([marks], (state) => {
  const lines: number[] = [];
  state.field(marks).between(0, state.doc.length, (from, _, value) => {
    if (value === faultLine) lines.push(from);
  });
  return RangeSet.of(lines.map((from) => faultGutter.range(from)));
});

/** Inputs have a dotted underline, as whatever can be asked has on this sheet. */
const known = new Set([...INPUT_NAMES, ...VEHICLE_NAMES]);
const inputMark = Decoration.mark({ class: "cm-input" });
const inputs = new MatchDecorator({
  regexp: /\bnow\.(?:vehicle\.)?([\w$]+)/g,
  decorate: (add, from, to, match) => {
    if (known.has(match[1] ?? "")) add(from, to, inputMark);
  },
});
const inputMarks = ViewPlugin.define(
  (view) => ({
    marks: inputs.createDeco(view),
    update(update: ViewUpdate) {
      this.marks = inputs.updateDeco(update, this.marks);
    },
  }),
  { decorations: (plugin) => plugin.marks },
);

const option = (label: string): Completion => ({ label, type: "property" });
const NOW = INPUT_NAMES.map(option);
const VEHICLE = VEHICLE_NAMES.map(option);

/** The names that come after `now.` and `now.vehicle.` */
function complete(context: CompletionContext): CompletionResult | null {
  const typed = context.matchBefore(/\bnow\.(vehicle\.)?\w*/);
  if (!typed) return null;
  const from = typed.from + typed.text.lastIndexOf(".") + 1;
  return { from, options: typed.text.startsWith("now.vehicle.") ? VEHICLE : NOW, validFor: /^\w*$/ };
}

/** Keywords by weight and not by hue: hues belong to shafts and powers. */
const looks = HighlightStyle.define([
  { tag: tags.keyword, fontWeight: "700" },
  { tag: tags.comment, color: "var(--ink-2)", fontStyle: "italic" },
]);

const theme = EditorView.theme({
  "&": { height: "100%", color: "var(--ink)", fontSize: "var(--fs-1)" },
  "&.cm-focused": { outline: "2px solid var(--focus)", outlineOffset: "-2px" },
  ".cm-scroller": { fontFamily: "var(--font-code)", lineHeight: "1.57" },
  ".cm-content": { caretColor: "var(--ink)", padding: "6px 0" },
  ".cm-line": { padding: "0 10px" },
  ".cm-gutters": { background: "none", border: "0", color: "var(--ink-3)" },
  ".cm-lineNumbers .cm-gutterElement": { padding: "0 9px 0 14px", minWidth: "3em" },
  ".cm-lineNumbers .cm-fault-number": {
    color: "var(--ink)",
    fontWeight: "700",
    borderRight: "5px solid var(--ink)",
    background: "var(--well)",
    paddingRight: "4px",
  },
  ".cm-fault-line": { background: "var(--well)" },
  ".cm-fault-word": { textDecoration: "underline wavy 1.5px var(--ink)", textUnderlineOffset: "3px" },
  ".cm-input": { borderBottom: "1.5px dotted var(--ink-3)" },
  ".cm-matchingBracket, &.cm-focused .cm-matchingBracket": {
    background: "none",
    outline: "1px solid var(--ink-3)",
  },
  "& .cm-selectionBackground, & ::selection, &.cm-focused ::selection": {
    background: "var(--ring-tint)",
  },
  ".cm-tooltip": { background: "var(--panel)", border: "1px solid var(--ink)", color: "var(--ink)" },
  ".cm-tooltip.cm-tooltip-autocomplete > ul": { fontFamily: "var(--font-code)", maxHeight: "12em" },
  ".cm-tooltip.cm-tooltip-autocomplete > ul > li": { padding: "3px 8px" },
  ".cm-tooltip-autocomplete ul li[aria-selected]": { background: "var(--ink)", color: "var(--sheet)" },
  ".cm-completionIcon": { display: "none" },
});

/** ms after Escape in which Tab leaves the editor. */
const LEAVE = 3000;

/** Escape makes Tab leave, also when it closes a list of names at the same time: this comes before that. */
const leaving = Prec.highest(
  keymap.of([
    {
      key: "Escape",
      run: (view) => {
        view.setTabFocusMode(LEAVE);
        return false;
      },
    },
  ]),
);

/**
 * Puts an editor into an element. It stands in a shadow tree, where its styles come as sheets of script and no policy
 * against inline styles is touched. Escape, then Tab, leaves it.
 */
export function codeEditor(host: HTMLElement, { text, name, hint, onText }: EditorInput): CodeEditor {
  const root = host.shadowRoot ?? host.attachShadow({ mode: "open" });
  let quiet = false;
  const view = new EditorView({
    root,
    parent: root,
    state: EditorState.create({
      doc: text,
      extensions: [
        leaving,
        lineNumbers(),
        highlightSpecialChars(),
        history(),
        indentOnInput(),
        bracketMatching(),
        javascript(),
        syntaxHighlighting(looks),
        autocompletion({ override: [complete], icons: false }),
        inputMarks,
        marks,
        gutterMarks,
        theme,
        EditorView.contentAttributes.of({
          "aria-label": name,
          "aria-description": hint,
          spellcheck: "false",
        }),
        EditorView.updateListener.of((update) => {
          if (update.docChanged && !quiet) onText(update.state.doc.toString());
        }),
        keymap.of([indentWithTab, ...defaultKeymap, ...historyKeymap]),
      ],
    }),
  });
  return {
    text: () => view.state.doc.toString(),
    setText: (next) => {
      if (next === view.state.doc.toString()) return;
      quiet = true;
      view.dispatch({ changes: { from: 0, to: view.state.doc.length, insert: next } });
      quiet = false;
    },
    mark: (line, column) => view.dispatch({ effects: setMark.of(line === null ? null : { line, column }) }),
    goTo: (line) => {
      const { from } = view.state.doc.line(Math.min(view.state.doc.lines, Math.max(1, line)));
      view.dispatch({ selection: { anchor: from }, scrollIntoView: true });
      view.focus();
    },
    destroy: () => {
      view.destroy();
      root.replaceChildren();
    },
  };
}
