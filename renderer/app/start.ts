import { effect } from "@preact/signals";
import type { MenuCommand } from "../../shared/bridge.ts";
import { InputError } from "../../shared/errors.ts";
import type { Project } from "../../shared/project.ts";
import { bridge } from "../bridge/chooser.ts";
import { startClock } from "../drive/clock.ts";
import { ProjectKeeper, type TextStore } from "../state/autosave.ts";
import { followInstant } from "../state/instant.ts";
import { databaseStore } from "../state/own-store.ts";
import { followPlace, goTo } from "../state/place.ts";
import { keepPreferences, readPreferences } from "../state/preferences.ts";
import { preferences, projector, reducedMotion, systemDark, theme } from "../state/settings.ts";
import { resetHistory } from "../state/store.ts";
import { slowing } from "../state/turning.ts";
import { redoHere, undoHere } from "../state/undoing.ts";
import { t } from "../texts/catalogue.ts";
import { measureAgain } from "../ui/measure.ts";
import { readMetrics } from "../ui/metrics.ts";
import { toggleProjector, toggleTheme } from "./appearance.ts";
import { followDrops } from "./drop.ts";
import { keepOwnCycles } from "./keep-cycles.ts";
import { onKeyDown } from "./keys.ts";
import { loadRest } from "./places.ts";
import { openProject, projectToKeep, saveProject, takeOpened, useProject } from "./project.ts";
import { tell, toggleWindow } from "./window.ts";

const nothing: TextStore = { getItem: () => null, setItem: () => undefined };

/** The device's store, or none where it is switched off. */
function deviceStore(): TextStore {
  try {
    return window.localStorage;
  } catch {
    return nothing;
  }
}

function follow(query: string, onChange: (matches: boolean) => void): void {
  const list = window.matchMedia(query);
  onChange(list.matches);
  list.addEventListener("change", (event) => onChange(event.matches));
}

function followLook(): void {
  follow("(prefers-color-scheme: dark)", (dark) => {
    systemDark.value = dark;
  });
  follow("(prefers-reduced-motion: reduce)", (reduced) => {
    reducedMotion.value = reduced;
  });
  effect(() => {
    const { dataset } = document.documentElement;
    dataset.theme = theme.value;
    if (projector.value) dataset.mode = "projector";
    else delete dataset.mode;
    readMetrics();
  });
  window.addEventListener("resize", readMetrics);
  document.fonts.ready.then(measureAgain, measureAgain);
}

function restore(store: TextStore, keeper: ProjectKeeper): void {
  preferences.value = readPreferences(store);
  slowing.value = preferences.value.slowing;
  const kept = keeper.restore();
  if (kept.kind === "nothing") return;
  try {
    if (kept.kind === "ignored")
      throw new InputError({ what: kept.reason, where: "", value: "", accepted: "" });
    useProject(kept.project);
    resetHistory();
    tell(t.notice.restored);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    tell(t.notice.ignored(error.faults[0]?.what ?? ""), true);
  }
}

/** Time after the start at which the other places and Road's worker are made ready, ms: after the first picture. */
const WARM_AFTER = 1500;

/** Time after the last edit at which the bench is kept, ms. */
const KEEP_AFTER = 400;

function keep(store: TextStore, keeper: ProjectKeeper): void {
  let timer = 0;
  let told = false;
  const keepNow = (project: Project): void => {
    const kept = keeper.keep(project);
    if (!kept && !told) tell(t.notice.notKept, true);
    told = !kept;
  };
  effect(() => keepPreferences(store, preferences.value));
  effect(() => {
    const now = projectToKeep();
    window.clearTimeout(timer);
    timer = window.setTimeout(() => keepNow(now), KEEP_AFTER);
  });
  window.addEventListener("pagehide", () => keeper.keep(projectToKeep()));
}

const COMMANDS: Readonly<Partial<Record<MenuCommand, () => void>>> = {
  open: () => void openProject(),
  save: () => void saveProject(),
  "save-as": () => void saveProject(true),
  undo: undoHere,
  redo: redoHere,
  "place-bench": () => goTo("bench"),
  "place-road": () => goTo("road"),
  "place-compare": () => goTo("compare"),
  "place-lessons": () => goTo("lessons"),
  "place-vehicle": () => goTo("vehicle"),
  "place-cycles": () => goTo("cycles"),
  "export-run": () => void import("../drive/export.ts").then(({ saveCsv }) => saveCsv()),
  projector: toggleProjector,
  theme: toggleTheme,
  shortcuts: () => toggleWindow("keys"),
  glossary: () => toggleWindow("glossary"),
};

/** Makes ready what is likely asked for next. */
async function warmUp(): Promise<void> {
  await loadRest();
  const { warmUp: warmRoad } = await import("../drive/actions.ts");
  warmRoad();
}

/** Everything that happens once, before the page is drawn. */
export function start(): void {
  const store = deviceStore();
  const keeper = new ProjectKeeper(store);
  restore(store, keeper);
  followLook();
  keep(store, keeper);
  void keepOwnCycles(databaseStore());
  document.addEventListener("keydown", onKeyDown);
  followPlace();
  followDrops();
  startClock();
  followInstant();
  window.setTimeout(() => void warmUp(), WARM_AFTER);
  bridge.onMenu((command) => COMMANDS[command]?.());
  bridge.onOpenFile(takeOpened);
}
