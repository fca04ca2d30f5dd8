import type { RootContent } from "mdast";
import { slug } from "../../cycles/slug.ts";
import { InputError } from "../../shared/errors.ts";
import { type LessonFault, LessonFaults } from "./faults.ts";
import { readAsk } from "./fields/ask.ts";
import { readBench } from "./fields/bench.ts";
import { type Head, readHead } from "./fields/head.ts";
import { readPoint } from "./fields/point.ts";
import { readRun } from "./fields/run.ts";
import type { Ask, Block, Lesson, Pointer, Scene, Step } from "./lesson.ts";
import { nodesOf, readBlocks } from "./markdown/blocks.ts";
import { lineOf } from "./markdown/inline.ts";
import { checkReferences } from "./references.ts";

/** Longest text that is read, characters: a long lesson has some ten thousand. */
export const LONGEST_LESSON = 500_000;

/** Names of our fenced blocks. */
export const BLOCKS = ["lesson", "bench", "run", "point", "ask"] as const;

/** A text read as far as it goes: the lesson may lack what the faults tell. */
export interface LessonReading {
  readonly lesson: Lesson;
  /** in the order of the text; empty for a good lesson */
  readonly faults: readonly LessonFault[];
}

/** A step while it is gathered. */
class StepDraft {
  readonly body: Block[] = [];
  readonly scenes: Scene[] = [];
  readonly points: Pointer[] = [];
  readonly asks: Ask[] = [];

  constructor(
    readonly line: number,
    readonly title: string,
  ) {}

  finished(): Step {
    const { line, title, body, scenes, points, asks } = this;
    return { line, title, body, scenes, points, asks };
  }
}

const words = (node: RootContent): string => {
  if ("value" in node) return node.value;
  return "children" in node ? node.children.map((child) => words(child as RootContent)).join("") : "";
};

/** Reads the top-level nodes one after the other. */
class Reader {
  title: string | null = null;
  head: Head | null = null;
  readonly intro: Block[] = [];
  readonly steps: StepDraft[] = [];

  constructor(private readonly faults: LessonFaults) {}

  take(node: RootContent): void {
    const line = lineOf(node, 0);
    if (node.type === "heading" && node.depth === 1) this.takeTitle(words(node), line);
    else if (node.type === "heading" && node.depth === 2) this.steps.push(new StepDraft(line, words(node)));
    else if (node.type === "code" && node.lang) this.takeBlock(node.lang, node.value, line);
    else {
      const into = this.steps.at(-1)?.body ?? this.intro;
      into.push(...readBlocks([node], this.faults));
    }
  }

  private takeTitle(title: string, line: number): void {
    if (this.title !== null)
      this.faults.add(line, "a second title", title, "one # line; steps begin with ##");
    this.title ??= title;
  }

  private takeBlock(name: string, value: string, line: number): void {
    const { faults } = this;
    const step = this.steps.at(-1);
    if (name === "lesson") {
      if (this.head || step)
        faults.add(line, "the lesson block stands at the top, once", "", "below the title");
      this.head ??= readHead(line, value, faults);
      return;
    }
    if (!BLOCKS.some((known) => known === name)) {
      faults.add(line, "no fenced block is called this", name, BLOCKS.join(", "));
      return;
    }
    if (!step) {
      faults.add(line, `the ${name} block stands before the first step`, "", "below a ## line");
      return;
    }
    if (name === "bench") step.scenes.push(readBench(line, value, faults));
    if (name === "run") step.scenes.push(readRun(line, value, faults));
    if (name === "point") step.points.push(readPoint(line, value, faults));
    if (name === "ask") this.takeAsk(step, value, line);
  }

  private takeAsk(step: StepDraft, value: string, line: number): void {
    const ask = readAsk(line, value, this.faults);
    if (!ask) return;
    if (this.steps.some(({ asks }) => asks.some(({ name }) => name === ask.name))) {
      this.faults.add(line, "a second question of this name", ask.name, "a name of its own");
      return;
    }
    step.asks.push(ask);
    step.body.push({ kind: "question", line, name: ask.name });
  }
}

/**
 * Reads a lesson as far as it goes, for a preview while it is written.
 * @param file what messages call it
 */
export function readLessonText(source: string, file: string): LessonReading {
  const faults = new LessonFaults(file);
  if (source.length > LONGEST_LESSON) {
    faults.add(1, "the text is too long", `${source.length} characters`, `at most ${LONGEST_LESSON}`);
  }
  const reader = new Reader(faults);
  const plain = source
    .slice(0, LONGEST_LESSON)
    .replace(/^\uFEFF/, "")
    .replace(/\r\n?/g, "\n");
  for (const node of nodesOf(plain)) reader.take(node);
  if (reader.title === null) faults.add(1, "there is no title", "", "a first line such as # Three shafts");
  if (reader.steps.length === 0) faults.add(1, "there are no steps", "", "lines such as ## Turn the carrier");
  const title = reader.title ?? file;
  const lesson: Lesson = {
    id: reader.head?.id ?? slug(title, "lesson"),
    title,
    about: reader.head?.about ?? "",
    minutes: reader.head?.minutes ?? 0,
    intro: reader.intro,
    steps: reader.steps.map((step) => step.finished()),
  };
  checkReferences(lesson, faults);
  return { lesson, faults: faults.sorted };
}

/**
 * Reads a lesson.
 * @param file what messages call it
 * @throws InputError with line numbers, everything that is wrong at once
 */
export function readLesson(source: string, file: string): Lesson {
  const { lesson, faults } = readLessonText(source, file);
  if (faults.length > 0) throw new InputError(faults);
  return lesson;
}
