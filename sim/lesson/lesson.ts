import type { Shaft } from "../bench/shafts.ts";
import type { Condition, Expression } from "./expression/tree.ts";
import type { VehicleSpec } from "./vehicle-spec.ts";

/** A number of a lesson: fixed, or one of several for handouts. */
export interface Written {
  /** SI; what the app uses, and a handout without a student */
  readonly value: number;
  /** SI, all values that a handout may draw; empty for a fixed number */
  readonly choices: readonly number[];
}

/** Driven at a speed, held at it, or left to follow the other two. */
export type Role = "drive" | "hold" | "follow";

/** What a student may change on the stage. */
export const FREE = ["sun", "carrier", "ring", "engine torque", "output torque"] as const;

/** One of them. */
export type FreeId = (typeof FREE)[number];

/** The bench as a step sets it. */
export interface BenchScene {
  readonly kind: "bench";
  readonly line: number;
  readonly vehicle: VehicleSpec;
  /** id of the situation it starts from, or null */
  readonly situation: string | null;
  /** exactly one follows; its number is 0 and means nothing */
  readonly shafts: Readonly<Record<Shaft, { readonly role: Role; readonly speed: Written }>>;
  /** N·m */
  readonly engineTorque: Written;
  /** N·m of the output machine on its own shaft; null: the battery rests */
  readonly outputTorque: Written | null;
  readonly free: readonly FreeId[];
  /** names of quantities that no view may show in this step */
  readonly hide: readonly string[];
}

/** Run options that a lesson may set, each with its number. */
export const RUN_NUMBERS = {
  payload: "payload",
  wind: "headWind",
  auxiliaries: "auxiliaryPower",
  charge: "startSoc",
  "air density": "airDensity",
} as const;

/** Name of a run option in a lesson. */
export type RunNumber = keyof typeof RUN_NUMBERS;

/** A run as a step asks for it. */
export interface RunScene {
  readonly kind: "run";
  readonly line: number;
  /** what expressions call it */
  readonly name: string;
  readonly vehicle: VehicleSpec;
  readonly cycle: string;
  readonly strategy: string;
  readonly numbers: Readonly<Partial<Record<RunNumber, Written>>>;
  readonly cold: boolean;
  /** the instant shown: s, the id of a moment, or null for the whole run */
  readonly at: Written | string | null;
  readonly hide: readonly string[];
}

/** What stands on the stage. */
export type Scene = BenchScene | RunScene;

/** Views by the letters that they carry. */
export const VIEWS = ["A", "B", "C", "D", "E", "F"] as const;

/** Letter of a view. */
export type ViewLetter = (typeof VIEWS)[number];

/** Parts that a lesson can point at. */
export const LESSON_PARTS = [
  "sun",
  "planets",
  "carrier",
  "ring",
  "sun-machine",
  "output-machine",
  "reduction",
  "engine",
  "final-drive",
  "axle",
  "battery",
] as const;

/** A part. */
export type LessonPart = (typeof LESSON_PARTS)[number];

/** Something that a step points at. */
export interface Pointer {
  readonly line: number;
  readonly view: ViewLetter | null;
  readonly part: LessonPart | null;
  /** name of a quantity: the place of its number in the view */
  readonly quantity: string | null;
  /** what is said beside it; may be empty */
  readonly say: string;
}

/** Running text. */
export type Inline =
  | { readonly kind: "text"; readonly text: string }
  | { readonly kind: "code"; readonly text: string }
  | { readonly kind: "break" }
  | { readonly kind: "strong" | "emphasis"; readonly children: readonly Inline[] }
  | { readonly kind: "part"; readonly part: LessonPart; readonly children: readonly Inline[] }
  | { readonly kind: "view"; readonly view: ViewLetter; readonly children: readonly Inline[] }
  | {
      /** a live value; `text` is empty until the lesson is worked */
      readonly kind: "value";
      readonly source: string;
      /** null for the regime's name */
      readonly expression: Expression | null;
      readonly run: string | null;
      readonly unit: string;
      readonly line: number;
      readonly text: string;
    };

/** Blocks of a step's text. */
export type Block =
  | { readonly kind: "paragraph"; readonly line: number; readonly children: readonly Inline[] }
  | { readonly kind: "heading"; readonly line: number; readonly children: readonly Inline[] }
  | { readonly kind: "quote"; readonly line: number; readonly children: readonly Block[] }
  | {
      readonly kind: "list";
      readonly line: number;
      readonly ordered: boolean;
      readonly items: readonly (readonly Block[])[];
    }
  | { readonly kind: "code"; readonly line: number; readonly text: string }
  | { readonly kind: "rule"; readonly line: number }
  | { readonly kind: "question"; readonly line: number; readonly name: string };

/** How far off a number may be and still be right. */
export interface Tolerance {
  /** share of the key */
  readonly relative: number;
  /** SI */
  readonly absolute: number;
}

interface AskBase {
  readonly line: number;
  /** unique in the lesson; what a file of answers calls it */
  readonly name: string;
  readonly question: readonly Inline[];
}

/** A question for a number. */
export interface NumberAsk extends AskBase {
  readonly kind: "number";
  readonly key: Expression;
  /** the key as it was written */
  readonly source: string;
  readonly unit: string;
  readonly tolerance: Tolerance;
}

/** A question with several answers, exactly one of them true. */
export interface ChoiceAsk extends AskBase {
  readonly kind: "choice";
  readonly choices: readonly {
    readonly text: readonly Inline[];
    readonly when: Condition;
    readonly source: string;
    readonly line: number;
  }[];
}

/** A question whose key the engine computes. */
export type Ask = NumberAsk | ChoiceAsk;

/** One step. */
export interface Step {
  readonly line: number;
  readonly title: string;
  readonly body: readonly Block[];
  /** what the step sets itself; the stage of a step without any is that of the step before */
  readonly scenes: readonly Scene[];
  readonly points: readonly Pointer[];
  readonly asks: readonly Ask[];
}

/** A lesson, checked. Plain data: it may go through a worker or JSON. */
export interface Lesson {
  /** lower-case words joined by hyphens */
  readonly id: string;
  readonly title: string;
  /** one sentence for a list; may be empty */
  readonly about: string;
  /** how long it takes, min; 0 when nothing is said */
  readonly minutes: number;
  /** text before the first step */
  readonly intro: readonly Block[];
  readonly steps: readonly Step[];
}
