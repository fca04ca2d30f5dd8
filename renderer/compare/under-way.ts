import type { Signal } from "@preact/signals";
import { InputError } from "../../shared/errors.ts";
import { faultWords } from "../app/fault-words.ts";
import { take } from "../app/project.ts";
import { tell } from "../app/window.ts";
import { bridge } from "../bridge/chooser.ts";
import { t } from "../texts/catalogue.ts";
import type { Crew, Piece } from "../workers/crew.ts";

/** Pieces done and all of them, while a study is under way. */
export interface UnderWay {
  readonly done: number;
  readonly all: number;
}

/** What is ready to be worked through. */
export interface Ready {
  readonly pieces: Iterable<Piece>;
  readonly all: number;
}

interface Words {
  readonly failed: (why: string) => string;
  readonly cancelled: string;
}

/**
 * Works through a study over all cores, one at a time of each kind: what is done shows at once, also when it is
 * cancelled; a piece that fails says so and the others go on.
 * @param begin makes ready; null when there is nothing to do. It may throw InputError.
 */
export async function workThrough(
  crew: Crew,
  under: Signal<UnderWay | null>,
  words: Words,
  begin: () => Ready | null,
): Promise<void> {
  if (under.value) return;
  try {
    const ready = begin();
    if (!ready) return;
    const { pieces, all } = ready;
    under.value = { done: 0, all };
    const complete = await crew.work(pieces, {
      done: (done) => {
        under.value = { done, all };
      },
      failed: (error) => tell(words.failed(faultWords(error)), true),
    });
    if (!complete) tell(words.cancelled);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    tell(words.failed(faultWords(error)), true);
  } finally {
    under.value = null;
  }
}

const KINDS = {
  csv: { title: "CSV", mime: "text/csv", extensions: ["csv"] },
  json: { title: "JSON", mime: "application/json", extensions: ["json"] },
} as const;

/** Saves a study. @param contentOf from the program's version; empty where it is not known */
export async function saveStudyAs(
  name: string,
  kind: "csv" | "json",
  saved: (name: string) => string,
  contentOf: (version: string) => string,
): Promise<void> {
  const info = await bridge.windowInfo();
  const result = await bridge.exportFile({
    suggestedName: `${name}.${kind}`,
    kinds: [KINDS[kind]],
    content: contentOf(info.status === "ok" ? info.value.version : ""),
  });
  take(result, (file) => tell(saved(file.name)), t.notice.notSaved);
}
