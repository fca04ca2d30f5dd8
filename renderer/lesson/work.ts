import { signal } from "@preact/signals";
import type { InputFault } from "../../shared/errors.ts";
import { faultWords } from "../app/fault-words.ts";
import { tell } from "../app/window.ts";
import { t } from "../texts/catalogue.ts";
import type { Refusable } from "../workers/lesson-contract.ts";
import { Cancelled, Runner } from "../workers/runner.ts";
import { type Ask, Desk } from "./desk.ts";

/** Works the lesson that is read or written, and fetches the runs that its steps show. */
export const desk = new Desk(new Runner());

/** Makes handouts and marks: these may take long and never hold up the reading. */
const maker = new Runner();

/** Runs driven so far for a handout or marks; null: none are under way. */
export const making = signal<number | null>(null);

/** What refused the last handout or file of answers. */
export const refusals = signal<readonly InputFault[]>([]);

/** Ends the handout or marking that is under way. */
export const stopMaking = (): void => maker.cancel();

/** Makes a handout or marks; null when it was cancelled or refused, or another is under way. */
export async function make<T>(work: Ask<Refusable<T>>): Promise<T | null> {
  if (making.value !== null) return null;
  making.value = 0;
  refusals.value = [];
  try {
    const reply = await maker.ask(work, (runs) => {
      if (making.value !== null) making.value = runs;
    });
    if (reply.done) return reply.value;
    refusals.value = reply.faults;
  } catch (error) {
    if (error instanceof Cancelled) tell(t.lesson.cancelled);
    else tell(t.lesson.failed(faultWords(error)), true);
  } finally {
    making.value = null;
  }
  return null;
}
