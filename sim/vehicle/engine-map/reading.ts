import type { Delimiter } from "../../../cycles/import/rows.ts";
import type { InputFault } from "../../../shared/errors.ts";
import type { Vehicle } from "../../parameters/schema.ts";
import type { AxisUnit, FigureUnit, MapRole } from "./measures.ts";

/** An engine's map as the vehicle holds it: rad/s, N·m, W. */
export type EngineMapParameters = NonNullable<Vehicle["engine"]["map"]>;

/** long: a row for each point; grid: first row speeds, first column torques. */
export type MapLayout = "long" | "grid";

/** How something was found: guessed from magnitudes, or assumed where nothing told. */
export type MapHow = "chosen" | "from the header" | "guessed" | "assumed";

/** What a person settles; all that is left out is found in the file. */
export interface MapChoices {
  readonly delimiter?: Delimiter;
  readonly layout?: MapLayout;
  /** long layout only: number of the column, from 1 */
  readonly columns?: Readonly<Partial<Record<MapRole, number>>>;
  /** ids of units as in `measures.ts` */
  readonly units?: Readonly<Partial<Record<MapRole, string>>>;
}

/** How one role is taken. */
export interface TakenRole {
  /** number of the column from 1; 0: none found. In a grid it is always 0. */
  readonly column: number;
  readonly columnHow: MapHow;
  /** id; empty: not clear */
  readonly unit: string;
  readonly unitHow: MapHow;
}

/** A table as it was understood, whether or not it can be taken. */
export interface MapReading {
  readonly delimiter: Delimiter;
  readonly layout: MapLayout;
  readonly layoutHow: MapHow;
  readonly header: readonly string[];
  readonly firstRows: readonly (readonly string[])[];
  readonly roles: Readonly<Record<MapRole, TakenRole>>;
  /** null where it cannot be taken */
  readonly map: EngineMapParameters | null;
  /** why it cannot be taken; empty otherwise */
  readonly faults: readonly InputFault[];
  /** what a person should know of how it was read */
  readonly notes: readonly string[];
}

/** One number of the file and where it stands. */
export interface FilePlace {
  readonly line: number;
  readonly column: string;
  readonly text: string;
}

/** One point of the map in the file's units. */
export interface FilePoint {
  readonly speed: number;
  readonly torque: number;
  readonly figure: number;
  readonly at: Readonly<Record<MapRole, FilePlace>>;
}

/** Units in which the points are read. */
export interface MapUnits {
  readonly speed: AxisUnit;
  readonly torque: AxisUnit;
  readonly figure: FigureUnit;
}
