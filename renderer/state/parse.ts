import { kmhToMps, mphToMps, rpmToRadPerS } from "../../shared/units.ts";
import { fromShaftUnit, type Units } from "./format.ts";

/** What a typed text comes to; a reason is a key of the text catalogue. */
export type Parsed =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly reason: "notNumber" | "unknownUnit" | "roadNeedsRing" };

/** What a speed is typed for. */
export interface SpeedContext {
  readonly units: Units;
  /** rad/s of the ring for a road speed in m/s; null for a shaft that has no fixed road speed */
  readonly ofRoad: ((mps: number) => number) | null;
}

const SHAFT_UNITS: Readonly<Record<string, (value: number) => number>> = {
  "rev/min": rpmToRadPerS,
  rpm: rpmToRadPerS,
  "r/min": rpmToRadPerS,
  "1/min": rpmToRadPerS,
  "rad/s": (value) => value,
  "rev/s": (value) => rpmToRadPerS(value * 60),
};

const ROAD_UNITS: Readonly<Record<string, (value: number) => number>> = {
  "km/h": kmhToMps,
  kmh: kmhToMps,
  kph: kmhToMps,
  mph: mphToMps,
  "m/s": (value) => value,
};

/** Number and unit of a text; spaces, thin spaces and commas may group thousands, a lone comma is a decimal one. */
export function splitNumber(text: string): { value: number; unit: string } | null {
  const plain = text
    .replace(/[\u2212\u2013]/g, "-")
    .replace(/[\s\u00a0\u202f\u2009]/g, " ")
    .trim();
  const match = /^([+-]? ?(?:\d{1,3}(?:[ ,]\d{3})+|\d+(?:,\d+)?)?(?:\.\d+)?)(?![\d.,]) *(.*)$/.exec(plain);
  if (!match || !/\d/.test(match[1] ?? "")) return null;
  const [, written = "", unit = ""] = match;
  const tight = written.replaceAll(" ", "");
  const grouped = /^[+-]?\d{1,3}(,\d{3})+(\.\d+)?$/.test(tight);
  const value = Number(grouped ? tight.replaceAll(",", "") : tight.replace(",", "."));
  return Number.isFinite(value) ? { value, unit: unit.trim().toLowerCase() } : null;
}

/** A typed speed in rad/s: "2400", "251 rad/s", "35 km/h" (ring only). */
export function parseSpeed(text: string, { units, ofRoad }: SpeedContext): Parsed {
  const read = splitNumber(text);
  if (!read) return { ok: false, reason: "notNumber" };
  const { value, unit } = read;
  if (unit === "") return { ok: true, value: fromShaftUnit(units, value) };
  const shaft = SHAFT_UNITS[unit];
  if (shaft) return { ok: true, value: shaft(value) };
  const road = ROAD_UNITS[unit];
  if (!road) return { ok: false, reason: "unknownUnit" };
  return ofRoad ? { ok: true, value: ofRoad(road(value)) } : { ok: false, reason: "roadNeedsRing" };
}

/** A typed torque in N·m. */
export function parseTorque(text: string): Parsed {
  const read = splitNumber(text);
  if (!read) return { ok: false, reason: "notNumber" };
  const unit = read.unit.replace(/[\s·.*⋅]/g, "");
  return unit === "" || unit === "nm"
    ? { ok: true, value: read.value }
    : { ok: false, reason: "unknownUnit" };
}
