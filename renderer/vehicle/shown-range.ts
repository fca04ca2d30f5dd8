import { digits, type ShownUnit } from "./shown-units.ts";

type Unit = Pick<ShownUnit, "toShown" | "fromShown">;

/** What a declaration accepts, SI, both ends included. */
interface Range {
  readonly min: number;
  readonly max: number;
}

/** Share of a number by which the way to another unit and back may be off. */
const ROUNDING = 1e-12;

const close = (a: number, b: number, share: number): boolean =>
  Math.abs(a - b) <= share * Math.max(Math.abs(a), Math.abs(b));

/** A shown number, SI. One that is an end of the range but for the rounding on the way is that end. */
export function toSi({ fromShown }: Unit, { min, max }: Range, shown: number): number {
  const value = fromShown(shown);
  return close(value, min, ROUNDING) ? min : close(value, max, ROUNDING) ? max : value;
}

const isIn = (unit: Unit, range: Range, shown: number): boolean => {
  const value = toSi(unit, range, shown);
  return value >= range.min && value <= range.max;
};

/** Whether six digits say all of it. */
const isShort = (shown: number): boolean => close(Number(digits(shown)), shown, 1e-11);

/** Rounded to so many digits, towards more or less. */
function rounded(shown: number, figures: number, round: (value: number) => number): number {
  if (shown === 0 || isShort(shown)) return Number(digits(shown));
  const step = 10 ** (Math.floor(Math.log10(Math.abs(shown))) - figures + 1);
  return Number((round(shown / step) * step).toPrecision(12));
}

/** Digits of a range's ends, most of a value, and of a value that is only round in SI. */
const FEW = 3;
const MOST = 6;
const VALUE = 4;

/**
 * A value in force as it is shown: as it was typed; one that is round only in SI (105 rad/s) with four digits. What is
 * shown would be accepted too.
 * @param value SI, in the range
 */
export function shownValue(unit: Unit, range: Range, value: number): string {
  const shown = unit.toShown(value);
  const isSiRound = Number(value.toPrecision(VALUE)) === value;
  const few = Number(shown.toPrecision(VALUE));
  if (isSiRound && !isShort(shown) && isIn(unit, range, few)) return String(few);
  const nearest = digits(shown);
  if (isIn(unit, range, Number(nearest))) return nearest;
  return String(rounded(shown, MOST, value < (range.min + range.max) / 2 ? Math.ceil : Math.floor));
}

/**
 * Least and greatest value as they are shown: three digits where the true end has many, rounded into the range, so that
 * both ends and all between are accepted; more digits where a value that is shown would lie outside.
 * @param values in force that stand beside it, SI
 */
export function shownEnds(
  unit: Unit,
  range: Range,
  values: readonly number[] = [],
): readonly [string, string] {
  const beside = values.map((value) => Number(shownValue(unit, range, value)));
  const endsAt = (figures: number) => [
    rounded(unit.toShown(range.min), figures, Math.ceil),
    rounded(unit.toShown(range.max), figures, Math.floor),
  ];
  for (let figures = FEW; figures <= MOST; figures += 1) {
    const [least = 0, most = 0] = endsAt(figures);
    if (least < most && beside.every((one) => one >= least && one <= most))
      return [String(least), String(most)];
  }
  const [least = 0, most = 0] = endsAt(MOST);
  return [String(Math.min(least, ...beside)), String(Math.max(most, ...beside))];
}
