import type { FileRef, OpenedFile, Result } from "../../shared/bridge.ts";
import { faultText, InputError } from "../../shared/errors.ts";
import { newProject, type Project, readProject } from "../../shared/project.ts";
import { bridge } from "../bridge/chooser.ts";
import { projectWithLessons, takeLessonsOf } from "../state/lessons.ts";
import { ownOfProject, ownStrategies, projectWithOwn } from "../state/own-strategies.ts";
import { benchOfProject, projectWith } from "../state/project-bench.ts";
import { projectWithRoad, type RoadChoice, roadOfProject, withoutOwn } from "../state/project-road.ts";
import { withRecording } from "../state/recordings.ts";
import { roadNow, setRoad } from "../state/road.ts";
import { bench, ownVehicles, replaceBench } from "../state/store.ts";
import { t } from "../texts/catalogue.ts";
import { faultWords } from "./fault-words.ts";
import { projectText } from "./project-text.ts";
import { tell } from "./window.ts";

const fresh = (): Project =>
  newProject({ kind: "preset", id: "compact" }, { kind: "catalogue", line: "udds" });

/** The open project and its file. What no place changes is kept as it came. */
let project = fresh();
let file: FileRef | null = null;

/** Puts a project in place of what is there; one that cannot stand changes nothing. @throws InputError */
export function useProject(read: Project): void {
  const next = benchOfProject(read);
  const road = roadOfProject(read);
  project = read;
  ownStrategies.value = ownOfProject(read);
  replaceBench(next.bench, next.own);
  setRoad(road);
  takeLessonsOf(read);
}

function projectOf(road: RoadChoice): Project {
  const withBench = projectWith(project, bench.value, ownVehicles.value);
  const edited = projectWithRoad(projectWithOwn(withBench, ownStrategies.value), road);
  project = projectWithLessons(edited);
  return project;
}

/**
 * The project as it stands now, with all that was changed, but without own cycles: they are too large for the text store
 * and are kept in another one.
 */
export const projectToKeep = (): Project => projectOf(withoutOwn(roadNow()));

/** Takes a file's text in place of the project; a broken one is refused and everything stays as it was. */
export const takeFile = (opened: OpenedFile): void => takeText(opened.text, opened.name, opened);

/** The same for a file that was dropped: where it lies is not known, so that saving asks. */
export const takeDropped = (text: string, name: string): void => takeText(text, name, null);

function takeText(text: string, name: string, from: FileRef | null): void {
  try {
    useProject(readProject(text, name));
    file = from;
    tell(t.notice.opened(name));
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    tell(t.notice.refused(faultWords(error)), true);
  }
}

/** An answer of the bridge: taken, dropped when the person thought better of it, or told. */
export function take<T>(
  result: Result<T>,
  onOk: (value: T) => void,
  onFault: (text: string) => string,
): void {
  if (result.status === "ok") onOk(result.value);
  if (result.status === "failed") tell(onFault(faultText(result.fault)), true);
}

export const takeOpened = (result: Result<OpenedFile>): void => take(result, takeFile, t.notice.refused);

export async function openProject(): Promise<void> {
  takeOpened(await bridge.open());
}

/** The save that is under way, if one is: another waits for it, or it would take the file for changed by others. */
let saving: Promise<void> = Promise.resolve();

/** @param elsewhere always asks where */
export function saveProject(elsewhere = false): Promise<void> {
  const last = saving.catch(() => undefined).then(() => save(elsewhere));
  saving = last;
  return last;
}

async function save(elsewhere: boolean): Promise<void> {
  const { own, cycle } = roadNow();
  const text = await projectText({ project: projectToKeep(), own: own.map(withRecording), cycle });
  const name = file?.name ?? "bench.trishaft.json";
  const result =
    file && !elsewhere
      ? await bridge.save({ id: file.id, text })
      : await bridge.saveAs({ suggestedName: name, text });
  take(
    result,
    (saved) => {
      file = saved;
      tell(t.notice.saved(saved.name));
    },
    t.notice.notSaved,
  );
}
