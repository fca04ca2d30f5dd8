import { faultText, InputError } from "../../shared/errors.ts";
import { type Project, readProject, writeProject } from "../../shared/project.ts";
import { mergeProjects } from "./merge-projects.ts";

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

/** What a window that has read nothing began with. */
const withoutLists = (project: Project): Project => ({
  ...project,
  strategies: [],
  lessons: [],
  lesson: null,
  lessonsBegun: [],
});

/** Keeps the project of one window, in the form of its file, beside what other windows keep there. */
export class ProjectKeeper {
  private readonly store: TextStore;
  /** the text that this window last read or wrote, with its project; and its own project of then */
  private seen: { readonly text: string; readonly project: Project } | null = null;
  private base: Project | null = null;

  constructor(store: TextStore) {
    this.store = store;
  }

  /** False when the store refuses (full, or switched off). */
  keep(project: Project): boolean {
    try {
      const theirs = this.there();
      const kept = theirs ? mergeProjects(this.base ?? withoutLists(project), project, theirs) : project;
      const text = writeProject(kept);
      this.store.setItem(AUTOSAVE_KEY, text);
      this.seen = { text, project: kept };
      this.base = project;
      return true;
    } catch {
      return false;
    }
  }

  /** Reads the kept project back. Broken or foreign content never stops the app. */
  restore(): Restored {
    const text = this.text();
    if (text === null) return { kind: "nothing" };
    try {
      const project = readProject(text, "kept");
      this.seen = { text, project };
      this.base = project;
      return { kind: "project", project };
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      return { kind: "ignored", reason: error.faults.map(faultText)[0] ?? "" };
    }
  }

  private text(): string | null {
    try {
      return this.store.getItem(AUTOSAVE_KEY);
    } catch {
      return null;
    }
  }

  /** What is kept now; null where it is nothing that can be used. */
  private there(): Project | null {
    const text = this.text();
    if (text === null || text === this.seen?.text) return text === null ? null : (this.seen?.project ?? null);
    try {
      return readProject(text, "kept");
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      return null;
    }
  }
}
