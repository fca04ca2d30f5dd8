import { version } from "../../../package.json";
import { InputError } from "../../../shared/errors.ts";
import type { RunOptions } from "../../options.ts";
import type { Vehicle } from "../../parameters/schema.ts";
import {
  type RegenerationMap,
  type RegenerationPlan,
  regenerationMap,
} from "../../study/regeneration/study.ts";
import { regenerationCsv, regenerationJson } from "../../study/regeneration/table.ts";
import { evenNumbers } from "../../study/regeneration/values.ts";
import { type Arguments, expectWords, readArguments } from "../arguments.ts";
import { type Around, Interrupted } from "../around.ts";
import { checkTargets, writeAll } from "../outputs.ts";
import { readChoice, readQuantity, readWhole, type Units } from "../quantity.ts";
import { MAP_UNITS, REGENERATION_OPTIONS } from "../regeneration-options.ts";
import { regenerationReport } from "../report/regeneration-report.ts";
import { unitsBy } from "../report/units.ts";
import { namingOptions, readSetup } from "../setup.ts";
import { readStrategy, usualStrategy } from "../strategy-choice.ts";

/** Most values of one side of the map. */
const MOST_VALUES = 100;

/**
 * Reads "from:to:count", or values parted by commas, each alone or with its unit.
 * @throws InputError naming the option and what is wrong
 */
function readValues(where: string, text: string, units: Units): readonly number[] {
  const parts = text.split(":");
  if (parts.length === 1) return text.split(",").map((part) => readQuantity(where, part, units));
  const [from, to, count] = parts;
  if (from === undefined || to === undefined || count === undefined || parts.length > 3) {
    throw new InputError({
      what: "not a range",
      where,
      value: text,
      accepted: "FROM:TO:COUNT, or values parted by commas",
    });
  }
  const ends = [readQuantity(where, from, units), readQuantity(where, to, units)] as const;
  return evenNumbers(...ends, readWhole(where, count, 2, MOST_VALUES));
}

function readPlan(
  args: Arguments,
  setup: { readonly vehicle: Vehicle; readonly options: RunOptions },
): RegenerationPlan {
  const { socFloor, socCeiling, socTarget } = setup.vehicle.battery;
  const values = (name: keyof typeof MAP_UNITS, usual: readonly number[]): readonly number[] => {
    const text = args.text(name);
    return text === undefined ? usual : readValues(`--${name}`, text, MAP_UNITS[name]);
  };
  return {
    ...setup,
    speeds: values("speeds", readValues("--speeds", "20km/h:120km/h:6", MAP_UNITS.speeds)),
    rates: values("rates", [0.5, 1, 1.5, 2, 3, 5]),
    charges: values("charges", [socFloor + 0.05, socTarget, socCeiling - 0.01]),
  };
}

/** `regeneration`: brake stops over speed, rate and charge; how much comes back, and what limits it. */
export async function regeneration(words: readonly string[], around: Around): Promise<void> {
  const args = readArguments("regeneration", words, REGENERATION_OPTIONS);
  expectWords("regeneration", args.words, [], 0);
  const units = unitsBy(readChoice("--units", args.text("units") ?? "metric", ["metric", "us"]));
  const { vehicle, strategy, options } = await readSetup(args);
  const plan = readPlan(args, { vehicle, options });
  const targets = ["out", "csv"].flatMap((name) => {
    const path = args.text(name);
    return path === undefined ? [] : [{ where: `--${name}`, path }];
  });
  checkTargets(targets, []);
  const chosen = readStrategy(args.text("strategy") ?? usualStrategy(vehicle));
  const progress = {
    report: (share: number) => around.progress("braking", share),
    cancelled: around.cancelled,
  };
  const map = namingOptions(args, () => regenerationMap(plan, strategy, progress));
  const json = (): string => regenerationJson(map, chosen, version);
  writeMap(map, targets, json);
  around.out(args.has("json") ? json() : regenerationReport(map, units));
}

/** Writes the map, also one that was stopped. @throws Interrupted for that */
function writeMap(
  map: RegenerationMap,
  targets: readonly { readonly where: string; readonly path: string }[],
  json: () => string,
): void {
  const some = map.cells.length > 0 && targets.length > 0;
  const outputs = targets.map(({ where, path }) => ({
    where,
    path,
    pieces: () => [where === "--csv" ? regenerationCsv(map) : json()],
  }));
  if (map.complete || some) writeAll(outputs, () => {});
  if (!map.complete) {
    throw new Interrupted(some ? `${map.cells.length} stops were kept and written` : "nothing was written");
  }
}
