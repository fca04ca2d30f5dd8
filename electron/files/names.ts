import { access } from "node:fs/promises";
import type { FileKind } from "../../shared/bridge.ts";
import type { InputFault } from "../../shared/errors.ts";

/** A path to write to, or why it may not be. */
export type Target = { readonly path: string } | { readonly fault: InputFault };

/**
 * Completes a chosen path with the ending of its kind. If that gives the name of another file, about which the person
 * was not asked, it is refused.
 * @param path full path as it was chosen
 * @param kinds at least one
 */
export async function withEnding(path: string, kinds: readonly FileKind[]): Promise<Target> {
  const lower = path.toLowerCase();
  // Windows for choosing files add the last part themselves, so `.json` alone will do for `.trishaft.json`.
  if (kinds.flatMap((kind) => kind.extensions).some((one) => lower.endsWith(`.${lastPart(one)}`)))
    return { path };
  const full = `${path}.${kinds[0]?.extensions[0]}`;
  if (!(await exists(full))) return { path: full };
  const what = "A file of this name is already there.";
  const accepted = "another name, or this one written out to say that it may be replaced";
  return { fault: { what, where: full, value: "", accepted } };
}

const lastPart = (extension: string): string => extension.split(".").at(-1) ?? extension;

const exists = (path: string): Promise<boolean> =>
  access(path).then(
    () => true,
    () => false,
  );

/** The endings a window for choosing files shows: only their last parts, as those windows know no others. */
export const filtersOf = (kinds: readonly FileKind[]): { name: string; extensions: string[] }[] =>
  kinds.map((kind) => ({
    name: kind.title,
    extensions: [...new Set(kind.extensions.map(lastPart))],
  }));
