import { cycleById } from "../../cycles/catalogue.ts";
import type { CompositePart, CompositeTest } from "../../cycles/composite/registry.ts";
import type { Around } from "./around.ts";
import { type Consumed, perHundred } from "./consumed.ts";
import { type DriveSummary, drive } from "./drive.ts";
import type { Setup } from "./setup.ts";

/** A test made of several drives, as it stands in the summary file. */
export interface TestSummary {
  readonly format: "trishaft-test";
  readonly format_version: 1;
  readonly test: { readonly id: string; readonly title: string; readonly source: string };
  readonly parts: readonly {
    readonly id: string;
    readonly title: string;
    readonly weight: number;
    /** what this part counts with: the city test's weighted figure where it has one */
    readonly raw: Consumed;
    readonly balanced?: Consumed;
    readonly summary: DriveSummary;
  }[];
  readonly combined: { readonly raw: Consumed; readonly balanced?: Consumed };
}

/**
 * Drives every part of a test and joins their figures by weight.
 * @throws as `drive`
 */
export function driveTest(setup: Setup, test: CompositeTest, balanced: boolean, around: Around): TestSummary {
  const parts = test.parts.map((part) => drivePart(setup, part, balanced, around));
  const join = (of: (part: (typeof parts)[number]) => Consumed | undefined): Consumed => {
    const litres = parts.reduce((sum, p) => sum + p.weight * (of(p)?.l_per_100km ?? Number.NaN), 0);
    return perHundred(setup.vehicle, litres);
  };
  const { id, title, publishedIn } = test;
  return {
    format: "trishaft-test",
    format_version: 1,
    test: { id, title, source: publishedIn },
    parts,
    combined: { raw: join((p) => p.raw), ...(balanced ? { balanced: join((p) => p.balanced) } : {}) },
  };
}

function drivePart(setup: Setup, part: CompositePart, asked: boolean, around: Around) {
  const options = part.coldStart ? { ...setup.options, coldStart: true } : setup.options;
  const { summary } = drive({ ...setup, options }, cycleById(part.cycle), asked, around);
  const balanced = summary.city_test?.balanced ?? summary.balanced;
  const figures = ({ l_per_100km, mpg_us, co2_g_per_km }: Consumed): Consumed => ({
    l_per_100km,
    mpg_us,
    co2_g_per_km,
  });
  return {
    id: part.id,
    title: part.title,
    weight: part.weight,
    raw: figures(summary.city_test?.raw ?? summary.fuel),
    ...(balanced ? { balanced: figures(balanced) } : {}),
    summary,
  };
}
