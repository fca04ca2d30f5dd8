import type { ProjectWorker } from "../workers/project-work.ts";
import { Runner } from "../workers/runner.ts";

/** A worker that writes projects. */
export const projectRunner = (): Runner<ProjectWorker> =>
  new Runner(() => new Worker(new URL("../workers/project.worker.ts", import.meta.url), { type: "module" }));
