import { batch, signal } from "@preact/signals";
import type { CycleTrace } from "../../shared/cycle.ts";
import { RunLog } from "../../sim/run/log.ts";
import { tell } from "../app/window.ts";
import { cursor, liveRow, mode, ownCycles, playing, requestNow, run, takeRun } from "../state/road.ts";
import type { Run } from "../state/run.ts";
import { t } from "../texts/catalogue.ts";
import type { LiveNews, LiveOrder, LiveRow, Pedals } from "../workers/live-contract.ts";
import { balanceOf, runName } from "./actions.ts";

/** Where the pedals are. */
export const pedals = signal<Pedals>({
  accelerator: 0,
  brake: 0,
  gear: "park",
  grade: 0,
  electricOnly: false,
});

/** Whether a drive is under way, how much of real time the engine takes, and whether it falls behind. */
export const driving = signal(false);
export const load = signal(0);
export const behind = signal(false);

/** Rows between two times that the plots are told of new ones. */
const PLOTS_EVERY = 5;

/** Shortest drive that is kept, rows. */
const LEAST_ROWS = 20;

let worker: Worker | null = null;
let log = new RunLog(1);
let regime = new Uint8Array(0);
let final = 0;
let plotted = 0;
let drives = 0;
let before: Run | null = null;

const order = (what: LiveOrder): void => worker?.postMessage(what);

function put(index: number, { row, regime: of }: LiveRow): void {
  if (index >= regime.length) {
    const wider = new Uint8Array(2 * regime.length);
    wider.set(regime);
    regime = wider;
  }
  log.put(index, row);
  regime[index] = of;
}

/** The drive so far as a run to look at: a new object, so that whoever reads it reads again. */
const soFar = (base: Run): Run => ({ ...base, log, regime, bytes: log.bytes });

function frame(rows: readonly LiveRow[], head: LiveRow): void {
  const base = run.value;
  if (!base) return;
  for (const row of rows) {
    put(final, row);
    final += 1;
  }
  put(final, head);
  batch(() => {
    if (final - plotted >= PLOTS_EVERY || regime !== base.regime) {
      plotted = final;
      run.value = soFar(base);
    }
    liveRow.value = { row: final };
    cursor.value = head.row.values[0] ?? 0;
  });
}

function ended(news: Extract<LiveNews, { news: "ended" }>, base: Run): void {
  const title = t.road.pedals.cycleTitle(drives);
  const cycle: CycleTrace = {
    id: `driven-${drives}`,
    title,
    source: t.road.pedals.cycleSource,
    ...news.trace,
    phases: [],
    soaks: [],
    treatment: [],
  };
  const request = { ...base.request, cycle };
  batch(() => {
    leave();
    ownCycles.value = [...ownCycles.value, cycle];
    mode.value = "replay";
    void balanceOf(takeRun(request, news.reply, runName(request)));
  });
  tell(t.road.pedals.kept(title));
}

/** Ends the worker; what was looked at before comes back unless a run takes its place. */
function leave(): void {
  if (!worker) return;
  worker.terminate();
  worker = null;
  batch(() => {
    driving.value = false;
    liveRow.value = null;
    run.value = before;
    cursor.value = 0;
  });
}

/** Starts a drive by hand with the chosen vehicle, strategy and options. */
export function startDriving(): void {
  const request = requestNow();
  playing.value = false;
  before = run.value;
  log = new RunLog(36_000);
  regime = new Uint8Array(36_000);
  final = 0;
  plotted = 0;
  worker = new Worker(new URL("../workers/live.worker.ts", import.meta.url), { type: "module" });
  worker.onmessage = ({ data }: MessageEvent<LiveNews>): void => {
    if (data.news === "frame") {
      load.value = data.load;
      behind.value = data.behind;
      frame(data.rows, data.head);
      driving.value = true;
      requestAnimationFrame(() => order({ order: "seen" }));
    } else if (data.news === "ended" && run.value) ended(data, run.value);
    else if (data.news === "failed") {
      leave();
      tell(t.road.stopped(data.why), true);
    }
  };
  run.value = {
    id: 0,
    name: t.road.pedals.driving,
    request,
    log: emptyLog(),
    regime,
    summary: null,
    bytes: 0,
  };
  pedals.value = { ...pedals.value, accelerator: 0, brake: 0, gear: "park" };
  order({ order: "start", request });
}

/** A log of one row at rest, until the first one comes. */
function emptyLog(): RunLog {
  const blank = { values: new Float64Array(log.width), flows: new Float32Array(0), mode: 0, mask: 0 };
  log.put(0, blank);
  return log;
}

/** Moves the pedals or the selector. */
export function press(changed: Partial<Pedals>): void {
  pedals.value = { ...pedals.value, ...changed };
  order({ order: "pedals", pedals: pedals.value });
}

/** Ends the drive: it becomes a cycle with its run; a very short one is let go. */
export function endDriving(): void {
  if (final < LEAST_ROWS) {
    leave();
    tell(t.road.pedals.tooShort);
    return;
  }
  drives += 1;
  const [id, title] = [`driven-${drives}`, t.road.pedals.cycleTitle(drives)];
  order({ order: "end", id, title, source: t.road.pedals.cycleSource });
}

/** Ends the drive and forgets it. */
export const discardDrive = (): void => leave();
