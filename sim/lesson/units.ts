import {
  joulesToKwh,
  kmhToMps,
  kwhToJoules,
  litresPer100KmToMpg,
  metresToMiles,
  milesToMetres,
  mpgToLitresPer100Km,
  mphToMps,
  mpsToKmh,
  mpsToMph,
  newtonMetresToPoundFeet,
  percentToShare,
  poundFeetToNewtonMetres,
  radPerSToRpm,
  rpmToRadPerS,
  shareToPercent,
} from "../../shared/units.ts";

/** What a number of a lesson measures. */
export type Measure =
  | "rotation"
  | "torque"
  | "power"
  | "energy"
  | "speed"
  | "share"
  | "number"
  | "consumption"
  | "time"
  | "distance";

/** Exponents of kg, m and s. */
export type Dimension = readonly [kg: number, m: number, s: number];

/** Dimension of each measure; a consumption is a volume over a distance. */
export const DIMENSION: Readonly<Record<Measure, Dimension>> = {
  rotation: [0, 0, -1],
  torque: [1, 2, -2],
  power: [1, 2, -3],
  energy: [1, 2, -2],
  speed: [0, 1, -1],
  share: [0, 0, 0],
  number: [0, 0, 0],
  consumption: [0, 2, 0],
  time: [0, 0, 1],
  distance: [0, 1, 0],
};

/** True when two dimensions are the same. */
export const sameDimension = (a: Dimension, b: Dimension): boolean =>
  a[0] === b[0] && a[1] === b[1] && a[2] === b[2];

/** A unit in which a lesson, a student or a file of answers may write. */
export interface LessonUnit {
  /** As it is shown: `rev/min`; empty for a bare number. */
  readonly id: string;
  readonly measure: Measure;
  /** Further spellings, lower case, without blanks and middle dots. */
  readonly spellings: readonly string[];
  readonly toSi: (value: number) => number;
  readonly fromSi: (value: number) => number;
  /** Decimals that a shown value has. */
  readonly decimals: number;
}

const times =
  (factor: number) =>
  (value: number): number =>
    value * factor;
const over =
  (factor: number) =>
  (value: number): number =>
    value / factor;
const same = (value: number): number => value;

/** m³/m of one L/100 km. */
const CONSUMPTION = 1e-8;

type Row = readonly [
  id: string,
  measure: Measure,
  decimals: number,
  toSi: (value: number) => number,
  fromSi: (value: number) => number,
  ...spellings: string[],
];

const ROWS: readonly Row[] = [
  ["rev/min", "rotation", 0, rpmToRadPerS, radPerSToRpm, "rpm", "r/min", "1/min", "min-1", "u/min"],
  ["rad/s", "rotation", 1, same, same, "radps"],
  ["N·m", "torque", 1, same, same, "nm", "n*m", "newtonmetre", "newtonmetres"],
  ["lb·ft", "torque", 1, poundFeetToNewtonMetres, newtonMetresToPoundFeet, "lbft", "lbfft", "ftlb", "lb-ft"],
  ["kW", "power", 2, times(1000), over(1000)],
  ["W", "power", 0, same, same],
  ["kJ", "energy", 0, times(1000), over(1000)],
  ["MJ", "energy", 3, times(1e6), over(1e6)],
  ["J", "energy", 0, same, same],
  ["kWh", "energy", 3, kwhToJoules, joulesToKwh],
  ["Wh", "energy", 0, (wh) => kwhToJoules(wh / 1000), (j) => joulesToKwh(j) * 1000],
  ["km/h", "speed", 1, kmhToMps, mpsToKmh, "kmh", "kph"],
  ["mph", "speed", 1, mphToMps, mpsToMph, "mi/h"],
  ["m/s", "speed", 2, same, same],
  ["%", "share", 1, percentToShare, shareToPercent, "percent", "pct"],
  ["", "number", 3, same, same],
  ["L/100 km", "consumption", 2, times(CONSUMPTION), over(CONSUMPTION), "l/100km", "litres/100km"],
  [
    "mpg",
    "consumption",
    1,
    (mpg) => mpgToLitresPer100Km(mpg) * CONSUMPTION,
    (si) => litresPer100KmToMpg(si / CONSUMPTION),
  ],
  ["s", "time", 1, same, same, "sec", "seconds"],
  ["min", "time", 2, times(60), over(60), "minutes"],
  ["km", "distance", 2, times(1000), over(1000)],
  ["m", "distance", 0, same, same],
  ["mi", "distance", 2, milesToMetres, metresToMiles, "miles"],
];

/** All units, those of a measure in the order of use. */
export const LESSON_UNITS: readonly LessonUnit[] = ROWS.map(
  ([id, measure, decimals, toSi, fromSi, ...spellings]) => ({
    id,
    measure,
    decimals,
    toSi,
    fromSi,
    spellings,
  }),
);

const plain = (text: string): string => text.toLowerCase().replace(/[\s\u00a0\u202f\u2009·⋅]/g, "");

/**
 * The unit of a spelling; middle dots and blanks do not matter, nor do capitals where no other unit differs by them.
 * @returns null for an unknown one
 */
export function findLessonUnit(text: string): LessonUnit | null {
  const exact = LESSON_UNITS.find(({ id }) => id === text.trim());
  if (exact) return exact;
  const wanted = plain(text);
  return LESSON_UNITS.find(({ id, spellings }) => plain(id) === wanted || spellings.includes(wanted)) ?? null;
}

/** The unit by its id, for code. */
export function unitById(id: string): LessonUnit {
  const found = LESSON_UNITS.find((unit) => unit.id === id);
  if (!found) throw new Error(`no unit ${id}`);
  return found;
}

/** Units of a measure as a text for messages: `rev/min or rad/s`. */
export const unitsOfMeasure = (measure: Measure): string =>
  LESSON_UNITS.filter((unit) => interchangeable(unit.measure, measure))
    .map(({ id }) => (id === "" ? "a bare number" : id))
    .join(" or ");

/** True when a value of one measure may be written in a unit of the other: shares and plain numbers mix. */
export const interchangeable = (a: Measure, b: Measure): boolean =>
  a === b || (a === "share" && b === "number") || (a === "number" && b === "share");
