import { at } from "../../shared/at.ts";
import type { BenchScene, Lesson, RunScene, Scene, Written } from "./lesson.ts";

/** Whose numbers a handout carries. */
export interface DrawFor {
  /** whole number, 0 to 4294967295 */
  readonly seed: number;
  /** as the sheet names the person; capitals and blanks around do not matter */
  readonly student: string;
}

/** A student's name as numbers are drawn by it: the same for "Ada  Lindqvist " and "ada lindqvist". */
export const studentKey = (student: string): string =>
  student.normalize("NFC").trim().replace(/\s+/g, " ").toLowerCase();

/** 32 bits of a text: FNV-1a, then mixed so that near texts fall far apart. */
function hash(text: string): number {
  let h = 0x811c9dc5;
  for (const sign of text) h = Math.imul(h ^ (sign.codePointAt(0) ?? 0), 0x01000193);
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) >>> 0;
}

type Draw = (number: Written, place: string) => Written;

function drawer({ seed, student }: DrawFor): Draw {
  return (number, place) => {
    if (number.choices.length === 0) return number;
    const index = hash(`${seed >>> 0}|${studentKey(student)}|${place}`) % number.choices.length;
    return { value: at(number.choices, index), choices: [] };
  };
}

function drawBench(scene: BenchScene, draw: Draw, place: string): BenchScene {
  const shaft = (name: "sun" | "carrier" | "ring") => ({
    role: scene.shafts[name].role,
    speed: draw(scene.shafts[name].speed, `${place}|${name}`),
  });
  return {
    ...scene,
    shafts: { sun: shaft("sun"), carrier: shaft("carrier"), ring: shaft("ring") },
    engineTorque: draw(scene.engineTorque, `${place}|engine`),
    outputTorque: scene.outputTorque && draw(scene.outputTorque, `${place}|output`),
  };
}

function drawRun(scene: RunScene, draw: Draw, place: string): RunScene {
  const numbers = Object.fromEntries(
    Object.entries(scene.numbers).map(([name, number]) => [name, draw(number, `${place}|${name}`)]),
  );
  const { at: instant } = scene;
  const moved = instant !== null && typeof instant !== "string" ? draw(instant, `${place}|at`) : instant;
  return { ...scene, numbers, at: moved };
}

/**
 * The lesson with one student's numbers. The same seed and name always give the same ones, on every machine.
 */
export function drawLesson(lesson: Lesson, who: DrawFor): Lesson {
  const draw = drawer(who);
  return {
    ...lesson,
    steps: lesson.steps.map((step, s) => ({
      ...step,
      scenes: step.scenes.map((scene, i): Scene => {
        const place = `${lesson.id}|${s}|${i}`;
        return scene.kind === "bench" ? drawBench(scene, draw, place) : drawRun(scene, draw, place);
      }),
    })),
  };
}

/** True when students get different numbers. */
export const varies = (lesson: Lesson): boolean =>
  lesson.steps.some(({ scenes }) =>
    scenes.some((scene) => numbersOf(scene).some(({ choices }) => choices.length > 1)),
  );

/** All numbers of a scene. */
export function numbersOf(scene: Scene): readonly Written[] {
  if (scene.kind === "run") {
    const instant = scene.at !== null && typeof scene.at !== "string" ? [scene.at] : [];
    return [...Object.values(scene.numbers), ...instant];
  }
  const { sun, carrier, ring } = scene.shafts;
  const output = scene.outputTorque ? [scene.outputTorque] : [];
  return [sun.speed, carrier.speed, ring.speed, scene.engineTorque, ...output];
}
