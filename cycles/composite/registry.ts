import { InputError } from "../../shared/errors.ts";
import { CITY_WEIGHT } from "./weighting.ts";

/** One drive of a test that is made of several. */
export interface CompositePart {
  readonly id: string;
  readonly title: string;
  /** A cycle id. */
  readonly cycle: string;
  /** Share of this part's fuel per distance in the result; the shares of a test add up to 1. */
  readonly weight: number;
  /** True when the drive starts with a cold engine. */
  readonly coldStart: boolean;
}

/** A result that several drives give together: the weighted mean of their fuel per distance. */
export interface CompositeTest {
  readonly id: string;
  readonly title: string;
  readonly publishedIn: string;
  readonly parts: readonly CompositePart[];
}

const highway: CompositePart = {
  id: "highway",
  title: "Highway",
  cycle: "hwfet",
  weight: 1 - CITY_WEIGHT,
  coldStart: false,
};

/** All composite tests. */
export const COMPOSITE_TESTS: readonly CompositeTest[] = [
  {
    id: "combined",
    title: "Combined city and highway",
    publishedIn: "40 CFR 600.206 and 600.209, before any adjustment for the label",
    parts: [{ id: "city", title: "City", cycle: "ftp75", weight: CITY_WEIGHT, coldStart: true }, highway],
  },
  {
    id: "combined-warm",
    title: "Combined city and highway, all warm",
    publishedIn: "own shortcut: the weights of the combined test without its cold start and soak",
    parts: [
      { id: "city", title: "City, warm", cycle: "udds", weight: CITY_WEIGHT, coldStart: false },
      highway,
    ],
  },
];

/**
 * A composite test by its id.
 * @throws InputError naming the known ids
 */
export function compositeById(id: string): CompositeTest {
  const found = COMPOSITE_TESTS.find((test) => test.id === id);
  if (found) return found;
  throw new InputError({
    what: "There is no composite test of this id.",
    where: "composite test",
    value: id,
    accepted: COMPOSITE_TESTS.map((test) => test.id).join(", "),
  });
}
