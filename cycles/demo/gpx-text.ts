/** A point to be written. */
export interface GpxTextPoint {
  /** s since 1970; null leaves the time out. */
  readonly time: number | null;
  /** Degrees. */
  readonly latitude: number;
  readonly longitude: number;
  /** m; null leaves it out. */
  readonly elevation: number | null;
}

/** A track to be written. */
export interface GpxText {
  readonly name: string;
  readonly description: string;
  readonly segments: readonly (readonly GpxTextPoint[])[];
}

/** Writes a GPX 1.1 file, seven decimals for a place (a centimetre) and one for an elevation, as receivers do. */
export function writeGpx({ name, description, segments }: GpxText): string {
  const lines = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<gpx version="1.1" creator="Trishaft" xmlns="http://www.topografix.com/GPX/1/1">',
    `<metadata><desc>${escaped(description)}</desc></metadata>`,
    `<trk><name>${escaped(name)}</name>`,
  ];
  for (const segment of segments) {
    lines.push("<trkseg>", ...segment.map(pointText), "</trkseg>");
  }
  lines.push("</trk>", "</gpx>", "");
  return lines.join("\n");
}

function pointText({ time, latitude, longitude, elevation }: GpxTextPoint): string {
  const ele = elevation === null ? "" : `<ele>${elevation.toFixed(1)}</ele>`;
  const when = time === null ? "" : `<time>${timeText(time)}</time>`;
  return `<trkpt lat="${latitude.toFixed(7)}" lon="${longitude.toFixed(7)}">${ele}${when}</trkpt>`;
}

/** `2024-05-01T06:30:00Z`, milliseconds where there are any. @param seconds since 1970 */
export function timeText(seconds: number): string {
  const days = Math.floor(seconds / 86_400);
  const { year, month, day } = dateOf(days);
  const rest = Math.round((seconds - days * 86_400) * 1000);
  const two = (value: number): string => String(Math.floor(value)).padStart(2, "0");
  const ms = rest % 1000;
  const clock = [rest / 3_600_000, (rest / 60_000) % 60, (rest / 1000) % 60].map(two).join(":");
  const fraction = ms === 0 ? "" : `.${String(ms).padStart(3, "0")}`;
  return `${String(year).padStart(4, "0")}-${two(month)}-${two(day)}T${clock}${fraction}Z`;
}

/** Gregorian date of a day counted from 1970-01-01; years run from March so that the leap day comes last. */
function dateOf(days: number): { year: number; month: number; day: number } {
  const sinceMarch = days + 719_468;
  const era = Math.floor(sinceMarch / 146_097);
  const dayOfEra = sinceMarch - era * 146_097;
  const yearOfEra = Math.floor(
    (dayOfEra -
      Math.floor(dayOfEra / 1460) +
      Math.floor(dayOfEra / 36_524) -
      Math.floor(dayOfEra / 146_096)) /
      365,
  );
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const fromMarch = Math.floor((5 * dayOfYear + 2) / 153);
  const day = dayOfYear - Math.floor((153 * fromMarch + 2) / 5) + 1;
  const month = fromMarch < 10 ? fromMarch + 3 : fromMarch - 9;
  return { year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0), month, day };
}

const escaped = (text: string): string =>
  text.replace(/[&<>]/g, (sign) => (sign === "&" ? "&amp;" : sign === "<" ? "&lt;" : "&gt;"));
