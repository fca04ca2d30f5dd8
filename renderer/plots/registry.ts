import { at } from "../../shared/at.ts";
import { mpsToKmh, mpsToMph, radPerSToRpm } from "../../shared/units.ts";
import type { ChannelId } from "../../sim/run/channels.ts";
import { FLOWS, type FlowId } from "../../sim/run/flows.ts";
import type { LogReader } from "../../sim/run/log.ts";
import { num, roadUnitName, shaftUnitName, type Units } from "../state/format.ts";
import type { HideableId } from "../state/predict.ts";
import type { RoadWorkingId } from "../state/road-working.ts";
import { t } from "../texts/catalogue.ts";

/** How a curve is drawn: dash tells shafts apart where colour does not. */
export type Dash = "solid" | "long" | "short" | "grey";

/** One curve of a plot: where its numbers come from, and how it looks. */
export interface Curve {
  readonly id: string;
  readonly title: string;
  readonly of: (log: LogReader) => ArrayLike<number>;
  readonly colour: "carrier" | "sun" | "ring" | "battery" | "fuel" | "loss";
  readonly dash: Dash;
  /** filled to zero, in the pattern of its kind */
  readonly area?: boolean;
  readonly hides?: HideableId;
  /** what shows its working */
  readonly working: RoadWorkingId;
}

/** A plot of the time view. A new one is one entry in PLOTS. */
export interface Plot {
  readonly id: keyof typeof t.plots.names;
  readonly unit: (units: Units) => string;
  /** shown numbers a SI unit, and their decimals in the readout */
  readonly perSi: (units: Units) => number;
  readonly decimals: number;
  readonly curves: readonly Curve[];
}

/** Flow columns, taken out of the log's rows once a log and length. */
const taken = new WeakMap<LogReader, Map<string, Float32Array>>();

/** One flow of all rows, W. */
function flowColumn(log: LogReader, id: FlowId): Float32Array {
  const known = taken.get(log) ?? new Map<string, Float32Array>();
  taken.set(log, known);
  const key = `${id}:${log.rows}`;
  const found = known.get(key);
  if (found) return found;
  const place = FLOWS.indexOf(id);
  const flows = log.flows;
  const column = Float32Array.from({ length: log.rows }, (_, row) => at(flows, row * FLOWS.length + place));
  for (const old of known.keys()) if (old.startsWith(`${id}:`)) known.delete(old);
  known.set(key, column);
  return column;
}

const channel = (id: ChannelId) => (log: LogReader) => log.view(id);
const flow = (id: FlowId) => (log: LogReader) => flowColumn(log, id);

const curve = (
  id: keyof typeof t.plots.curves,
  of: Curve["of"],
  colour: Curve["colour"],
  dash: Dash,
  working: RoadWorkingId,
  more: { readonly area?: boolean; readonly hides?: HideableId } = {},
): Curve => ({ id, title: t.plots.curves[id], of, colour, dash, working, ...more });

const one = (): number => 1;
const kilo = (): number => 0.001;
const road = (units: Units): number => (units.road === "kmh" ? mpsToKmh(1) : mpsToMph(1));
const shaft = (units: Units): number => (units.shaft === "rpm" ? radPerSToRpm(1) : 1);

/** Every plot, in the order in which they fill the view. */
export const PLOTS: readonly Plot[] = [
  {
    id: "speed",
    unit: roadUnitName,
    perSi: road,
    decimals: 1,
    curves: [
      curve("road", channel("speed"), "ring", "solid", "channel:speed", { hides: "road-speed" }),
      curve("target", channel("target"), "loss", "grey", "channel:target"),
    ],
  },
  {
    id: "power",
    unit: () => "kW",
    perSi: kilo,
    decimals: 1,
    curves: [
      curve("engine", flow("engine"), "carrier", "solid", "flow:engine", { hides: "engine-power" }),
      curve("sunMachine", channel("sunMachineElectric"), "sun", "long", "channel:sunMachineElectric", {
        hides: "sun-machine-power",
      }),
      curve(
        "outputMachine",
        channel("outputMachineElectric"),
        "ring",
        "short",
        "channel:outputMachineElectric",
        {
          hides: "output-machine-power",
        },
      ),
    ],
  },
  {
    id: "battery",
    unit: () => t.plots.units.battery,
    perSi: kilo,
    decimals: 1,
    curves: [
      curve("power", channel("batteryPower"), "battery", "solid", "channel:batteryPower", {
        area: true,
        hides: "battery-power",
      }),
    ],
  },
  {
    id: "shafts",
    unit: shaftUnitName,
    perSi: shaft,
    decimals: 0,
    curves: [
      curve("sun", channel("sunMachineSpeed"), "sun", "long", "channel:sunMachineSpeed", {
        hides: "sun-speed",
      }),
      curve("carrier", channel("engineSpeed"), "carrier", "solid", "channel:engineSpeed", {
        hides: "carrier-speed",
      }),
      curve("ring", channel("ringSpeed"), "ring", "short", "channel:ringSpeed", { hides: "ring-speed" }),
    ],
  },
  {
    id: "recovered",
    unit: () => t.plots.units.recovered,
    perSi: kilo,
    decimals: 0,
    curves: [
      curve("recovered", channel("recovered"), "battery", "solid", "channel:recovered", {
        area: true,
        hides: "recovered",
      }),
    ],
  },
  {
    id: "charge",
    unit: () => "%",
    perSi: () => 100,
    decimals: 1,
    curves: [curve("charge", channel("soc"), "battery", "solid", "channel:soc", { hides: "charge" })],
  },
  {
    id: "torques",
    unit: () => "N·m",
    perSi: one,
    decimals: 1,
    curves: [
      curve("engine", channel("engineTorque"), "carrier", "solid", "channel:engineTorque"),
      curve("sunMachine", channel("sunMachineTorque"), "sun", "long", "channel:sunMachineTorque"),
      curve("outputMachine", channel("outputMachineTorque"), "ring", "short", "channel:outputMachineTorque"),
    ],
  },
  {
    id: "fuel",
    unit: () => t.plots.units.fuel,
    perSi: kilo,
    decimals: 0,
    curves: [curve("fuel", channel("fuel"), "fuel", "solid", "channel:fuel", { hides: "fuel" })],
  },
  {
    id: "brakes",
    unit: () => "kN",
    perSi: kilo,
    decimals: 2,
    curves: [
      curve("asked", channel("wheelForceAsk"), "loss", "grey", "channel:wheelForceAsk"),
      curve("friction", channel("frictionBrake"), "loss", "solid", "channel:frictionBrake"),
    ],
  },
  {
    id: "grade",
    unit: () => "%",
    perSi: () => 100,
    decimals: 1,
    curves: [curve("grade", channel("grade"), "loss", "solid", "channel:grade")],
  },
];

/** A value of a plot as its readout shows it. */
export const shownValue = (plot: Plot, units: Units, value: number): string =>
  num(value * plot.perSi(units), plot.decimals);
