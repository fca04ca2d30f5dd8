import { num } from "../state/format.ts";
import { Icon } from "../ui/icons.tsx";
import type { UnderWay } from "./under-way.ts";

interface RunButtonProps {
  readonly now: UnderWay | null;
  /** the button, how far it is, what stops it, and how much there is to do */
  readonly words: {
    readonly run: string;
    readonly running: (done: string, all: string) => string;
    readonly cancel: string;
    readonly count: (all: string) => string;
  };
  /** how much there is to do; null while it cannot be done as it is chosen */
  readonly count: number | null;
  readonly onRun: () => void;
  readonly onCancel: () => void;
}

/** Starts a study, or says how far it is, with the way out. */
export function RunButton({ now, words, count, onRun, onCancel }: RunButtonProps) {
  if (now) {
    const said = words.running(num(now.done), num(now.all));
    return (
      <span class="runs-now">
        <progress max={now.all} value={now.done} aria-label={said} />
        {said}
        <button type="button" class="btn" onClick={onCancel}>
          {words.cancel}
        </button>
      </span>
    );
  }
  return (
    <span class="runs-now">
      <button type="button" class="btn filled" disabled={count === null} onClick={onRun}>
        <Icon name="run" /> {words.run}
      </button>
      <span class="unit">{count === null ? "" : words.count(num(count))}</span>
    </span>
  );
}
