import { type Dimension, findUnit, unitsOf, type WrittenUnit } from "../quantities.ts";

/** What a column can give of a drive. */
export type DriveRole = "time" | "speed" | "grade";

/** What a column can give beside the drive, to be laid over the simulated. */
export type RecordedRole = "engineSpeed" | "soc" | "batteryCurrent";

/** What a column can be. */
export type Role = DriveRole | RecordedRole;

/** Those beside the drive. */
export const RECORDED_ROLES: readonly RecordedRole[] = ["engineSpeed", "soc", "batteryCurrent"];

/** All of them. */
export const ROLES: readonly Role[] = ["time", "speed", "grade", ...RECORDED_ROLES];

/** What each is measured in. */
export const DIMENSION_OF: Readonly<Record<Role, Dimension>> = {
  time: "time",
  speed: "speed",
  grade: "grade",
  engineSpeed: "rotation",
  soc: "charge",
  batteryCurrent: "current",
};

/** Each as a person calls it. */
export const ROLE_TITLES: Readonly<Record<Role, string>> = {
  time: "time",
  speed: "speed",
  grade: "grade",
  engineSpeed: "engine speed",
  soc: "state of charge",
  batteryCurrent: "battery current",
};

/** What a column's name says. */
export interface HeaderReading {
  readonly role: Role;
  /** null when the name states no unit, or one that is not known. */
  readonly unit: WrittenUnit | null;
  /** The unit as written when it is not known; empty otherwise. */
  readonly unknownUnit: string;
}

/** Names without their unit, as `plainName` leaves them. Whole names only: "engine speed" is no vehicle speed. */
const NAMES: Readonly<Record<Role, readonly string[]>> = {
  time: ["time", "t", "timestamp", "elapsed", "elapsed time", "time elapsed"],
  speed: [
    "speed",
    "v",
    "vel",
    "velocity",
    "vehicle speed",
    "vehicle velocity",
    "veh speed",
    "car speed",
    "gps speed",
    "ground speed",
    "speed over ground",
  ],
  grade: [
    "grade",
    "slope",
    "gradient",
    "incline",
    "inclination",
    "road grade",
    "road slope",
    "road gradient",
  ],
  engineSpeed: ["engine speed", "eng speed", "engine", "engine revs", "engine n", "n engine", "ice speed"],
  soc: ["soc", "state of charge", "battery soc", "battery state of charge", "hv soc", "charge level"],
  batteryCurrent: [
    "battery current",
    "batt current",
    "hv battery current",
    "hv current",
    "pack current",
    "current",
    "battery i",
  ],
};

/** Units that make a column's name on their own. A lone "s", "h" or "%" could be anything. */
const LONE_UNITS: Readonly<Record<Role, (spelling: string) => boolean>> = {
  time: (spelling) =>
    spelling.startsWith("sec") || spelling.startsWith("millisec") || spelling.startsWith("minute"),
  speed: () => true,
  grade: () => false,
  engineSpeed: (spelling) => spelling === "rpm" || spelling === "rev/min",
  soc: () => false,
  batteryCurrent: () => false,
};

/**
 * Reads a column's name: `time_s`, `v [m/s]`, `Speed (km/h)`, `speedKmh`, `km/h`, `grade_percent`, `Slope %`.
 * @returns null when the name is none of the roles
 */
export function readHeader(name: string): HeaderReading | null {
  const bracket = /^(.*?)[[({]([^\])}]*)[\])}]$/s.exec(name.trim());
  for (const role of ROLES) {
    const reading = bracket
      ? inBrackets(role, bracket[1] ?? "", bracket[2] ?? "")
      : bare(role, plainName(name));
    if (reading) return reading;
  }
  return null;
}

/** Lower case, words apart by one blank. */
function plainName(name: string): string {
  const apart = name.replace(/([a-z])([A-Z])/g, "$1 $2").replace(/%/g, " %");
  return apart
    .toLowerCase()
    .replace(/[\s_]+/g, " ")
    .trim();
}

function inBrackets(role: Role, name: string, unitText: string): HeaderReading | null {
  const base = plainName(name);
  const unit = findUnit(DIMENSION_OF[role], unitText);
  if (base === "") return unit ? lone(role, plainName(unitText)) : null;
  if (!NAMES[role].includes(base)) return null;
  return { role, unit, unknownUnit: unit ? "" : unitText };
}

function bare(role: Role, name: string): HeaderReading | null {
  if (NAMES[role].includes(name)) return { role, unit: null, unknownUnit: "" };
  for (const unit of unitsOf(DIMENSION_OF[role])) {
    for (const spelling of [unit.id, ...unit.spellings]) {
      // A lone "1" or "-" is a unit in brackets only; at the end of a name it is a number or a dash.
      if (!name.endsWith(spelling) || !/[a-z%°]/.test(spelling)) continue;
      // "v, km/h", "speed/kmh", "time in s", "speed-mph": the sign between name and unit does not matter.
      const base = /^(.*?)[\s,:/-]+(?:in\s)?$/.exec(name.slice(0, -spelling.length))?.[1];
      if (base !== undefined && NAMES[role].includes(base)) return { role, unit, unknownUnit: "" };
    }
  }
  return lone(role, name);
}

function lone(role: Role, name: string): HeaderReading | null {
  const unit = findUnit(DIMENSION_OF[role], name);
  return unit && LONE_UNITS[role](name) ? { role, unit, unknownUnit: "" } : null;
}
