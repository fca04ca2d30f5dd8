import { signal } from "@preact/signals";
import { InputError } from "../../shared/errors.ts";
import type { Project } from "../../shared/project.ts";
import { STRATEGIES, strategyById } from "../../sim/control/strategies/registry.ts";
import type { ComparedStrategy } from "../../sim/study/compare/job.ts";
import type { OwnText } from "../workers/contract.ts";

/** The own strategies of the project, in the order in which they were made. Their titles differ. */
export const ownStrategies = signal<readonly OwnText[]>([]);

/** Most own strategies of a project. */
export const MOST_OWN = 30;

/** Longest title. */
export const MOST_TITLE = 60;

const PREFIX = "own:";

/** What an own strategy is called beside the ids of ours. */
export const ownId = (title: string): string => PREFIX + title;

/** The title in an own strategy's id; null for one of ours. */
export const ownTitle = (id: string): string | null =>
  id.startsWith(PREFIX) ? id.slice(PREFIX.length) : null;

/** A strategy as lists show it. */
export interface StrategyEntry {
  readonly id: string;
  readonly title: string;
  readonly about: string;
  readonly own: boolean;
}

/** Ours, then a person's own. */
export const strategyEntries = (own: readonly OwnText[], aboutOwn: string): readonly StrategyEntry[] => [
  ...STRATEGIES.map(({ id, title, about }) => ({ id, title, about, own: false })),
  ...own.map(({ title }) => ({ id: ownId(title), title, about: aboutOwn, own: true })),
];

/** The strategy of an id, as any thread can take it. @throws InputError for an unknown one */
export function strategyOf(own: readonly OwnText[], id: string): ComparedStrategy {
  const title = ownTitle(id);
  if (title === null) return { kind: "built-in", id: strategyById(id).id };
  const found = own.find((one) => one.title === title);
  if (found) return { kind: "own", ...found };
  throw new InputError({
    what: "no own strategy of this name",
    where: "strategy",
    value: title,
    accepted: own.map((one) => one.title).join(", ") || "one that was written in Compare",
  });
}

/** A title that no own strategy has yet: the one wanted, else with a number after it. */
export function freeTitle(own: readonly OwnText[], wanted: string): string {
  const base = wanted.trim().slice(0, MOST_TITLE) || "strategy";
  const taken = (title: string): boolean => own.some((one) => one.title === title);
  for (let n = 1; ; n += 1) {
    const title = n === 1 ? base : `${base} ${n}`;
    if (!taken(title)) return title;
  }
}

/** A list with one text changed. */
export const withText = (own: readonly OwnText[], title: string, text: string): readonly OwnText[] =>
  own.map((one) => (one.title === title ? { title, text } : one));

/** A list with one title changed; `to` must be free. */
export const withTitle = (own: readonly OwnText[], title: string, to: string): readonly OwnText[] =>
  own.map((one) => (one.title === title ? { title: to, text: one.text } : one));

/** The own strategies of a project; a title that stands twice gets a number. */
export function ownOfProject({ strategies }: Pick<Project, "strategies">): readonly OwnText[] {
  const list: OwnText[] = [];
  for (const one of strategies)
    if (one.kind === "own") list.push({ title: freeTitle(list, one.title), text: one.text });
  return list;
}

/** A project with these own strategies, everything else as it was. */
export const projectWithOwn = (project: Project, own: readonly OwnText[]): Project => ({
  ...project,
  strategies: [
    ...project.strategies.filter((one) => one.kind === "built-in"),
    ...own.map((one) => ({ kind: "own" as const, ...one })),
  ],
});
