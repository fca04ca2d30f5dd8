import { findUnit, unitChoice, unitsOf, type WrittenUnit } from "../quantities.ts";
import type { FaultList } from "./faults.ts";
import {
  DIMENSION_OF,
  type HeaderReading,
  type RecordedRole,
  ROLE_TITLES,
  type Role,
  readHeader,
} from "./headers.ts";

/** A person's choice of a column. */
export interface ColumnChoice {
  /** Name as in the header, or number from 1. */
  readonly column: string | number;
  /** Any known spelling; left out, the header's unit is taken. */
  readonly unit?: string;
}

/** What a person chose; what is left out is guessed from the header. */
export interface ColumnChoices {
  readonly time?: ColumnChoice;
  readonly speed?: ColumnChoice;
  /** "none" ignores a grade column. */
  readonly grade?: ColumnChoice | "none";
  /** What was recorded beside the drive; "none" leaves a column alone. */
  readonly recorded?: Readonly<Partial<Record<RecordedRole, ColumnChoice | "none">>>;
  /** What a positive battery current does in this file; taken as discharging when left out. */
  readonly positiveCurrent?: "discharges" | "charges";
}

/** How a column or unit was found. */
export type How = "chosen" | "from the header" | "assumed";

/** A column that will be read. */
export interface TakenColumn {
  readonly role: Role;
  readonly name: string;
  /** From 0. */
  readonly index: number;
  readonly columnHow: How;
  readonly unit: WrittenUnit;
  readonly unitHow: How;
}

/** Examples of names that are understood, for messages. */
const UNDERSTOOD: Readonly<Record<Role, string>> = {
  time: "a column named time_s, t [s], seconds or the like",
  speed: "a column named speed_kmh, speed_mph, v [m/s], km/h or the like",
  grade: "a column named grade_percent, slope [%] or the like",
  engineSpeed: "a column named engine_speed_rpm or the like",
  soc: "a column named soc_percent or the like",
  batteryCurrent: "a column named battery_current_a or the like",
};

/** Unit taken when the header has none. Speed has none: a wrong guess there would go unnoticed. */
const ASSUMED: Readonly<Record<Role, string>> = {
  time: "s",
  speed: "",
  grade: "rise/run",
  engineSpeed: "rev/min",
  soc: "share",
  batteryCurrent: "A",
};

interface Candidate {
  readonly index: number;
  readonly name: string;
  readonly reading: HeaderReading | null;
  readonly how: How;
}

/** The header's columns that look like a role, for a person to choose from. */
export function candidates(header: readonly string[], role: Role): Candidate[] {
  return header
    .map((name, index): Candidate => ({ index, name, reading: readHeader(name), how: "from the header" }))
    .filter((candidate) => candidate.reading?.role === role);
}

/**
 * Settles which column gives a role, and its unit.
 * @param line of the header in the file
 * @param choice what a person chose; undefined guesses
 * @returns null when there is none; for time and speed, and for a bad choice, a fault is booked then
 */
export function takeColumn(
  role: Role,
  header: readonly string[],
  line: number,
  choice: ColumnChoice | undefined,
  faults: FaultList,
): TakenColumn | null {
  const candidate = choice ? chosen(role, header, line, choice, faults) : guessed(role, header, line, faults);
  if (!candidate) return null;
  const unit = takeUnit(role, candidate, choice?.unit, line, faults);
  return unit && { role, name: candidate.name, index: candidate.index, columnHow: candidate.how, ...unit };
}

function chosen(
  role: Role,
  header: readonly string[],
  line: number,
  choice: ColumnChoice,
  faults: FaultList,
): Candidate | null {
  const wanted = choice.column;
  const plain = (name: string): string => name.trim().toLowerCase();
  const index = typeof wanted === "number" ? wanted - 1 : header.map(plain).indexOf(plain(wanted));
  const name = header[index];
  if (name !== undefined) return { index, name, reading: readHeader(name), how: "chosen" };
  const what = `The column chosen for ${ROLE_TITLES[role]} is not in the file.`;
  faults.add(
    what,
    { row: line },
    String(wanted),
    `${listed(header)}, or a number from 1 to ${header.length}`,
  );
  return null;
}

function guessed(role: Role, header: readonly string[], line: number, faults: FaultList): Candidate | null {
  const found = candidates(header, role);
  const [only] = found;
  if (found.length > 1) {
    const names = listed(found.map((candidate) => candidate.name));
    faults.add(
      `Several columns could be the ${ROLE_TITLES[role]}.`,
      { row: line },
      names,
      "one of them, chosen by name",
    );
    return null;
  }
  if (only === undefined && (role === "time" || role === "speed")) {
    faults.add(`No column gives the ${ROLE_TITLES[role]}.`, { row: line }, listed(header), UNDERSTOOD[role]);
  }
  return only ?? null;
}

function takeUnit(
  role: Role,
  candidate: Candidate,
  chosenUnit: string | undefined,
  line: number,
  faults: FaultList,
): { unit: WrittenUnit; unitHow: How } | null {
  const place = { row: line, column: candidate.name };
  const { reading } = candidate;
  if (chosenUnit !== undefined) {
    const unit = findUnit(DIMENSION_OF[role], chosenUnit);
    if (unit) return { unit, unitHow: "chosen" };
    faults.add(
      `The unit chosen for the ${ROLE_TITLES[role]} is not known.`,
      place,
      chosenUnit,
      unitChoice(DIMENSION_OF[role]),
    );
    return null;
  }
  if (reading?.role === role) {
    if (reading.unit) return { unit: reading.unit, unitHow: "from the header" };
    if (reading.unknownUnit !== "") {
      faults.add(
        `The unit of the ${ROLE_TITLES[role]} is not known.`,
        place,
        reading.unknownUnit,
        unitChoice(DIMENSION_OF[role]),
      );
      return null;
    }
  }
  const unit = unitsOf(DIMENSION_OF[role]).find((known) => known.id === ASSUMED[role]);
  if (unit) return { unit, unitHow: "assumed" };
  const accepted = `${unitChoice(DIMENSION_OF[role])}, in the column's name or chosen`;
  faults.add(`The unit of the ${ROLE_TITLES[role]} is not stated.`, place, "", accepted);
  return null;
}

function listed(names: readonly string[]): string {
  return names.map((name) => `"${name}"`).join(", ");
}
