import { computed, signal } from "@preact/signals";
import { ownStrategies } from "../../state/own-strategies.ts";
import type { OwnText, OwnTrialReply } from "../../workers/contract.ts";

/** Title of the own strategy that is edited; null: the first. */
export const edited = signal<string | null>(null);

export const editedStrategy = computed<OwnText | null>(
  () => ownStrategies.value.find(({ title }) => title === edited.value) ?? ownStrategies.value[0] ?? null,
);

/** The strategy deleted last, with its place, so that it can come back. */
export const dropped = signal<{ readonly own: OwnText; readonly place: number } | null>(null);

/** What came of the last check or run, and of which text. */
export interface Trial {
  readonly own: OwnText;
  /** what was driven; empty when it was only read */
  readonly cycle: string;
  readonly reply: OwnTrialReply;
}

export const trial = signal<Trial | null>(null);

/** Share done of a check or run under way; null: none. */
export const trying = signal<number | null>(null);

/** Cycle that Run drives. */
export const trialCycle = signal("udds");
