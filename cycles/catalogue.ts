import type { CycleTrace, Phase } from "../shared/cycle.ts";
import { InputError } from "../shared/errors.ts";
import { BAG_BOUNDARY, buildFtp75, FTP75_TITLE, SOAK } from "./composite/ftp75.ts";
import { crop } from "./edit.ts";
import { isManoeuvre, MANOEUVRES, manoeuvre } from "./manoeuvres/catalogue.ts";
import { readTable } from "./standard/read.ts";
import type { StandardTable } from "./standard/table.ts";
import { STANDARD_TABLES } from "./standard/tables.ts";

/** What a list of cycles shows of each. */
export interface CycleInfo {
  /** What `cycleById` takes. */
  readonly id: string;
  readonly title: string;
  readonly kind: "standard" | "standard phase" | "composite" | "manoeuvre";
  /** The regulation, or "own manoeuvre". */
  readonly publishedIn: string;
  /** Unit of the published table; an own manoeuvre has none. */
  readonly unit: "mph" | "km/h" | null;
  /** s; null where it depends on parameters. */
  readonly duration: number | null;
  /** How sure the data are; empty for own manoeuvres. */
  readonly standing: string;
}

interface Entry {
  readonly info: CycleInfo;
  readonly build: () => CycleTrace;
}

const entries = new Map<string, Entry>();
const built = new Map<string, CycleTrace>();

for (const table of STANDARD_TABLES) {
  add(infoOf(table), () => readTable(table));
  if (table.phasesAlone) for (const phase of table.phases) addPhase(table, phase);
}
addFtp75();

function add(info: CycleInfo, build: () => CycleTrace): void {
  entries.set(info.id, { info, build });
}

function infoOf(table: StandardTable): CycleInfo {
  const { id, title, publishedIn, unit, duration, standing } = table;
  return { id, title, kind: "standard", publishedIn, unit, duration, standing };
}

function addPhase(table: StandardTable, phase: Phase): void {
  const id = `${table.id}-${phase.id}`;
  const title = `${table.title}: ${phase.title.toLowerCase()} phase`;
  const duration = phase.end - phase.start;
  add({ ...infoOf(table), id, title, kind: "standard phase", duration }, () => ({
    ...crop(cycleById(table.id), phase),
    id,
    title,
    phases: [],
  }));
}

function addFtp75(): void {
  const udds = infoOf(tableById("udds"));
  const duration = (udds.duration ?? 0) + SOAK + BAG_BOUNDARY;
  add({ ...udds, id: "ftp75", title: FTP75_TITLE, kind: "composite", duration }, () =>
    buildFtp75(cycleById("udds")),
  );
}

function tableById(id: string): StandardTable {
  const table = STANDARD_TABLES.find((candidate) => candidate.id === id);
  if (!table) throw new Error(`no table ${id}`);
  return table;
}

/** All cycles with what a list needs; no table is read for it. */
export function listCycles(): readonly CycleInfo[] {
  const own = MANOEUVRES.map(
    (m): CycleInfo => ({
      id: m.id,
      title: m.title,
      kind: "manoeuvre",
      publishedIn: "own manoeuvre",
      unit: null,
      duration: null,
      standing: "",
    }),
  );
  return [...[...entries.values()].map((entry) => entry.info), ...own];
}

/**
 * A cycle by its id. Standard tables are read at the first call and kept, so the arrays are shared: read them only.
 * @param id a standard or composite id, or a manoeuvre with or without parameters (`cruise:speed=100km/h`)
 * @throws InputError naming the known ids, or what is wrong with a manoeuvre's parameters
 */
export function cycleById(id: string): CycleTrace {
  const known = built.get(id);
  if (known) return known;
  const entry = entries.get(id);
  if (entry) {
    const trace = entry.build();
    built.set(id, trace);
    return trace;
  }
  if (isManoeuvre(id)) return manoeuvre(id);
  throw new InputError({
    what: "There is no cycle of this id.",
    where: "cycle",
    value: id,
    accepted: listCycles()
      .map((info) => info.id)
      .join(", "),
  });
}
