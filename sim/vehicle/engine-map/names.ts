import { FIGURE_UNITS, type FigureKind, MAP_ROLES, type MapRole, unitsOfRole } from "./measures.ts";

/** What a column's name, or the corner of a grid, says of one role. */
export interface NameReading {
  readonly role: MapRole;
  /** id of the unit; null when none is stated */
  readonly unit: string | null;
  /** kinds of figure that the name allows; all of them where it says nothing */
  readonly kinds: readonly FigureKind[];
}

const ALL_KINDS: readonly FigureKind[] = ["flow", "specific", "efficiency", "power"];

const KINDS: Readonly<Record<string, readonly FigureKind[]>> = {
  "fuel flow": ["flow"],
  "fuel mass flow": ["flow"],
  "fuel rate": ["flow"],
  fuel: ALL_KINDS,
  "fuel consumption": ["flow", "specific"],
  consumption: ["flow", "specific"],
  bsfc: ["specific"],
  sfc: ["specific"],
  be: ["specific"],
  "specific consumption": ["specific"],
  "specific fuel consumption": ["specific"],
  "brake specific fuel consumption": ["specific"],
  efficiency: ["efficiency"],
  "brake efficiency": ["efficiency"],
  "thermal efficiency": ["efficiency"],
  "brake thermal efficiency": ["efficiency"],
  eta: ["efficiency"],
  "fuel power": ["power"],
  "fuel heat": ["power"],
};

const NAMES: Readonly<Record<MapRole, readonly string[]>> = {
  speed: [
    "speed",
    "engine speed",
    "eng speed",
    "rotational speed",
    "n",
    "n engine",
    "engine",
    "revs",
    "omega",
  ],
  torque: ["torque", "brake torque", "engine torque", "shaft torque", "tq", "m", "t", "load"],
  figure: Object.keys(KINDS),
};

const spellingsOf = (role: MapRole) =>
  unitsOfRole(role)
    .flatMap(({ id, spellings }) => [id.toLowerCase(), ...spellings].map((spelling) => ({ id, spelling })))
    .sort((a, b) => b.spelling.length - a.spelling.length);

const unitNamed = (role: MapRole, text: string): string | null =>
  spellingsOf(role).find(({ spelling }) => spelling === plain(text))?.id ?? null;

/** Lower case, words apart by one blank. */
const plain = (name: string): string =>
  name
    .toLowerCase()
    .replace(/[\s_]+/g, " ")
    .trim();

const kindsOf = (name: string): readonly FigureKind[] => KINDS[name] ?? ALL_KINDS;

/** A sign that a unit may stand alone by, or at the end of a name without brackets: "1" and "w" could be anything. */
const speaks = (spelling: string): boolean => spelling.length > 1;

function inBrackets(role: MapRole, base: string, unit: string): NameReading | null {
  const id = unitNamed(role, unit);
  if (base === "" ? id === null : !NAMES[role].includes(base)) return null;
  return { role, unit: id, kinds: kindsOf(base) };
}

function bare(role: MapRole, name: string): NameReading | null {
  if (NAMES[role].includes(name)) return { role, unit: null, kinds: kindsOf(name) };
  for (const { id, spelling } of spellingsOf(role)) {
    if (name === spelling && speaks(spelling)) return { role, unit: id, kinds: ALL_KINDS };
    if (!name.endsWith(spelling) || !(speaks(spelling) || spelling === "%")) continue;
    const base = /^(.*?)[\s,:/-]+(?:in\s)?$/.exec(name.slice(0, -spelling.length))?.[1];
    if (base !== undefined && NAMES[role].includes(base)) return { role, unit: id, kinds: kindsOf(base) };
  }
  return null;
}

/**
 * Reads a column's name: `speed (rev/min)`, `torque_Nm`, `BSFC [g/kWh]`, `fuel flow, g/s`, `efficiency`.
 * @returns null when it is none of the roles
 */
export function readMapName(name: string): NameReading | null {
  const bracket = /^(.*?)[[({](.*)[\])}]$/s.exec(name.trim());
  for (const role of MAP_ROLES) {
    const reading = bracket
      ? inBrackets(role, plain(bracket[1] ?? ""), bracket[2] ?? "")
      : (bare(role, plain(name)) ?? bare(role, plain(name.replace(/([a-z])([A-Z])/g, "$1 $2"))));
    if (reading) return reading;
  }
  return null;
}

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\/-]/g, "\\$&");

/** Whether a unit stands in a text by itself; one of a single sign only in brackets. */
function standsIn(text: string, spelling: string): boolean {
  const [before, after] =
    speaks(spelling) || spelling === "%"
      ? ["(?:^|[\\s([{,;:|\\\\/])", "(?:$|[\\s)\\]},;:|\\\\/])"]
      : ["[([{]", "[)\\]}]"];
  return new RegExp(`${before}${escaped(spelling)}${after}`).test(text);
}

/** What the corner of a grid says: `torque (N·m) \ speed (rev/min), fuel flow (g/s)`. Parts may be left out. */
export function readCorner(corner: string): Readonly<Record<MapRole, NameReading>> {
  const text = plain(corner);
  const unitOf = (role: MapRole): string | null =>
    spellingsOf(role).find(({ spelling }) => standsIn(text, spelling))?.id ?? null;
  const name = NAMES.figure
    .filter((one) => one !== "fuel" && new RegExp(`(?:^|[^a-z])${one}(?:$|[^a-z])`).test(text))
    .sort((a, b) => b.length - a.length)[0];
  return {
    speed: { role: "speed", unit: unitOf("speed"), kinds: [] },
    torque: { role: "torque", unit: unitOf("torque"), kinds: [] },
    figure: { role: "figure", unit: unitOf("figure"), kinds: kindsOf(name ?? "") },
  };
}

/** The units that a figure's name leaves to choose from. */
export const unitsAllowed = (kinds: readonly FigureKind[]) =>
  FIGURE_UNITS.filter(({ kind }) => kinds.includes(kind));
