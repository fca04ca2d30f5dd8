/// <reference path="../raw.d.ts" />
import learningAverage from "./learning-average.js?raw";
import powerFollower from "./power-follower.js?raw";
import pricedChoice from "./priced-choice.js?raw";

/** A worked example: the text of an own strategy to start from. */
export interface OwnExample {
  readonly id: string;
  readonly title: string;
  /** One sentence on its kind. */
  readonly about: string;
  readonly text: string;
}

/** The worked examples, the simplest first. */
export const OWN_EXAMPLES: readonly OwnExample[] = [
  {
    id: "power-follower",
    title: "Power follower",
    about: "Rules with hysteresis: the engine follows the power asked, with a correction for the charge.",
    text: powerFollower,
  },
  {
    id: "learning-average",
    title: "Learning average",
    about: "Keeps values in memory: the engine runs steadily at a learnt mean, the battery gives the peaks.",
    text: learningAverage,
  },
  {
    id: "priced-choice",
    title: "Priced choice",
    about: "Weighs fuel against priced battery energy for every engine power and takes the cheapest.",
    text: pricedChoice,
  },
];
