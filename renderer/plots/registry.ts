import { mpsToKmh, mpsToMph, radPerSToRpm } from "../../shared/units.ts";
import type { ChannelId } from "../../sim/run/channels.ts";
import type { FlowId } from "../../sim/run/flows.ts";
import { num, roadUnitName, shaftUnitName, type Units } from "../state/format.ts";
import type { HideableId } from "../state/predict.ts";
import type { RoadWorkingId } from "../state/road-working.ts";
import { t } from "../texts/catalogue.ts";
import type { Ink } from "./time/inks.ts";
import type { Source } from "./time/source.ts";

/** How a curve is dashed: shafts are told apart without colour, too. */
export type Dash = "solid" | "long" | "short" | "target";

/** How numbers are shown: SI times a factor, its unit, and so many decimals. */
export interface Shown {
  readonly unit: (units: Units) => string;
  readonly times: (units: Units) => number;
  readonly decimals: (units: Units) => number;
}

/** A quantity of the log that is read at the cursor. */
export interface Reading {
  readonly id: keyof typeof t.plots.curves;
  readonly source: Source;
  readonly ink: Ink;
  /** what shows how the number comes about */
  readonly working: RoadWorkingId;
  /** quantities that it would tell while they are asked for */
  readonly tells: readonly HideableId[];
  /** where it is shown otherwise than its plot */
  readonly shown?: Shown;
}

/** A quantity that is drawn over time. */
export interface Curve extends Reading {
  readonly dash: Dash;
  /** filled to zero in the pattern of its kind: only where the area means something */
  readonly area?: "elec" | "chem";
}

/** One row of the time view. A new plot is one entry in PLOTS and its words in the catalogue. */
export interface Plot {
  readonly id: keyof typeof t.plots.names;
  readonly shown: Shown;
  /** what more is said of its unit */
  readonly note?: (unit: string) => string;
  /** in the order in which they are read; the first one is drawn over the others */
  readonly curves: readonly Curve[];
  /** read beside the curves without being drawn */
  readonly beside?: readonly Reading[];
  /** the range holds zero; otherwise it is as wide as the curves are */
  readonly fromZero: boolean;
}

const shown = (unit: string, times: number, decimals: number): Shown => ({
  unit: () => unit,
  times: () => times,
  decimals: () => decimals,
});
const ROAD: Shown = {
  unit: roadUnitName,
  times: (units) => (units.road === "kmh" ? mpsToKmh(1) : mpsToMph(1)),
  decimals: () => 1,
};
const SHAFT: Shown = {
  unit: shaftUnitName,
  times: (units) => (units.shaft === "rpm" ? radPerSToRpm(1) : 1),
  decimals: (units) => (units.shaft === "rpm" ? 0 : 1),
};
const KILOWATTS = shown("kW", 1e-3, 1);
const KILOJOULES = shown("kJ", 1e-3, 0);
const MEGAJOULES = shown("MJ", 1e-6, 2);
const PERCENT = shown("%", 100, 1);
const TORQUE = shown("N·m", 1, 1);

/** What a channel or a flow is called, drawn in, and tells. */
type Named = readonly [id: Reading["id"], ink: Ink, ...tells: HideableId[]];

const ofChannel = (channel: ChannelId, [id, ink, ...tells]: Named): Reading => ({
  id,
  source: { channel },
  ink,
  working: `channel:${channel}`,
  tells,
});

const ofFlow = (flow: FlowId, [id, ink, ...tells]: Named): Reading => ({
  id,
  source: { flow },
  ink,
  working: `flow:${flow}`,
  tells,
});

const drawn = (reading: Reading, dash: Dash = "solid", area?: Curve["area"]): Curve => ({
  ...reading,
  dash,
  ...(area ? { area } : {}),
});

const CHARGE = ofChannel("soc", ["charge", "battery", "charge"]);
const FUEL = ofChannel("fuel", ["fuel", "fuel", "fuel"]);

/** Every plot that can be shown, in the order in which they stand. */
export const PLOTS: readonly Plot[] = [
  {
    id: "speed",
    shown: ROAD,
    fromZero: true,
    curves: [
      drawn(ofChannel("speed", ["road", "ring", "road-speed"])),
      drawn(ofChannel("target", ["target", "loss"]), "target"),
    ],
  },
  {
    id: "power",
    shown: KILOWATTS,
    fromZero: true,
    curves: [
      drawn(ofFlow("engine", ["engine", "carrier", "engine-power"])),
      drawn(ofChannel("sunMachineElectric", ["sunMachine", "sun", "sun-machine-power"]), "long"),
      drawn(ofChannel("outputMachineElectric", ["outputMachine", "ring", "output-machine-power"]), "short"),
    ],
  },
  {
    id: "battery",
    shown: KILOWATTS,
    note: t.plots.notes.giving,
    fromZero: true,
    curves: [drawn(ofChannel("batteryPower", ["battery", "battery", "battery-power"]), "solid", "elec")],
    beside: [{ ...CHARGE, shown: PERCENT }],
  },
  {
    id: "shafts",
    shown: SHAFT,
    fromZero: true,
    curves: [
      drawn(ofChannel("sunMachineSpeed", ["sun", "sun", "sun-speed"]), "long"),
      drawn(ofChannel("engineSpeed", ["carrier", "carrier", "carrier-speed"])),
      drawn(ofChannel("ringSpeed", ["ring", "ring", "ring-speed"]), "short"),
    ],
  },
  {
    id: "recovered",
    shown: KILOJOULES,
    note: t.plots.notes.intoBattery,
    fromZero: true,
    curves: [drawn(ofChannel("recovered", ["recovered", "battery", "recovered"]), "solid", "chem")],
    beside: [{ ...FUEL, shown: MEGAJOULES }],
  },
  { id: "charge", shown: PERCENT, fromZero: false, curves: [drawn(CHARGE)] },
  {
    id: "torques",
    shown: TORQUE,
    fromZero: true,
    curves: [
      drawn(ofChannel("engineTorque", ["engineTorque", "carrier", "engine-power"])),
      drawn(ofChannel("sunMachineTorque", ["sunMachineTorque", "sun", "sun-machine-power"]), "long"),
      drawn(
        ofChannel("outputMachineTorque", ["outputMachineTorque", "ring", "output-machine-power"]),
        "short",
      ),
    ],
  },
  {
    id: "gear-torques",
    shown: TORQUE,
    note: t.plots.notes.onGearSet,
    fromZero: true,
    curves: [
      drawn(ofChannel("sunTorque", ["sunTorque", "sun", "sun-machine-power"]), "long"),
      drawn(ofChannel("carrierTorque", ["carrierTorque", "carrier", "engine-power"])),
      drawn(ofChannel("ringTorque", ["ringTorque", "ring"]), "short"),
    ],
  },
  { id: "fuel", shown: MEGAJOULES, fromZero: true, curves: [drawn(FUEL, "solid", "chem")] },
  {
    id: "fuel-power",
    shown: KILOWATTS,
    fromZero: true,
    curves: [drawn(ofChannel("fuelPower", ["fuelPower", "fuel", "fuel", "engine-power"]))],
  },
  {
    id: "wheel-force",
    shown: shown("kN", 1e-3, 2),
    fromZero: true,
    curves: [
      drawn(ofChannel("wheelForceAsk", ["forceAsk", "ring"])),
      drawn(ofChannel("frictionBrake", ["frictionBrake", "loss"]), "long"),
    ],
  },
  {
    id: "wheel-power",
    shown: KILOWATTS,
    fromZero: true,
    curves: [
      drawn(ofFlow("wheels", ["wheels", "ring"])),
      drawn(ofFlow("brake", ["brakePower", "loss"]), "long"),
      drawn(ofChannel("wheelPowerAsk", ["wheelPowerAsk", "loss"]), "target"),
    ],
  },
  {
    id: "current",
    shown: shown("A", 1, 1),
    note: t.plots.notes.giving,
    fromZero: true,
    curves: [drawn(ofChannel("batteryCurrent", ["current", "battery", "battery-power"]))],
  },
  {
    id: "voltage",
    shown: shown("V", 1, 1),
    fromZero: false,
    curves: [drawn(ofChannel("batteryVoltage", ["voltage", "battery", "battery-power"]))],
  },
  {
    id: "grade",
    shown: PERCENT,
    fromZero: true,
    curves: [drawn(ofChannel("grade", ["grade", "loss"]))],
  },
  {
    id: "auxiliary",
    shown: shown("kW", 1e-3, 2),
    fromZero: true,
    curves: [drawn(ofChannel("auxiliary", ["auxiliary", "loss"]))],
  },
];

/** What a plot is read by at the cursor, from top to foot. */
export const readingsOf = (plot: Plot): readonly Reading[] => [...plot.curves, ...(plot.beside ?? [])];

/** A value in the unit in which it is shown. */
export const said = (how: Shown, units: Units, value: number): string =>
  num(value * how.times(units), how.decimals(units));

/** What stands under a plot's name. */
export const unitOf = ({ shown, note }: Plot, units: Units): string => {
  const unit = shown.unit(units);
  return note ? note(unit) : unit;
};
