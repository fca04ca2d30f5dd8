import type { InputFault } from "../../shared/errors.ts";

/** What was being done to the file. */
export type Deed = "read" | "write";

type Words = Pick<InputFault, "what" | "accepted">;

const BOTH: Readonly<Record<string, Words>> = {
  ENOTDIR: { what: "A part of the path is not a folder.", accepted: "a path of folders that exist" },
  ELOOP: { what: "The links of the path lead round in a circle.", accepted: "a path without such links" },
  ENAMETOOLONG: { what: "The name is too long.", accepted: "a shorter name" },
  EMFILE: { what: "Too many files are open.", accepted: "another try after closing other programs" },
  EBUSY: { what: "Another program holds the file.", accepted: "the file closed elsewhere, or another one" },
  EIO: { what: "The drive reported an error.", accepted: "a file on a drive that works" },
};

const READING: Readonly<Record<string, Words>> = {
  ENOENT: { what: "The file is no longer there.", accepted: "a file that exists" },
  EACCES: { what: "The file may not be read.", accepted: "a file that you may read" },
  EPERM: { what: "The file may not be read.", accepted: "a file that you may read" },
  EISDIR: { what: "This is a folder.", accepted: "a file" },
};

const NO_WRITING: Words = {
  what: "The file or its folder may not be written.",
  accepted: "a file and a folder that you may write",
};
const FULL: Words = { what: "The drive is full; the file is as it was.", accepted: "a drive with room" };

const WRITING: Readonly<Record<string, Words>> = {
  ENOENT: { what: "The folder is no longer there.", accepted: "a folder that exists" },
  EACCES: NO_WRITING,
  EPERM: NO_WRITING,
  EROFS: NO_WRITING,
  ENOSPC: FULL,
  EDQUOT: FULL,
  EFBIG: { what: "The file is too large for this drive.", accepted: "another drive" },
  EISDIR: { what: "A folder or device has this name.", accepted: "another name" },
};

/**
 * An error of the file system in words.
 * @param path full path, for a person to read
 * @throws the error itself when it is none of the file system's
 */
export function fileFault(error: unknown, deed: Deed, path: string): InputFault {
  const code = codeOf(error);
  if (code === undefined) throw error;
  const words = (deed === "read" ? READING : WRITING)[code] ?? BOTH[code];
  const unknown: Words = {
    what: `The file could not be ${deed === "read" ? "read" : "written"} (${code}).`,
    accepted: "another file or folder",
  };
  return { ...(words ?? unknown), where: path, value: "" };
}

/** The code of a file system's error, such as `ENOENT`; undefined for any other. */
export function codeOf(error: unknown): string | undefined {
  if (!(error instanceof Error) || !("code" in error) || typeof error.code !== "string") return undefined;
  return /^E[A-Z0-9]+$/.test(error.code) ? error.code : undefined;
}
