import { InputError } from "./errors.ts";
import { prettyJson } from "./pretty-json.ts";
import { faultsOf } from "./project-faults.ts";
import { parseJson } from "./project-json.ts";
import { type Project, projectSchema, SCHEMA_VERSION } from "./project-schema.ts";

/** A project file as data, before the schema of the newest version looks at it. */
export type RawProject = Readonly<Record<string, unknown>>;

/** Turns a project of one version into the next. */
export interface Migration {
  /** The version it reads; it gives `from + 1`. */
  readonly from: number;
  /** One line for the list of what changed. */
  readonly about: string;
  /** Pure. May trust nothing but that the file is an object of that version number. */
  readonly change: (old: RawProject) => RawProject;
}

/** Every step from the first version on, in order. Empty while there is one version. */
export const MIGRATIONS: readonly Migration[] = [];

/**
 * Reads a project file's text. What is opened is complete: left-out parts have their defaults. The vehicle's
 * parameters, the ids of cycles and strategies and the run's options are not known here; the engine checks them.
 * @param text the file, with or without a byte-order mark
 * @param where the file's name, for messages
 * @throws InputError for broken JSON (line and column), a version we do not know, and each wrong field with its path
 */
export function readProject(text: string, where: string): Project {
  const data = parseJson(text.startsWith("\uFEFF") ? text.slice(1) : text, where);
  const current = migrate(data, where);
  const parsed = projectSchema.safeParse(current);
  if (parsed.success) return parsed.data;
  throw new InputError(faultsOf(parsed.error.issues, projectSchema, current, where));
}

/**
 * Brings a project up to the newest version.
 * @param data what the file held
 * @param where the file's name
 * @param steps migrations, one for each version but the newest
 * @param newest version the result has
 * @throws InputError when the version is missing, no whole number from 1, or newer than this program
 */
export function migrate(
  data: unknown,
  where: string,
  steps: readonly Migration[] = MIGRATIONS,
  newest = SCHEMA_VERSION,
): RawProject {
  if (!isObject(data)) throw notAProject(data, where);
  let project = data;
  for (let version = versionOf(data, where, newest); version < newest; version += 1) {
    const step = steps.find((candidate) => candidate.from === version);
    if (!step) throw new Error(`no migration from version ${version}`);
    project = { ...step.change(project), schemaVersion: version + 1 };
  }
  return project;
}

/**
 * A project as the text of its file: two blanks a level, lists of numbers on one line, a line feed at the end. Reading
 * it gives the same project to the last bit.
 * @throws Error for a project that `readProject` would refuse (a programming error)
 */
export function writeProject(project: Project): string {
  const checked = projectSchema.parse(project);
  return `${prettyJson(checked)}\n`;
}

const isObject = (data: unknown): data is RawProject =>
  typeof data === "object" && data !== null && !Array.isArray(data);

const notAProject = (data: unknown, where: string): InputError =>
  new InputError({
    what: "The file holds no project.",
    where,
    value: Array.isArray(data) ? "a list" : data === null ? "null" : `a ${typeof data}`,
    accepted: "an object with schemaVersion, vehicle and cycle",
  });

function versionOf(data: RawProject, where: string, newest: number): number {
  const version = Object.hasOwn(data, "schemaVersion") ? data.schemaVersion : undefined;
  if (typeof version === "number" && Number.isInteger(version) && version >= 1 && version <= newest) {
    return version;
  }
  const newer = typeof version === "number" && version > newest;
  throw new InputError({
    what: newer ? "The project was written by a newer version of this program." : "Not a version number.",
    where: `${where}: schemaVersion`,
    value: version === undefined ? "" : (JSON.stringify(version) ?? "").slice(0, 60),
    accepted: newest === 1 ? "1" : `1 to ${newest}`,
  });
}

export {
  type BenchState,
  type CycleChoice,
  type LessonState,
  newProject,
  type OwnLesson,
  PLACES,
  type Project,
  SCHEMA_VERSION,
  type StrategyChoice,
  type VehicleChoice,
  type ViewSettings,
} from "./project-schema.ts";
