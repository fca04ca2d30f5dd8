/** What a command may touch of the world: text out, progress, the wish to stop. */
export interface Around {
  /** Text for stdout. */
  readonly out: (text: string) => void;
  /** Text for stderr. */
  readonly note: (text: string) => void;
  /** @param what is being done, in a few words @param share done, 0–1 */
  readonly progress: (what: string, share: number) => void;
  /** True once the user has asked to stop. */
  readonly cancelled: () => boolean;
  /** Path of the start script, for the benchmark of the start. */
  readonly start: string;
}

/** How a command ends; stated in the help. */
export const EXIT = { done: 0, programFault: 1, badInput: 2, interrupted: 130 } as const;

/** Thrown where work stops because the user asked for it. */
export class Interrupted extends Error {
  override readonly name = "Interrupted";
  /** @param kept what of the work was kept, one phrase */
  constructor(readonly kept = "nothing was written") {
    super("interrupted");
  }
}

/** Ends the work when the user has asked for it. @throws Interrupted */
export function stopIfCancelled(around: Around): void {
  if (around.cancelled()) throw new Interrupted();
}
