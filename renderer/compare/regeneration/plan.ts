import type { RunOptions } from "../../../sim/options.ts";
import type { Vehicle } from "../../../sim/parameters/schema.ts";
import type { RegenerationCell, RegenerationPlan } from "../../../sim/study/regeneration/study.ts";
import { evenNumbers } from "../../../sim/study/regeneration/values.ts";
import { readNumber } from "../read-number.ts";

/** Typed values of one side of the map. */
export interface SideForm {
  readonly from: string;
  readonly to: string;
  readonly steps: string;
}

/** What is typed for the study; speeds in the person's road unit, charge in per cent. */
export interface StudyForm {
  readonly speeds: SideForm;
  readonly rates: SideForm;
  readonly charge: string;
}

export type StudyField = `${"speeds" | "rates"}.${keyof SideForm}` | "charge";

/** Most values of one side: more cells could not be read. */
export const MOST_SIDE = 24;

/** What a study's fields may hold, in the unit typed. */
export type Ranges = Readonly<Record<"speeds" | "rates" | "charge", readonly [number, number]>>;

/** Fields that are wrong. */
export function faultsIn(form: StudyForm, ranges: Ranges): ReadonlySet<StudyField> {
  const faults = new Set<StudyField>();
  const within = (text: string, [least, most]: readonly [number, number]): boolean => {
    const value = readNumber(text);
    return value !== null && value >= least && value <= most;
  };
  for (const side of ["speeds", "rates"] as const) {
    for (const end of ["from", "to"] as const)
      if (!within(form[side][end], ranges[side])) faults.add(`${side}.${end}`);
    const steps = readNumber(form[side].steps);
    if (steps === null || !Number.isInteger(steps) || steps < 2 || steps > MOST_SIDE)
      faults.add(`${side}.steps`);
  }
  if (!within(form.charge, ranges.charge)) faults.add("charge");
  return faults;
}

/** Values of a side, rising, each once. */
function valuesOf({ from, to, steps }: SideForm, toSi: (value: number) => number): readonly number[] {
  const [a = 0, b = 0, n = 2] = [from, to, steps].map((text) => readNumber(text) ?? undefined);
  const all = evenNumbers(Math.min(a, b), Math.max(a, b), n).map((value) =>
    Number(toSi(value).toPrecision(12)),
  );
  return [...new Set(all)];
}

/**
 * The study that is typed; its fields must be right (`faultsIn`).
 * @param toSi speed from the unit typed, m/s
 */
export const planOf = (
  form: StudyForm,
  vehicle: Vehicle,
  options: RunOptions,
  toSi: (value: number) => number,
): RegenerationPlan => ({
  vehicle,
  options,
  speeds: valuesOf(form.speeds, toSi),
  rates: valuesOf(form.rates, (value) => value),
  charges: [(readNumber(form.charge) ?? 0) / 100],
});

/** Key of a cell by what was asked for. */
export const cellKey = ({ speed, rate }: Pick<RegenerationCell, "speed" | "rate">): string =>
  `${speed} ${rate}`;
