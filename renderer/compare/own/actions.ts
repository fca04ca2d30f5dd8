import { batch } from "@preact/signals";
import { OWN_LIMITS } from "../../../sim/control/own/contract.ts";
import { faultWords } from "../../app/fault-words.ts";
import { take } from "../../app/project.ts";
import { tell } from "../../app/window.ts";
import { bridge } from "../../bridge/chooser.ts";
import { num } from "../../state/format.ts";
import {
  freeTitle,
  MOST_OWN,
  MOST_TITLE,
  ownId,
  ownStrategies,
  withText,
  withTitle,
} from "../../state/own-strategies.ts";
import { chosenCycle, runOptions, strategyId } from "../../state/road.ts";
import { vehicle } from "../../state/store.ts";
import { t } from "../../texts/catalogue.ts";
import type { OwnTrialReply } from "../../workers/contract.ts";
import { Cancelled, Runner } from "../../workers/runner.ts";
import { chosenStrategies } from "../state.ts";
import { dropped, edited, editedStrategy, trial, trialCycle, trying } from "./state.ts";

const c = t.compare.own;

/** What an empty strategy begins with. */
const EMPTY = `export function decide(now, memory) {
  return { engineOn: false };
}
`;

/** Adds a strategy and takes it in hand. @param text default: the empty one */
export function addStrategy(wanted: string, text = EMPTY): void {
  const own = ownStrategies.value;
  if (own.length >= MOST_OWN) {
    tell(c.full(num(MOST_OWN)), true);
    return;
  }
  const title = freeTitle(own, wanted);
  batch(() => {
    ownStrategies.value = [...own, { title, text }];
    edited.value = title;
  });
}

export function duplicateStrategy(): void {
  const one = editedStrategy.value;
  if (one) addStrategy(one.title, one.text);
}

/** Wherever an own strategy is chosen by its id, another id stands from now on; null: none. */
function choose(id: string, instead: string | null): void {
  chosenStrategies.value = chosenStrategies.value.flatMap((one) =>
    one !== id ? [one] : instead === null ? [] : [instead],
  );
  if (strategyId.value === id) strategyId.value = instead ?? "rules";
}

/** Renames the strategy in hand; an empty or taken name is refused. */
export function renameStrategy(to: string): void {
  const one = editedStrategy.value;
  const title = to.trim().slice(0, MOST_TITLE);
  if (!one || title === "" || title === one.title) return;
  if (ownStrategies.value.some((other) => other.title === title)) {
    tell(c.taken(title), true);
    return;
  }
  batch(() => {
    ownStrategies.value = withTitle(ownStrategies.value, one.title, title);
    choose(ownId(one.title), ownId(title));
    if (trial.value?.own.title === one.title)
      trial.value = { ...trial.value, own: { ...trial.value.own, title } };
    edited.value = title;
  });
}

/** Deletes the strategy in hand; `bringBack` undoes it. */
export function dropStrategy(): void {
  const own = editedStrategy.value;
  if (!own) return;
  const place = ownStrategies.value.indexOf(own);
  batch(() => {
    ownStrategies.value = ownStrategies.value.filter((one) => one !== own);
    choose(ownId(own.title), null);
    dropped.value = { own, place };
    edited.value = null;
  });
}

export function bringBack(): void {
  if (!dropped.value) return;
  const { own, place } = dropped.value;
  const title = freeTitle(ownStrategies.value, own.title);
  batch(() => {
    ownStrategies.value = ownStrategies.value.toSpliced(place, 0, { title, text: own.text });
    edited.value = title;
    dropped.value = null;
  });
}

export const setText = (text: string): void => {
  const one = editedStrategy.value;
  if (one && one.text !== text) ownStrategies.value = withText(ownStrategies.value, one.title, text);
};

/** Takes a file's text as a strategy of the file's name. */
export function openStrategy(text: string, fileName: string): void {
  if (text.length > OWN_LIMITS.source) {
    tell(c.tooLarge(fileName, num(OWN_LIMITS.source)), true);
    return;
  }
  addStrategy(fileName.replace(/\.[^.]*$/, ""), text);
  tell(c.opened(fileName));
}

/** Saves the strategy in hand as a file that the command line takes. */
export async function saveStrategy(): Promise<void> {
  const one = editedStrategy.value;
  if (!one) return;
  const result = await bridge.exportFile({
    suggestedName: `${one.title.replaceAll(/[^\w.-]+/g, "-")}.js`,
    kinds: [{ title: "JavaScript", mime: "text/javascript", extensions: ["js"] }],
    content: one.text,
  });
  take(result, (saved) => tell(c.saved(saved.name)), t.notice.notSaved);
}

const runner = new Runner();

/** Reads the text in hand, and drives the chosen cycle with it if asked. */
export async function tryStrategy(drives: boolean): Promise<void> {
  const own = editedStrategy.value;
  if (!own || trying.value !== null) return;
  trying.value = 0;
  try {
    const cycle = drives ? chosenCycle(trialCycle.value) : null;
    const request = { own, vehicle: vehicle.value, cycle, options: runOptions.value };
    const reply = await runner.ask<OwnTrialReply>(
      async (worker, report) => await worker.tryOwn(request, report),
      (share) => {
        if (trying.value !== null) trying.value = share;
      },
    );
    trial.value = { own, cycle: cycle?.title ?? "", reply };
  } catch (error) {
    if (!(error instanceof Cancelled)) tell(t.compare.failed(faultWords(error)), true);
  } finally {
    trying.value = null;
  }
}

export const cancelTrial = (): void => runner.cancel();
