const SHAPE = /^(\d{4})-(\d\d)-(\d\d)[T ](\d\d):(\d\d):(\d\d(?:[.,]\d+)?)\s*(Z|z|[+-]\d\d:?\d\d)?$/;

/** A time read. */
export interface ReadTime {
  /** s since 1970-01-01 00:00 UTC, leap seconds not counted. */
  readonly seconds: number;
  /** False when the text names no zone and UTC was taken. */
  readonly hasZone: boolean;
}

/**
 * Reads a time as GPX writes it: `2024-05-01T07:30:00Z`, with a fraction, with an offset, or without a zone
 * (dateTime of XML Schema, part 2). Summer time cannot confuse it: UTC has none.
 * @returns null when the text is no such time
 */
export function readTime(text: string): ReadTime | null {
  const match = SHAPE.exec(text.trim());
  if (!match) return null;
  const [, year, month, day, hour, minute, second = "", zone] = match;
  const y = Number(year);
  const m = Number(month);
  const d = Number(day);
  const h = Number(hour);
  const min = Number(minute);
  const s = Number(second.replace(",", "."));
  if (m < 1 || m > 12 || d < 1 || d > daysIn(y, m)) return null;
  // A leap second is written as :60; it is taken for the first second of the minute after.
  if (h > 23 || min > 59 || s >= 61) return null;
  const offset = zoneOffset(zone);
  if (offset === null) return null;
  return {
    seconds: dayNumber(y, m, d) * 86_400 + h * 3600 + min * 60 + s - offset,
    hasZone: zone !== undefined,
  };
}

/** s east of UTC; null for an impossible offset. */
function zoneOffset(zone: string | undefined): number | null {
  if (zone === undefined || zone.toUpperCase() === "Z") return 0;
  const hours = Number(zone.slice(1, 3));
  const minutes = Number(zone.slice(-2));
  if (hours > 14 || minutes > 59) return null;
  return (zone.startsWith("-") ? -1 : 1) * (hours * 3600 + minutes * 60);
}

const isLeap = (y: number): boolean => (y % 4 === 0 && y % 100 !== 0) || y % 400 === 0;

const daysIn = (y: number, m: number): number => {
  if (m === 2) return isLeap(y) ? 29 : 28;
  return m === 4 || m === 6 || m === 9 || m === 11 ? 30 : 31;
};

/** Days since 1970-01-01 in the Gregorian calendar: years counted from March, so that the leap day comes last. */
function dayNumber(year: number, month: number, day: number): number {
  const y = month > 2 ? year : year - 1;
  const fromMarch = (month + 9) % 12;
  const days = 365 * y + Math.floor(y / 4) - Math.floor(y / 100) + Math.floor(y / 400);
  return days + Math.floor((153 * fromMarch + 2) / 5) + day - 1 - 719_468;
}
