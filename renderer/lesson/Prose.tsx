import type { ComponentChildren } from "preact";
import type { Block, Inline, LessonPart, ViewLetter } from "../../sim/lesson/lesson.ts";
import { SHAFT_OF } from "../bench/parts.ts";
import { pressedPart, pressedView } from "./stage.ts";

const colourOf = (part: LessonPart): string => (part === "battery" ? "battery" : (SHAFT_OF[part] ?? ""));

/** A part's name in the text: a press points at the part on the stage. */
const PartLink = ({ part, children }: { part: LessonPart; children: ComponentChildren }) => (
  <button
    type="button"
    class={`number part-link ink ${colourOf(part)}`}
    aria-pressed={pressedPart.value === part}
    onClick={() => {
      pressedPart.value = pressedPart.value === part ? null : part;
    }}
  >
    {children}
  </button>
);

/** A view's letter in the text: a press marks the view on the stage. */
const ViewLink = ({ view, children }: { view: ViewLetter; children: ComponentChildren }) => (
  <button
    type="button"
    class="number view-link"
    aria-pressed={pressedView.value === view}
    onClick={() => {
      pressedView.value = pressedView.value === view ? null : view;
    }}
  >
    <span class="tag-text">{children}</span>
  </button>
);

function One({ node }: { node: Inline }) {
  switch (node.kind) {
    case "text":
      return <>{node.text}</>;
    case "code":
      return <code>{node.text}</code>;
    case "break":
      return <br />;
    case "strong":
      return (
        <strong>
          <Inlines of={node.children} />
        </strong>
      );
    case "emphasis":
      return (
        <em>
          <Inlines of={node.children} />
        </em>
      );
    case "part":
      return (
        <PartLink part={node.part}>
          <Inlines of={node.children} />
        </PartLink>
      );
    case "view":
      return (
        <ViewLink view={node.view}>
          <Inlines of={node.children} />
        </ViewLink>
      );
    case "value":
      return <b class="live">{node.text}</b>;
  }
}

/** Running text of a lesson. */
export const Inlines = ({ of }: { of: readonly Inline[] }) => (
  <>
    {of.map((node, i) => (
      <One key={i} node={node} />
    ))}
  </>
);

interface BlocksProps {
  readonly of: readonly Block[];
  /** the frame of a question, by its name */
  readonly question: (name: string) => ComponentChildren;
}

function OneBlock({ block, question }: { block: Block; question: BlocksProps["question"] }) {
  switch (block.kind) {
    case "paragraph":
      return (
        <p>
          <Inlines of={block.children} />
        </p>
      );
    case "heading":
      return (
        <h3>
          <Inlines of={block.children} />
        </h3>
      );
    case "quote":
      return (
        <blockquote>
          <Blocks of={block.children} question={question} />
        </blockquote>
      );
    case "list": {
      const items = block.items.map((item, i) => (
        <li key={i}>
          <Blocks of={item} question={question} />
        </li>
      ));
      return block.ordered ? <ol>{items}</ol> : <ul>{items}</ul>;
    }
    case "code":
      return (
        <pre>
          <code>{block.text}</code>
        </pre>
      );
    case "rule":
      return <hr />;
    case "question":
      return <>{question(block.name)}</>;
  }
}

/** Blocks of a lesson's text. */
export const Blocks = ({ of, question }: BlocksProps) => (
  <>
    {of.map((block) => (
      <OneBlock key={`${block.kind}${block.line}`} block={block} question={question} />
    ))}
  </>
);
