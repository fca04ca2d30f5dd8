import { InputError, type InputFault } from "../../shared/errors.ts";

/** What the operating system's codes mean to a person, and what would be right. */
const MEANINGS: Readonly<Record<string, readonly [what: string, accepted: string]>> = {
  ENOENT: ["there is no such file", "a file that exists"],
  ENOTDIR: ["a part of the path is no folder", "a path through folders that exist"],
  EISDIR: ["this is a folder", "a file"],
  EACCES: ["no permission", "a file that this user may open"],
  EPERM: ["no permission", "a file that this user may open"],
  EROFS: ["the disk is read-only", "a place that can be written to"],
  ENOSPC: ["the disk is full", "a disk with room left"],
  EDQUOT: ["the disk quota is used up", "a disk with room left"],
  EFBIG: ["the file would be too large for the disk", "another disk"],
  ENAMETOOLONG: ["the name is too long", "a shorter name"],
  EMFILE: ["too many files are open", "fewer open files"],
  EBUSY: ["another program holds the file", "a file that is not in use"],
  EPIPE: ["the reader of the pipe has gone", "a pipe that is read to its end"],
  EIO: ["the disk reports an error", "a sound disk"],
};

/** Code of a system error; empty for every other error. */
export const codeOf = (error: unknown): string =>
  error instanceof Error && "code" in error && typeof error.code === "string" ? error.code : "";

/**
 * A system error as a fault that a person can mend.
 * @param where the option that named the file
 * @param doing what was tried
 * @throws the error itself when it is none of the system's
 */
export function fileFault(
  error: unknown,
  where: string,
  path: string,
  doing: "read" | "written",
): InputFault {
  const code = codeOf(error);
  if (code === "") throw error;
  if (doing === "written" && code === "ENOENT") {
    return {
      what: "the folder does not exist",
      where,
      value: path,
      accepted: "a file in a folder that exists",
    };
  }
  const [what, accepted] = MEANINGS[code] ?? [`cannot be ${doing} (${code})`, "another file"];
  return { what, where, value: path, accepted };
}

/** The same as an error. */
export const fileError = (error: unknown, where: string, path: string): InputError =>
  error instanceof InputError ? error : new InputError(fileFault(error, where, path, "written"));
