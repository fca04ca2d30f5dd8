import { computed, type ReadonlySignal } from "@preact/signals";
import { SHAFTS, type Shaft } from "../../sim/bench/shafts.ts";
import { num } from "../state/format.ts";
import { perTurn, playing, slowing, turns } from "../state/turning.ts";
import { t } from "../texts/catalogue.ts";

// Texts that change each frame while the gear set turns: a text that is a signal is written without its view being
// drawn anew.

type ShaftTexts = Readonly<Record<Shaft, ReadonlySignal<string>>>;

const textsOf = (say: (shaft: Shaft) => string): ShaftTexts => ({
  sun: computed(() => say("sun")),
  carrier: computed(() => say("carrier")),
  ring: computed(() => say("ring")),
});

/** Turns counted since the marks were set, of each shaft. */
export const countedText = textsOf((shaft) => num(turns.value[shaft], 2));

/** Whether the carrier turns, so that the others can be counted for one turn of it. */
export const hasPer = computed(() => perTurn.value !== null);

/** Turns of each shaft for one turn of the carrier. */
export const perText = textsOf((shaft) => num(perTurn.value?.[shaft] ?? Number.NaN, 3));

/** What view A shows, in words. */
export const gearWords = computed(() => {
  const counted = SHAFTS.map((shaft) => `${t.shafts[shaft]} ${countedText[shaft].value}`).join(", ");
  const turning = playing.value
    ? `${t.top.turnsItself}, ${t.top.shown(`1 : ${slowing.value}`)}`
    : t.top.stands;
  return t.gear.describe(`${t.turns.name}: ${counted}.`, turning);
});
