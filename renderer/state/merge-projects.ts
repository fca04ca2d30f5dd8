import type { LessonState, OwnLesson, Project, StrategyChoice } from "../../shared/project.ts";
import { freshLessonId } from "./lessons.ts";
import { freeTitle } from "./own-strategies.ts";

type OwnStrategy = Extract<StrategyChoice, { kind: "own" }>;

/** A list of one window, what it was when it was last kept, and what is kept now. */
interface Three<T> {
  readonly base: readonly T[];
  readonly mine: readonly T[];
  readonly theirs: readonly T[];
}

interface Rules<T> {
  readonly keyOf: (one: T) => string;
  /** one of theirs under another key, where both windows changed it; null: mine stands */
  readonly apart: ((one: T, taken: readonly T[]) => T) | null;
}

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** Mine with what others added or changed since, without what they deleted; what I deleted stays deleted. */
function mergeLists<T>({ base, mine, theirs }: Three<T>, { keyOf, apart }: Rules<T>): T[] {
  const byKey = (list: readonly T[]): ReadonlyMap<string, T> => new Map(list.map((one) => [keyOf(one), one]));
  const [before, now, there] = [byKey(base), byKey(mine), byKey(theirs)];
  const clashes: T[] = [];
  const merged = mine.flatMap((one) => {
    const old = before.get(keyOf(one));
    const other = there.get(keyOf(one));
    const untouched = old !== undefined && same(one, old);
    if (other === undefined) return untouched ? [] : [one];
    if (untouched) return [other];
    if (!same(one, other) && !(old !== undefined && same(other, old))) clashes.push(other);
    return [one];
  });
  for (const one of theirs) {
    if (now.has(keyOf(one))) continue;
    const old = before.get(keyOf(one));
    if (old === undefined || !same(one, old)) merged.push(one);
  }
  if (apart) for (const one of clashes) merged.push(apart(one, merged));
  return merged;
}

/** What a project's schema takes. */
const MOST = { strategies: 50, lessons: 200, begun: 500 };

const isOwn = (one: StrategyChoice): one is OwnStrategy => one.kind === "own";

const begunIn = ({ lesson, lessonsBegun }: Project): readonly LessonState[] =>
  lesson ? [...lessonsBegun, lesson] : lessonsBegun;

/**
 * Mine as it is to be kept where another window has kept its own since: own strategies, own lessons and how far lessons
 * are come from both. Where both changed a text, both are there, theirs under another name. All else is mine.
 * @param base mine when it was last kept or read
 */
export function mergeProjects(base: Project, mine: Project, theirs: Project): Project {
  const lists = <T>(of: (project: Project) => readonly T[]): Three<T> => ({
    base: of(base),
    mine: of(mine),
    theirs: of(theirs),
  });
  const strategies = mergeLists<OwnStrategy>(
    lists((project) => project.strategies.filter(isOwn)),
    {
      keyOf: ({ title }) => title,
      apart: (one, taken) => ({ ...one, title: freeTitle(taken, one.title) }),
    },
  );
  // The chosen one stands first, ours or an own one, and those between keep their places.
  const stays = new Map(strategies.map((one) => [one.title, one]));
  const first = mine.strategies.flatMap((one) => (isOwn(one) ? (stays.get(one.title) ?? []) : one));
  const added = strategies.filter((one) => !first.includes(one));
  const lessons = mergeLists<OwnLesson>(
    lists((project) => project.lessons),
    {
      keyOf: ({ id }) => id,
      apart: (one, taken) => ({
        ...one,
        id: freshLessonId(
          one.title,
          taken.map(({ id }) => id),
        ),
      }),
    },
  );
  const begun = mergeLists<LessonState>(lists(begunIn), { keyOf: ({ id }) => id, apart: null });
  return {
    ...mine,
    strategies: [...first, ...added].slice(0, MOST.strategies),
    lessons: lessons.slice(0, MOST.lessons),
    lessonsBegun: begun.filter(({ id }) => id !== mine.lesson?.id).slice(-MOST.begun),
  };
}
