import { at } from "../../shared/at.ts";
import { mpsToKmh } from "../../shared/units.ts";
import { LIMIT_BIT, LIMITS, type LimitId, OVERRIDES } from "../limits.ts";
import type { LogReader } from "./log.ts";
import { REGIMES } from "./regimes.ts";

/** An instant worth showing. */
export interface Moment {
  readonly id: string;
  /** s, and the row of the log */
  readonly time: number;
  readonly row: number;
  /** in SI units of `unit` */
  readonly value: number;
  readonly unit: "m/s" | "W" | "s" | "1";
  readonly sentence: string;
}

const kmh = (speed: number): string => `${mpsToKmh(speed).toFixed(0)} km/h`;
const kw = (power: number): string => `${(power / 1000).toFixed(1)} kW`;

interface Series {
  readonly log: LogReader;
  readonly regime: Uint8Array;
  readonly speed: Float64Array;
}

function moment(
  s: Series,
  id: string,
  row: number,
  value: number,
  unit: Moment["unit"],
  sentence: string,
): Moment {
  return { id, time: at(s.log.view("time"), row), row, value, unit, sentence };
}

function firstStart(s: Series): Moment | null {
  const row = s.log.view("engineOn").indexOf(1);
  if (row < 0) return null;
  const speed = at(s.speed, row);
  return moment(
    s,
    "first-start",
    row,
    speed,
    "m/s",
    `The engine starts for the first time, at ${kmh(speed)}.`,
  );
}

function sunThroughZero(s: Series): Moment | null {
  const sun = s.log.view("sunMachineSpeed");
  const mode = s.log.engineMode;
  for (let i = 1; i < s.log.rows; i += 1) {
    if (at(mode, i) !== 2 || at(mode, i - 1) !== 2 || at(s.speed, i) < 1) continue;
    if (at(sun, i - 1) > 0 === at(sun, i) > 0) continue;
    const speed = at(s.speed, i);
    return moment(
      s,
      "sun-through-zero",
      i,
      speed,
      "m/s",
      `The sun passes through rest with the engine on, at ${kmh(speed)}.`,
    );
  }
  return null;
}

/** Row with the greatest value of a function, above a threshold; −1 if none. */
function peak(rows: number, least: number, value: (i: number) => number): number {
  let best = -1;
  let most = least;
  for (let i = 0; i < rows; i += 1) {
    const v = value(i);
    if (v > most) {
      most = v;
      best = i;
    }
  }
  return best;
}

function strongestRegeneration(s: Series): Moment | null {
  const power = s.log.view("outputMachineElectric");
  const ask = s.log.view("wheelForceAsk");
  const row = peak(s.log.rows, 500, (i) => (at(ask, i) * at(s.speed, i) < 0 ? -at(power, i) : 0));
  if (row < 0) return null;
  const value = -at(power, row);
  return moment(
    s,
    "strongest-regeneration",
    row,
    value,
    "W",
    `Braking makes the most electricity here: ${kw(value)} from the output machine.`,
  );
}

function strongestAssist(s: Series): Moment | null {
  const power = s.log.view("batteryPower");
  const on = s.log.view("engineOn");
  const row = peak(s.log.rows, 1000, (i) => (at(on, i) === 1 ? at(power, i) : 0));
  if (row < 0) return null;
  const value = at(power, row);
  return moment(
    s,
    "strongest-assist",
    row,
    value,
    "W",
    `The battery helps the running engine most here, with ${kw(value)}.`,
  );
}

function longestElectric(s: Series): Moment | null {
  const time = s.log.view("time");
  const mode = s.log.engineMode;
  let start = -1;
  let moved = false;
  let best = { from: -1, length: 2 };
  for (let i = 0; i < s.log.rows; i += 1) {
    if (at(mode, i) !== 0) {
      start = -1;
      continue;
    }
    if (start < 0) {
      start = i;
      moved = false;
    }
    moved = moved || Math.abs(at(s.speed, i)) > 0.5;
    const length = at(time, i) - at(time, start);
    if (moved && length > best.length) best = { from: start, length };
  }
  if (best.from < 0) return null;
  const seconds = best.length.toFixed(0);
  const text = `The longest stretch without the engine begins, stops included: ${seconds} s.`;
  return moment(s, "longest-electric", best.from, best.length, "s", text);
}

function firstFriction(s: Series): Moment | null {
  const blended = new Set(["blended-braking", "friction-braking"]);
  for (let i = 0; i < s.log.rows; i += 1) {
    if (!blended.has(REGIMES[at(s.regime, i)]?.id ?? "")) continue;
    // Close to rest the brakes always take over.
    if (Math.abs(at(s.speed, i)) < 1) continue;
    const power = at(s.log.view("frictionBrake"), i) * Math.abs(at(s.speed, i));
    return moment(
      s,
      "first-friction-braking",
      i,
      power,
      "W",
      `The friction brakes do more than the other axle's share for the first time, with ${kw(power)}.`,
    );
  }
  return null;
}

/** First row that carries any of the limits; those that only describe ordinary braking are not worth a moment. */
function firstLimit(
  s: Series,
  id: string,
  list: readonly LimitId[],
  text: (meaning: string) => string,
): Moment | null {
  const bits = s.log.limits;
  const mask = list.reduce((sum, limit) => sum | LIMIT_BIT[limit], 0);
  for (let i = 0; i < s.log.rows; i += 1) {
    const found = at(bits, i) & mask;
    if (found === 0) continue;
    const entry = LIMITS.find(([name]) => (found & LIMIT_BIT[name]) !== 0);
    return moment(s, id, i, at(s.speed, i), "m/s", text(entry?.[1] ?? ""));
  }
  return null;
}

const ORDINARY: readonly LimitId[] = ["axle-share", "low-speed-fade", "regeneration-off", "strategy-answer"];

/** The instants of a run worth explaining, in the order of time. */
export function moments(log: LogReader, regime: Uint8Array): readonly Moment[] {
  const s: Series = { log, regime, speed: log.view("speed") };
  const hard = LIMITS.map(([id]) => id).filter((id) => !OVERRIDES.includes(id) && !ORDINARY.includes(id));
  const found = [
    firstStart(s),
    sunThroughZero(s),
    strongestRegeneration(s),
    strongestAssist(s),
    longestElectric(s),
    firstFriction(s),
    firstLimit(s, "first-limit", hard, (meaning) => `A limit binds for the first time: ${meaning}.`),
    firstLimit(
      s,
      "first-override",
      OVERRIDES,
      (meaning) => `The supervisor steps in: ${meaning.replace("override: ", "")}.`,
    ),
  ];
  return found.filter((m): m is Moment => m !== null).sort((a, b) => a.time - b.time);
}
