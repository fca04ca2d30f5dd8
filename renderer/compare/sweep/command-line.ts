import type { RunOptions } from "../../../sim/options.ts";
import type { Vehicle } from "../../../sim/parameters/schema.ts";
import { evenValues, type SweepAxis } from "../../../sim/study/sweep/axis.ts";
import type { SweepPlan } from "../../../sim/study/sweep/plan.ts";
import { PRESETS } from "../../../sim/vehicle/presets/registry.ts";

/** A command, and whether it names files that a person must save first. */
export interface Command {
  readonly text: string;
  readonly files: boolean;
}

/** A word of a shell's line, quoted where it must be (POSIX). */
const word = (text: string): string =>
  /^[\w.,:=/@%+-]+$/.test(text) ? text : `'${text.replaceAll("'", "'\\''")}'`;

const fileName = (title: string, ending: string): string =>
  `${title.replaceAll(/[^\w.-]+/g, "-").replaceAll(/^-+|-+$/g, "") || "file"}.${ending}`;

/** An axis as `--vary` takes it: a range where the values are evenly spaced, else the list. */
function varied({ path, values }: SweepAxis): string {
  const [first, last] = [Number(values[0]), Number(values.at(-1))];
  const even = values.length > 2 && evenValues(first, last, values.length).join() === values.join();
  return `${path}=${even ? `${first}:${last}:${values.length}` : values.join(",")}`;
}

function optionWords(options: RunOptions): string[] {
  const numbers: readonly (readonly [string, number | undefined, string])[] = [
    ["--step", options.step, ""],
    ["--soc", options.startSoc, ""],
    ["--payload", options.payload, ""],
    ["--wind", options.headWind, ""],
    ["--aux", options.auxiliaryPower, ""],
    ["--air-density", options.airDensity, ""],
    ["--air-temperature", options.airTemperature, "K"],
  ];
  const given = numbers.flatMap(([name, value, unit]) =>
    value === undefined ? [] : [name, `${value}${unit}`],
  );
  return options.coldStart ? [...given, "--cold"] : given;
}

/** A preset's id while it is as it was, else the name of the file that its parameters are saved in. */
const vehicleWord = (vehicle: Vehicle): string =>
  PRESETS.some(({ id }) => id === vehicle.id) ? vehicle.id : fileName(vehicle.name, "json");

/**
 * The command that does a sweep without the app.
 * @param isKnown whether a cycle's id is one of the catalogue's
 */
export function sweepCommand(plan: SweepPlan, isKnown: (cycle: string) => boolean): Command {
  const vehicles = plan.vehicles.map(vehicleWord);
  const cycles = plan.cycles.map(({ id, title }) => (isKnown(id) ? id : fileName(title, "csv")));
  const strategies = plan.strategies.map((one) =>
    one.kind === "built-in" ? one.id : fileName(one.title, "js"),
  );
  const named = (name: string, list: readonly string[]): string[] => list.flatMap((one) => [name, one]);
  const words = [
    ...["npm", "run", "-s", "cli", "--", "sweep"],
    ...named("--vary", plan.axes.map(varied)),
    ...named("--vehicle", vehicles),
    ...named("--cycle", cycles),
    ...named("--strategy", strategies),
    ...optionWords(plan.options),
    ...(plan.optimum ? ["--optimum"] : []),
    ...["--out", "sweep.json", "--csv", "sweep.csv"],
  ];
  const files = [...vehicles, ...cycles, ...strategies].some((one) => /\.(json|csv|js)$/.test(one));
  return { text: words.map(word).join(" "), files };
}
