import { faultText, InputError } from "../../shared/errors.ts";
import { type Project, readProject, writeProject } from "../../shared/project.ts";

/** What keeps texts by name: the browser's local storage, or a stand-in for it. */
export interface TextStore {
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
}

export const AUTOSAVE_KEY = "trishaft.project";

/** What was found: nothing, a project, or something that is ignored for a reason. */
export type Restored =
  | { readonly kind: "nothing" }
  | { readonly kind: "project"; readonly project: Project }
  | { readonly kind: "ignored"; readonly reason: string };

/** Keeps the project, in the form of its file. False when the store refuses (full, or switched off). */
export function keepProject(store: TextStore, project: Project): boolean {
  try {
    store.setItem(AUTOSAVE_KEY, writeProject(project));
    return true;
  } catch {
    return false;
  }
}

function readText(store: TextStore): string | null {
  try {
    return store.getItem(AUTOSAVE_KEY);
  } catch {
    return null;
  }
}

/** Reads the kept project back. Broken or foreign content never stops the app. */
export function restoreProject(store: TextStore): Restored {
  const text = readText(store);
  if (text === null) return { kind: "nothing" };
  try {
    return { kind: "project", project: readProject(text, "kept") };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return { kind: "ignored", reason: error.faults.map(faultText)[0] ?? "" };
  }
}
