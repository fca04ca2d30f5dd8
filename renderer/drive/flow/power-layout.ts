import type { FlowId, Flows } from "../../../sim/run/flows.ts";
import { balance } from "./balance.ts";
import { BARS } from "./bars.ts";
import { batterySide } from "./battery-side.ts";
import { engineSide } from "./engine-side.ts";
import { DRAWN } from "./kinds.ts";
import { placesOf, type SheetSize } from "./places.ts";
import { type RoadPlan, roadSide } from "./road-side.ts";
import { left, type Parts, right, Sheet } from "./sheet.ts";

/** Power that goes round is named from here on, W. */
const CIRCULATES = 100;

const ROUND: ReadonlySet<string> = new Set([
  "ring",
  "sunOver",
  "sunElectric",
  "outputElectric",
  "outputShaftOver",
]);
const NONE: ReadonlySet<string> = new Set();

const ROAD: RoadPlan<FlowId> = [
  ["climbing", -5.1, 2.35],
  ["speedingUp", -2.5, 2.35],
  ["air", 0.05, 1.15],
  ["rolling", 1.4, 1.15],
  ["brake", 2.75, 1.15],
];

/** What is to be drawn: flows of an instant at a scale. */
export interface PowerInput extends SheetSize {
  readonly flows: Flows;
  /** px a watt */
  readonly perWatt: number;
  /** flows that may not be told */
  readonly asked: ReadonlySet<FlowId>;
}

type PowerSheet = Sheet<FlowId>;

const sides = (sheet: PowerSheet, ids: readonly FlowId[], side: "left" | "right"): Parts =>
  ids.map((id) => [id, sheet.free(id, side)] as const);

const heightOf = (parts: Parts): number => parts.reduce((sum, [, px]) => sum + px, 0);

/** From the engine into the gear set and on by the teeth. Returns where the sun's ribbons leave it. */
function gearSet(sheet: PowerSheet) {
  const { places } = sheet;
  const x = sheet.at("gearSet");
  const ends = ["gearSetSpin", "meshLoss"] as const;
  const under = sides(sheet, ends, "right");
  const engine = sheet.whole("engine");
  const bar = sheet.bar(
    "gearSet",
    x,
    places.lower + heightOf(under),
    [["over", sheet.over("sun")], ["engine", engine], ...sides(sheet, ends, "left")],
    [["sun", sheet.direct("sun")], ["ring", sheet.whole("ring")], ...under],
  );
  const from = places.lower - engine / 2;
  sheet.ribbon("engine", "engine", engine, [right(sheet.at("engine"), from), right(x, bar.left("engine"))]);
  sheet.turnOff(["meshLoss", "gearSetSpin"], 1, x, bar, places.height * 0.06);
  return { direct: bar.right("sun"), over: bar.left("over") };
}

/** The sun machine between the gear set and the DC link. */
function sunMachine(sheet: PowerSheet, from: { readonly direct: number; readonly over: number }): number {
  const { places } = sheet;
  const x = sheet.at("sunMachine");
  const bar = sheet.bar(
    "sunMachine",
    x,
    places.upper,
    [...sides(sheet, ["sunLoss"], "left"), ["over", sheet.over("sun")], ["sun", sheet.direct("sun")]],
    [...sides(sheet, ["sunLoss"], "right"), ["link", sheet.whole("sunElectric")]],
  );
  const g = sheet.at("gearSet");
  sheet.ribbon("sun", "sun", sheet.direct("sun"), [right(g, from.direct), right(x, bar.left("sun"))]);
  const y = bar.left("over");
  sheet.ribbon("sunOver", "sun", sheet.over("sun"), [left(g, from.over), right(g, y), right(x, y)]);
  sheet.turnOff(["sunLoss"], -1, x, bar, places.text * 1.15);
  return bar.right("link");
}

/** The DC link. Returns the heights at which the battery's ribbons meet it, and the foot of what goes on. */
function dcLink(sheet: PowerSheet, sunY: number) {
  const { places } = sheet;
  const x = sheet.at("dcLink");
  const foot = places.upper + sheet.free("auxiliary", "left");
  const out = sheet.whole("outputElectric");
  const sun = sheet.whole("sunElectric");
  const bar = sheet.bar(
    "dcLink",
    x,
    foot,
    [["battery", sheet.direct("battery")], ["sun", sun], ...sides(sheet, ["auxiliary"], "left")],
    [["over", sheet.over("battery")], ["out", out], ...sides(sheet, ["auxiliary"], "right")],
  );
  sheet.ribbon("sunElectric", "sunElectric", sun, [
    right(sheet.at("sunMachine"), sunY),
    right(x, bar.left("sun")),
  ]);
  sheet.turnOff(["auxiliary"], 1, x, bar, places.text * 2.1);
  return {
    direct: bar.left("battery"),
    over: bar.right("over"),
    out: bar.right("out"),
    foot: foot - sheet.free("auxiliary", "right"),
  };
}

/** The output machine. Returns the heights at which its shaft's ribbons leave it. */
function outputMachine(sheet: PowerSheet, outY: number, foot: number) {
  const { places } = sheet;
  const x = sheet.at("outputMachine");
  const electric = sheet.whole("outputElectric");
  const bar = sheet.bar(
    "outputMachine",
    x,
    foot,
    [...sides(sheet, ["outputLoss"], "left"), ["out", electric]],
    [
      ...sides(sheet, ["outputLoss"], "right"),
      ["over", sheet.over("outputShaft")],
      ["shaft", sheet.direct("outputShaft")],
    ],
  );
  sheet.ribbon("outputElectric", "outputElectric", electric, [
    right(sheet.at("dcLink"), outY),
    right(x, bar.left("out")),
  ]);
  sheet.turnOff(["outputLoss"], -1, x, bar, places.text * 1.15);
  return { direct: bar.right("shaft"), over: bar.right("over") };
}

/** The ring, where both lanes meet. Returns the height at which the wheels' ribbon leaves it. */
function ring(sheet: PowerSheet, from: { readonly direct: number; readonly over: number }): number {
  const { places } = sheet;
  const x = sheet.at("ring");
  const path = sheet.whole("ring");
  const wheels = sheet.whole("wheels");
  const ends = ["ringSpin", "gearsLoss"] as const;
  const under = sides(sheet, ends, "left");
  const bar = sheet.bar(
    "ring",
    x,
    places.lower + heightOf(under),
    [["shaft", sheet.direct("outputShaft")], ["ring", path], ...under],
    [["over", sheet.over("outputShaft")], ["wheels", wheels], ...sides(sheet, ends, "right")],
  );
  const y = places.lower - path / 2;
  sheet.ribbon("ring", "ring", path, [right(sheet.at("gearSet"), y), right(x, y)]);
  const o = sheet.at("outputMachine");
  sheet.ribbon("outputShaft", "outputShaft", sheet.direct("outputShaft"), [
    right(o, from.direct),
    right(x, bar.left("shaft")),
  ]);
  sheet.ribbon("outputShaftOver", "outputShaft", sheet.over("outputShaft"), [
    right(o, from.over),
    right(x, from.over),
    left(x, bar.right("over")),
  ]);
  sheet.turnOff(["gearsLoss", "ringSpin"], 1, x, bar, places.height * 0.09);
  const w = bar.right("wheels");
  sheet.ribbon("wheels", "wheels", wheels, [right(x, w), right(sheet.at("wheels"), w)]);
  return w;
}

/** The sheet of one instant as numbers and paths: bars, ribbons, what turns away, the road's ends. */
export function powerLayout(input: PowerInput) {
  const { flows, asked, perWatt } = input;
  const power = (flow: FlowId): number => flows[flow];
  const split = balance<FlowId>(BARS, power, asked);
  const round = Math.min(split.turned.get("sun") ?? 0, split.turned.get("outputShaft") ?? 0);
  const circulating = round > CIRCULATES ? round : 0;
  const places = placesOf(input);
  const sheet: PowerSheet = new Sheet<FlowId>({
    places,
    split,
    asked,
    perUnit: perWatt,
    power,
    drawn: (flow) => DRAWN[flow],
    loop: circulating > 0 ? ROUND : NONE,
  });
  const heat = engineSide(sheet, { fuel: "fuel", power: "engine", losses: ["engineLoss"] });
  const sunY = sunMachine(sheet, gearSet(sheet));
  const link = dcLink(sheet, sunY);
  batterySide(sheet, { cells: "source", loss: "batteryLoss", link: "battery" }, link);
  const wheelsY = ring(sheet, outputMachine(sheet, link.out, link.foot));
  const road = roadSide(sheet, ROAD, sheet.whole("wheels"), wheelsY);
  const { ribbons, turns, bars, ways } = sheet;
  return { ribbons, turns, bars, ways, road, heat, places, circulating, flows, asked };
}

/** The sheet of one instant. */
export type PowerLayout = ReturnType<typeof powerLayout>;
