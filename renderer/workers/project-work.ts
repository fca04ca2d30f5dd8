import type { OwnCycle } from "../../shared/own-cycles.ts";
import { type Project, writeProject } from "../../shared/project.ts";
import { withOwnCycles } from "../../shared/project-cycles.ts";

/** A project that is to be written: own cycles as typed arrays, which go between threads at once. */
export interface ProjectParts {
  /** without own cycles */
  readonly project: Project;
  readonly own: readonly OwnCycle[];
  /** what Road is set to: the id of an own cycle, or a line of the catalogue */
  readonly cycle: string;
}

/** Writing of projects, which may hold recordings of a day. */
export interface ProjectWorker {
  /** the text of the project's file */
  write(parts: ProjectParts): string;
}

/** What the worker does, apart from being one. */
export const projectWork: ProjectWorker = {
  write: ({ project, own, cycle }) => writeProject(withOwnCycles(project, own, cycle)),
};
