import type { RawDrive } from "../../shared/recorded.ts";
import type { ColumnChoices } from "./columns.ts";
import { rawFromCsv } from "./csv.ts";
import { type GpxReport, importGpx } from "./gpx/gpx.ts";
import { looksLikeGpx } from "./gpx/guard.ts";
import type { ImportReport } from "./report.ts";
import type { Delimiter } from "./rows.ts";

/** What the caller knows about a file of either kind. */
export interface DriveOptions {
  readonly fileName: string;
  readonly title?: string;
  /** For GPX: which track, from 1. */
  readonly track?: number;
  /** For CSV. */
  readonly delimiter?: Delimiter;
  /** For CSV. */
  readonly columns?: ColumnChoices;
}

/** A recorded drive with how it was read. */
export type ImportedDrive =
  | { readonly kind: "gpx"; readonly raw: RawDrive; readonly report: GpxReport }
  | { readonly kind: "csv"; readonly raw: RawDrive; readonly report: ImportReport };

/**
 * Reads a recorded drive: GPX by its first lines or its name, CSV otherwise.
 * @throws InputError as `importGpx` and `importCsv`
 */
export function importDrive(text: string, options: DriveOptions): ImportedDrive {
  if (isGpx(text, options.fileName)) return { kind: "gpx", ...importGpx(text, options) };
  return { kind: "csv", ...rawFromCsv(text, options) };
}

/** True for a file that is, or by its name should be, GPX. */
export function isGpx(text: string, fileName: string): boolean {
  return looksLikeGpx(text) || /\.gpx$/i.test(fileName);
}
