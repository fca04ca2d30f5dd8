import { SHAFTS, type Shaft } from "../../sim/bench/shafts.ts";
import { quantityByName } from "../../sim/lesson/quantities/registry.ts";
import type { WorkedLesson } from "../../sim/lesson/work.ts";
import type { FlowId } from "../../sim/run/flows.ts";
import type { RibbonId } from "../flow/layout.ts";

/**
 * Names of the quantities that no view may show in a step: those that an open question of the step is about, and those
 * that its stage hides, each until its number was given or all questions on the same stage that ask for it are settled.
 * @param step from 0
 * @param settled whether a question, by its name, is answered right or its working was shown
 */
export function hiddenQuantities(
  lesson: WorkedLesson,
  step: number,
  settled: (question: string) => boolean,
): ReadonlySet<string> {
  const now = lesson.steps[step];
  if (!now) return new Set();
  const open = now.asks.filter(({ name }) => !settled(name)).flatMap(({ hides }) => hides);
  const onStage = lesson.steps.filter(({ stage }) => stage === now.stage).flatMap(({ asks }) => asks);
  const kept = (now.stage?.hide ?? []).filter((name) => {
    const asking = onStage.filter(({ hides }) => hides.includes(name));
    // Who gave the number itself need not answer the softer questions before it.
    const given = asking.some((ask) => ask.kind === "number" && ask.hides.length === 1 && settled(ask.name));
    return asking.length === 0 || (!given && asking.some((ask) => !settled(ask.name)));
  });
  return new Set([...open, ...kept]);
}

/** What the views leave out. */
export interface HiddenParts {
  readonly speeds: readonly Shaft[];
  readonly torques: readonly Shaft[];
  readonly ribbons: ReadonlySet<RibbonId>;
  readonly flows: ReadonlySet<FlowId>;
  /** the line below the power paths that tells how the power divides */
  readonly shares: boolean;
  readonly roadSpeed: boolean;
  readonly charge: boolean;
  readonly regime: boolean;
}

const RIBBONS: Readonly<Partial<Record<string, readonly RibbonId[]>>> = {
  "power:carrier": ["engine"],
  "power:sun": ["sun", "sunOver", "sunLink"],
  electrical: ["sun", "sunOver", "sunLink"],
  "power:ring": ["mechanical"],
  // With the speed beside it, a shaft's power tells its torque.
  "torque:sun": ["sun", "sunOver", "sunLink"],
  "torque:ring": ["mechanical"],
  "torque:carrier": ["engine"],
  output: ["outputLink", "outputMachine", "outputMachineOver"],
  battery: ["battery", "batteryOver"],
};

const FLOWS: Readonly<Partial<Record<string, readonly FlowId[]>>> = {
  "power:carrier": ["fuel", "engineLoss", "engine"],
  "power:sun": ["sun", "sunLoss", "sunElectric"],
  electrical: ["sun", "sunLoss", "sunElectric"],
  "power:ring": ["ring"],
  "torque:sun": ["sun", "sunLoss", "sunElectric"],
  "torque:ring": ["ring"],
  "torque:carrier": ["fuel", "engineLoss", "engine"],
  output: ["outputElectric", "outputLoss", "outputShaft"],
  battery: ["source", "batteryLoss", "battery"],
};

/** Quantities without a number of their own on the sheet, and the one that would give them away. */
const TOLD_BY: Readonly<Partial<Record<string, string>>> = {
  "mechanical power": "power:ring",
  "circulating power": "power:ring",
};

const placeOf = (name: string): string => TOLD_BY[name] ?? quantityByName(name)?.at ?? "";

/** What of the drawings belongs to hidden quantities. */
export function hiddenParts(names: ReadonlySet<string>): HiddenParts {
  const places = new Set([...names].map(placeOf));
  const shafts = (kind: string): readonly Shaft[] => SHAFTS.filter((shaft) => places.has(`${kind}:${shaft}`));
  const gathered = <T>(from: Readonly<Partial<Record<string, readonly T[]>>>): ReadonlySet<T> =>
    new Set([...places].flatMap((place) => from[place] ?? []));
  return {
    speeds: shafts("speed"),
    torques: shafts("torque"),
    ribbons: gathered(RIBBONS),
    flows: gathered(FLOWS),
    shares: [...names].some((name) => /(share|power|torque)$/.test(name)),
    roadSpeed: places.has("road"),
    charge: [...names].some((name) => name.startsWith("charge")),
    regime: names.has("regime"),
  };
}
