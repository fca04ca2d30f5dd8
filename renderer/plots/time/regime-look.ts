import { REGIMES } from "../../../sim/run/regimes.ts";
import type { Fill, Ink } from "./inks.ts";

/** How a regime is drawn in its lane. */
export interface RegimeLook {
  readonly fill: Fill;
  readonly ink: Ink;
}

const look = (fill: Fill, ink: Ink): RegimeLook => ({ fill, ink });

/** In each lane no two regimes look the same. */
const LOOKS: Readonly<Record<string, RegimeLook>> = {
  cranking: look("elec", "sun"),
  stopping: look("plain", "sun"),
  "split-below-direct": look("mech", "carrier"),
  direct: look("plain", "carrier"),
  "split-above-direct": look("mech", "ring"),
  "mechanical-point": look("solid", "carrier"),
  "circulating-power": look("mech", "sun"),
  assist: look("elec", "battery"),
  "charging-driving": look("chem", "battery"),
  "reverse-engine": look("elec", "carrier"),
  "electric-drive": look("elec", "ring"),
  "electric-reverse": look("solid", "ring"),
  coasting: look("plain", "ring"),
  "regenerative-braking": look("chem", "battery"),
  "blended-braking": look("mech", "battery"),
  "friction-braking": look("heat", "loss"),
  "braking-engine-on": look("elec", "battery"),
  "engine-braking": look("heat", "carrier"),
  "charging-at-rest": look("chem", "battery"),
  idling: look("mech", "carrier"),
  "hill-hold": look("heat", "loss"),
  "at-rest": look("plain", "loss"),
};

const OTHER = look("plain", "loss");

/** Pattern and colour of a regime. @param index in REGIMES; one that is in no list looks like rest */
export const regimeLook = (index: number): RegimeLook => LOOKS[REGIMES[index]?.id ?? ""] ?? OTHER;

/** Index in REGIMES of a regime by its id; −1 if there is none. */
export const regimeIndex = (id: string): number => REGIMES.findIndex((rule) => rule.id === id);
