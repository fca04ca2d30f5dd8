import type { InputFault } from "../../shared/errors.ts";

type Words = Pick<InputFault, "what" | "accepted">;

const KNOWN: Readonly<Record<string, Words>> = {
  NotFoundError: { what: "The file is no longer there.", accepted: "a file that exists" },
  NotAllowedError: {
    what: "The browser may not do this.",
    accepted: "permission given when the browser asks, or another file",
  },
  SecurityError: { what: "The browser may not do this here.", accepted: "another file or folder" },
  NotReadableError: { what: "The file may not be read.", accepted: "a file that you may read" },
  NoModificationAllowedError: { what: "The file is locked.", accepted: "the file closed elsewhere" },
  QuotaExceededError: {
    what: "The drive is full; the file is as it was.",
    accepted: "a drive with room",
  },
};

/** Whether an error only says that the person closed the window. */
export const isCancel = (error: unknown): boolean => nameOf(error) === "AbortError";

/** Whether an error says that the file is no longer there. */
export const isGone = (error: unknown): boolean => nameOf(error) === "NotFoundError";

/**
 * A browser's error in words.
 * @param where the file's name
 * @throws the error itself when it is a programming error
 */
export function browserFault(error: unknown, where: string): InputFault {
  const name = nameOf(error);
  if (error instanceof TypeError || error instanceof RangeError || name === undefined) throw error;
  const unknown: Words = { what: `The browser refused (${name}).`, accepted: "another file or folder" };
  return { ...(KNOWN[name] ?? unknown), where, value: "" };
}

function nameOf(error: unknown): string | undefined {
  if (typeof error !== "object" || error === null || !("name" in error)) return undefined;
  return typeof error.name === "string" ? error.name : undefined;
}

/** A size that is refused. */
export const tooLarge = (where: string, size: number, limit: number): InputFault => ({
  what: "The file is too large.",
  where,
  value: `${size} bytes`,
  accepted: `${limit} bytes or less`,
});

/** An id that was never given out. */
export const strange = (id: string): InputFault => ({
  what: "This file was not chosen since the page was opened.",
  where: "file",
  value: id,
  accepted: "a file that was opened or saved before",
});
