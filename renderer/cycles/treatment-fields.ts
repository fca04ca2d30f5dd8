import type { RawDrive } from "../../shared/recorded.ts";
import {
  type Treatment,
  type TreatmentInput,
  type TreatmentKind,
  treatmentSchema,
} from "../../shared/treatments.ts";
import { kmhToMps, mphToMps, mpsToKmh, mpsToMph } from "../../shared/units.ts";
import { num, roadUnitName, type Units } from "../state/format.ts";
import { splitNumber } from "../state/parse.ts";
import type { t } from "../texts/catalogue.ts";
import { clockTime } from "../ui/time.ts";
import { parseClock } from "./plot/clock.ts";

/** How a number of a treatment is shown and typed. */
type Measure = "clock" | "seconds" | "metres" | "speed" | "rate" | "percent";

/** One number of a treatment; its range is the file schema's. */
export interface TreatmentField {
  readonly key: keyof (typeof t)["cycles"]["fields"];
  readonly measure: Measure;
  /** SI */
  readonly least: number;
  readonly most: number;
  /** may be left to be found from the data */
  readonly auto: boolean;
}

const DAYS = 360_000;

const field = (
  key: TreatmentField["key"],
  measure: Measure,
  least: number,
  most: number,
  auto = false,
): TreatmentField => ({ key, measure, least, most, auto });

const FIELDS: Readonly<Record<Exclude<TreatmentKind, "smooth">, readonly TreatmentField[]>> = {
  crop: [field("start", "clock", 0, DAYS), field("end", "clock", 0, DAYS)],
  fillGaps: [field("longest", "seconds", 0, 3600)],
  resample: [field("step", "seconds", 0.01, 60)],
  limitAcceleration: [field("acceleration", "rate", 0.1, 20), field("deceleration", "rate", 0.1, 20)],
  setToRest: [
    field("below", "speed", 0, 5),
    field("atLeast", "seconds", 0, 600),
    field("start", "clock", 0, DAYS),
    field("end", "clock", 0, DAYS),
  ],
  startAndEndAtRest: [field("acceleration", "rate", 0.1, 5)],
  limitGrade: [field("steepest", "percent", 0, 0.5)],
  level: [],
};

/** The numbers of a treatment, in the order in which they are shown. @param raw says what smoothing means */
export function fieldsOf(kind: TreatmentKind, raw: RawDrive["kind"]): readonly TreatmentField[] {
  if (kind !== "smooth") return FIELDS[kind];
  return raw === "positions"
    ? [
        field("jitter", "metres", 0.05, 30, true),
        field("elevationJitter", "metres", 0.05, 30, true),
        field("step", "seconds", 0.1, 10),
      ]
    : [field("jitter", "speed", 0.05, 30, true), field("elevationJitter", "percent", 0.0005, 0.5, true)];
}

/** The unit of a measure as it is written; times of the clock have none. */
export function unitOfMeasure(measure: Measure, units: Units): string {
  switch (measure) {
    case "clock":
      return "";
    case "seconds":
      return "s";
    case "metres":
      return "m";
    case "speed":
      return roadUnitName(units);
    case "rate":
      return "m/s²";
    case "percent":
      return "%";
  }
}

const toShown = (measure: Measure, units: Units, value: number): number => {
  if (measure === "percent") return value * 100;
  if (measure !== "speed") return value;
  return units.road === "kmh" ? mpsToKmh(value) : mpsToMph(value);
};

const fromShown = (measure: Measure, units: Units, value: number): number => {
  if (measure === "percent") return value / 100;
  if (measure !== "speed") return value;
  return units.road === "kmh" ? kmhToMps(value) : mphToMps(value);
};

/** A number as it is shown, without its unit. */
export function shownNumber(measure: Measure, units: Units, value: number): string {
  if (measure === "clock") return clockTime(value, Number.isInteger(value) ? 0 : 1);
  return num(toShown(measure, units, value), 3).replace(/\.?0+$/, "");
}

/** The range as it is told. */
export const rangeWords = ({ measure, least, most }: TreatmentField, units: Units): string =>
  `${shownNumber(measure, units, least)} … ${shownNumber(measure, units, most)} ${unitOfMeasure(measure, units)}`.trim();

/** Half a digit of what is shown: what was typed as the end of the range is the end. */
const ROUNDING = 1e-9;

/** A typed number in SI, "auto" for an empty one that may be found; null when it is none or out of range. */
export function readField(
  { measure, least, most, auto }: TreatmentField,
  text: string,
  units: Units,
): number | "auto" | null {
  if (text.trim() === "") return auto ? "auto" : null;
  const unit = unitOfMeasure(measure, units).toLowerCase();
  const typed = measure === "clock" ? null : splitNumber(text);
  const read =
    measure === "clock" ? parseClock(text) : typed && ["", unit].includes(typed.unit) ? typed.value : null;
  if (read === null) return null;
  const value = fromShown(measure, units, read);
  const inside = value >= least - ROUNDING && value <= most + ROUNDING;
  return inside ? Math.min(most, Math.max(least, value)) : null;
}

/** A treatment with one number changed. */
export const withField = (treatment: Treatment, key: string, value: number | "auto"): Treatment =>
  treatmentSchema.parse({ ...treatment, [key]: value });

/** What is put in when a treatment is added. @param duration s, of the drive as it is now */
export function freshTreatment(kind: TreatmentKind, duration: number): Treatment {
  const end = Math.min(DAYS, duration);
  const input: TreatmentInput =
    kind === "crop" ? { kind, start: 0, end } : kind === "resample" ? { kind, step: 1 } : { kind };
  return treatmentSchema.parse(input);
}

/** The value of a field in a treatment. */
export function fieldValue(treatment: Treatment, key: string): number | "auto" {
  const value: unknown = Object.entries(treatment).find(([name]) => name === key)?.[1];
  return typeof value === "number" ? value : "auto";
}
