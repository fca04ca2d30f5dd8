import { tableOf } from "./cycle-table.ts";
import { entryOf, type OwnCycle } from "./own-cycles.ts";
import type { Project } from "./project-schema.ts";

/**
 * A project with these own cycles in it, everything else as it was.
 * @param cycle what Road is set to: the id of one of them, or a line of the catalogue
 */
export function withOwnCycles(project: Project, own: readonly OwnCycle[], cycle: string): Project {
  const chosen = own.find(({ trace }) => trace.id === cycle);
  return {
    ...project,
    cycle: chosen ? tableOf(chosen.trace) : { kind: "catalogue", line: cycle },
    ownCycles: own.map(entryOf),
  };
}
