import { kmhToMps, mphToMps, percentToShare, rpmToRadPerS } from "../shared/units.ts";

/** What a typed or tabled number can stand for. */
export type Dimension =
  | "time"
  | "speed"
  | "grade"
  | "acceleration"
  | "length"
  | "count"
  | "rotation"
  | "charge"
  | "current";

/** A unit people may write, with its way to SI. */
export interface WrittenUnit {
  /** How it is shown and written back: `km/h`. */
  readonly id: string;
  /** Further accepted spellings, lower case, blanks for underscores. */
  readonly spellings: readonly string[];
  /** To s, m/s, m, m/s², rise over run, rad/s, a share 0–1 or A. */
  readonly toSi: (value: number) => number;
}

const same = (value: number): number => value;

// SI prefixes and the minute are written out here; the factors that come from a definition live in shared/units.ts.
const UNITS: Readonly<Record<Dimension, readonly WrittenUnit[]>> = {
  time: [
    { id: "s", spellings: ["sec", "secs", "second", "seconds"], toSi: same },
    { id: "ms", spellings: ["msec", "millisecond", "milliseconds"], toSi: (ms) => ms / 1000 },
    { id: "min", spellings: ["minute", "minutes"], toSi: (min) => min * 60 },
  ],
  speed: [
    { id: "km/h", spellings: ["kmh", "kph", "kmph", "km h", "km/hr", "km per h"], toSi: kmhToMps },
    { id: "mph", spellings: ["mi/h", "mi h", "miles/h", "miles per hour"], toSi: mphToMps },
    { id: "m/s", spellings: ["mps", "m s", "m/sec", "ms-1", "m s-1", "m per s"], toSi: same },
  ],
  grade: [
    { id: "%", spellings: ["percent", "per cent", "pct"], toSi: percentToShare },
    { id: "rise/run", spellings: ["1", "-", "m/m", "share", "fraction"], toSi: same },
    { id: "deg", spellings: ["°", "degree", "degrees"], toSi: (deg) => Math.tan((deg * Math.PI) / 180) },
  ],
  acceleration: [{ id: "m/s2", spellings: ["m/s²", "m/s^2", "mps2"], toSi: same }],
  length: [
    { id: "m", spellings: ["metre", "metres", "meter", "meters"], toSi: same },
    { id: "km", spellings: ["kilometre", "kilometres", "kilometer", "kilometers"], toSi: (km) => km * 1000 },
  ],
  count: [{ id: "", spellings: ["times", "x"], toSi: same }],
  rotation: [
    { id: "rev/min", spellings: ["rpm", "1/min", "r/min", "min-1", "revs per minute"], toSi: rpmToRadPerS },
    { id: "rad/s", spellings: ["radps", "rad per s", "rad s-1"], toSi: same },
  ],
  charge: [
    { id: "%", spellings: ["percent", "per cent", "pct"], toSi: percentToShare },
    { id: "share", spellings: ["1", "-", "fraction"], toSi: same },
  ],
  current: [{ id: "A", spellings: ["a", "amp", "amps", "ampere", "amperes"], toSi: same }],
};

/** All units of a dimension, the first one the usual. */
export function unitsOf(dimension: Dimension): readonly WrittenUnit[] {
  return UNITS[dimension];
}

/**
 * Looks a unit up by any of its spellings; capitals and underscores do not matter.
 * @returns null when the dimension has no such unit
 */
export function findUnit(dimension: Dimension, text: string): WrittenUnit | null {
  const wanted = text.trim().toLowerCase().replace(/_/g, " ");
  for (const unit of UNITS[dimension]) {
    if (unit.id === wanted || unit.spellings.includes(wanted)) return unit;
  }
  return null;
}

/** The units of a dimension as a text for error messages: `km/h, mph or m/s`. */
export function unitChoice(dimension: Dimension): string {
  const ids = UNITS[dimension].map((unit) => (unit.id === "" ? "no unit" : unit.id));
  return ids.length === 1 ? ids.join("") : `${ids.slice(0, -1).join(", ")} or ${ids.slice(-1).join("")}`;
}
