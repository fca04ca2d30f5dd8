import { InputError, type InputFault } from "../../shared/errors.ts";

/** Something wrong in a lesson's text, at its line. */
export interface LessonFault extends InputFault {
  /** from 1 */
  readonly line: number;
}

/** So many faults of one text are told at once. */
const MOST = 30;
const LONGEST = 60;

/** A piece of a text as it may stand in a message. */
export const shorten = (text: string): string =>
  text.length <= LONGEST ? text : `${text.slice(0, LONGEST)}…`;

/** Gathers what is wrong with one lesson. */
export class LessonFaults {
  readonly list: LessonFault[] = [];

  /** @param file what messages call the lesson */
  constructor(readonly file: string) {}

  /** Books a fault; beyond a few dozen nothing is kept. */
  add(line: number, what: string, value: string, accepted: string): void {
    if (this.list.length >= MOST) return;
    this.list.push({
      line,
      what,
      where: `${this.file}, line ${line}`,
      value: shorten(value),
      accepted,
    });
  }

  /** Books the faults of something that was refused elsewhere, under a line. @throws what is no InputError */
  take(line: number, error: unknown): void {
    if (!(error instanceof InputError)) throw error;
    for (const { what, where, value, accepted } of error.faults) {
      this.add(line, where === "" ? what : `${where}: ${what}`, value, accepted);
    }
  }

  /** Does work that may refuse its input; null when it did. */
  trying<T>(line: number, work: () => T): T | null {
    try {
      return work();
    } catch (error) {
      this.take(line, error);
      return null;
    }
  }

  /** The faults in the order of the text. */
  get sorted(): readonly LessonFault[] {
    return [...this.list].sort((a, b) => a.line - b.line);
  }
}
