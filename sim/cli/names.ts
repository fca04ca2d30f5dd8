import { STRATEGIES } from "../control/strategies/registry.ts";
import { PRESETS } from "../vehicle/presets/registry.ts";
import type { NameList } from "./verbs.ts";

/** The vehicles and strategies that can be named. */
export const setupNames = (): readonly NameList[] => [
  { title: "vehicles", rows: PRESETS.map(({ id, title }) => [id, title]) },
  { title: "strategies", rows: STRATEGIES.map(({ id, title }) => [id, title]) },
];
