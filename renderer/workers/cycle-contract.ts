import type { DriveFigures } from "../../cycles/clean/figures.ts";
import type { TreatedDrive } from "../../cycles/clean/treat.ts";
import type { ColumnChoices } from "../../cycles/import/columns.ts";
import type { ImportedDrive } from "../../cycles/import/drive.ts";
import type { CsvInspection } from "../../cycles/import/inspect.ts";
import type { Delimiter } from "../../cycles/import/rows.ts";
import type { StatisticsRow } from "../../cycles/statistics/beside-standard.ts";
import type { CycleTrace } from "../../shared/cycle.ts";
import type { InputFault } from "../../shared/errors.ts";
import type { OwnCycle } from "../../shared/own-cycles.ts";
import type { RawDrive } from "../../shared/recorded.ts";
import type { Treatment } from "../../shared/treatments.ts";

/** An answer, or what is wrong with what was asked; errors themselves lose their faults on the way. */
export type Answer<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly faults: readonly InputFault[] };

/** What a person chose about a file; what is left out is guessed. */
export interface ReadChoices {
  readonly delimiter?: Delimiter;
  readonly columns?: ColumnChoices;
  /** of a GPX file, from 1 */
  readonly track?: number;
}

/** A file as far as it could be read. */
export type ReadFile =
  | {
      readonly kind: "recording";
      /** null when it is a table whose columns are not clear yet; then the faults say why */
      readonly imported: ImportedDrive | null;
      /** null for GPX */
      readonly inspection: CsvInspection | null;
      readonly faults: readonly InputFault[];
      /** what is done to it when nobody says otherwise */
      readonly usual: readonly Treatment[];
    }
  | { readonly kind: "own"; readonly own: OwnCycle };

/** Figures before and after the treatments, with the stops. */
export interface ComparedFigures extends DriveFigures {
  readonly stops: number;
}

/** A treated recording with its figures. */
export interface TreatedReply {
  readonly treated: Omit<TreatedDrive, "before">;
  readonly before: ComparedFigures;
  readonly after: ComparedFigures;
  readonly row: StatisticsRow;
}

/** Work on recordings that may be a day long: reading, treating, counting. */
export interface CycleWorker {
  read(text: string, fileName: string, choices: ReadChoices): Answer<ReadFile>;
  treat(raw: RawDrive, treatments: readonly Treatment[]): Answer<TreatedReply>;
  /** the line of a cycle in the table beside the standard ones */
  row(trace: CycleTrace, restSpeed: number): StatisticsRow;
  /** the lines of the standard cycles themselves */
  standard(): readonly StatisticsRow[];
  /** text of a cycle's own file */
  file(own: OwnCycle): string;
  /** text of the invented recording */
  invented(): string;
}
