import { balance } from "./balance.ts";
import { batterySide } from "./battery-side.ts";
import { engineSide } from "./engine-side.ts";
import { ENERGY_BARS, type Energies, type EnergyId, energyDrawn } from "./ledger-flows.ts";
import { type Places, placesOf, type SheetSize } from "./places.ts";
import { type RoadPlan, roadSide } from "./road-side.ts";
import { type Parts, right, Sheet } from "./sheet.ts";

const ROAD: RoadPlan<EnergyId> = [
  ["height", -5.1, 2.35],
  ["motion", -2.5, 2.35],
  ["air", 0.05, 1.15],
  ["rolling", 1.4, 1.15],
  ["brake", 2.75, 1.15],
];

/** Energies since the start, to be drawn at a size. */
export interface EnergyInput extends SheetSize {
  readonly energies: Energies;
  /** px a joule */
  readonly perJoule: number;
  readonly asked: ReadonlySet<EnergyId>;
}

/** A sheet is never scaled up beyond this energy for its fullest bar, J. */
const LEAST_FULL = 100e3;

/** px a joule so that everything has its room. */
export function energyScale(places: Places, e: Energies): number {
  const { rooms, text } = places;
  const lane = rooms.path * 1.5;
  const through = ENERGY_BARS.map(({ id, left: l, right: r, free }) => {
    const sum = [...l, ...r, ...free].reduce((total, one) => total + Math.abs(e[one]), 0) / 2;
    if (id === "engine") return (rooms.heat - text * 0.8) / Math.max(1, e.heat + e.friction);
    return (id === "battery" ? rooms.battery : lane) / Math.max(1, sum);
  });
  const taken = [e.motion, e.height, e.air, e.rolling, e.brake].reduce(
    (sum, one) => sum + Math.max(0, one),
    0,
  );
  const turns = rooms.turn / Math.max(1, taken - Math.max(0, e.wheels));
  return Math.min(lane / LEAST_FULL, turns, ...through);
}

type EnergySheet = Sheet<EnergyId>;

const sides = (sheet: EnergySheet, ids: readonly EnergyId[], side: "left" | "right"): Parts =>
  ids.map((id) => [id, sheet.free(id, side)] as const);

/** A bar on the lane with what leaves it up (−1) or down (+1). Returns the foot of what goes on. */
function laneBar(
  sheet: EnergySheet,
  id: "gearSet" | "sunMachine" | "outputMachine" | "ring",
  [from, to]: readonly [EnergyId, EnergyId],
  free: readonly EnergyId[],
  dir: 1 | -1,
  foot: number,
  reach: number,
): number {
  const x = sheet.at(id);
  const [l, r] = [sides(sheet, free, "left"), sides(sheet, free, "right")];
  const height = (parts: Parts): number => parts.reduce((sum, [, px]) => sum + px, 0);
  const lane = [
    [["in", sheet.whole(from)] as const, l],
    [["out", sheet.whole(to)] as const, r],
  ] as const;
  const [onLeft, onRight] = lane.map(([whole, parts]) => (dir > 0 ? [whole, ...parts] : [...parts, whole]));
  const bottom = dir > 0 ? foot + height(l) : foot;
  const bar = sheet.bar(id, x, bottom, onLeft ?? [], onRight ?? []);
  sheet.turnOff(dir > 0 ? [...free].reverse() : free, dir, x, bar, reach);
  return dir > 0 ? bottom - height(r) : bottom;
}

/** The ledger as numbers and paths, on the places of the power sheet. */
export function energyLayout(input: EnergyInput) {
  const { energies, asked, perJoule } = input;
  const power = (id: EnergyId): number => energies[id];
  const places = placesOf(input);
  const sheet: EnergySheet = new Sheet<EnergyId>({
    places,
    split: balance<EnergyId>(ENERGY_BARS, power, asked),
    asked,
    perUnit: perJoule,
    power,
    drawn: energyDrawn,
    loop: new Set(),
  });
  const { text, height } = places;
  const down = height * 0.06;
  const up = text * 1.6;
  const lane = (
    id: EnergyId,
    from: Parameters<typeof sheet.at>[0],
    to: typeof from,
    a: number,
    b: number,
  ) => {
    const half = sheet.whole(id) / 2;
    sheet.ribbon(id, id, 2 * half, [right(sheet.at(from), a - half), right(sheet.at(to), b - half)]);
  };
  const heat = engineSide(sheet, { fuel: "fuel", power: "afterEngine", losses: ["heat", "friction"] });
  const { lower } = places;
  lane("afterEngine", "engine", "gearSet", lower, lower);
  const g = laneBar(sheet, "gearSet", ["afterEngine", "afterGearSet"], ["contacts", "mesh"], -1, lower, up);
  lane("afterGearSet", "gearSet", "sunMachine", g, g);
  const s = laneBar(sheet, "sunMachine", ["afterGearSet", "afterSunMachine"], ["sunMachine"], -1, g, up);
  const d = sheet.at("dcLink");
  const bottom = s + sheet.free("auxiliary", "left");
  const link = sheet.bar(
    "dcLink",
    d,
    bottom,
    [
      ["battery", sheet.direct("battery")],
      ["in", sheet.whole("afterSunMachine")],
      ...sides(sheet, ["auxiliary"], "left"),
    ],
    [
      ["over", sheet.over("battery")],
      ["out", sheet.whole("afterLink")],
      ...sides(sheet, ["auxiliary"], "right"),
    ],
  );
  const onward = bottom - sheet.free("auxiliary", "right");
  lane("afterSunMachine", "sunMachine", "dcLink", s, s);
  sheet.turnOff(["auxiliary"], 1, d, link, down);
  batterySide(
    sheet,
    { cells: "stored", loss: "batteryLoss", link: "battery" },
    { direct: link.left("battery"), over: link.right("over") },
  );
  lane("afterLink", "dcLink", "outputMachine", onward, onward);
  const o = laneBar(sheet, "outputMachine", ["afterLink", "afterOutput"], ["outputMachine"], -1, onward, up);
  lane("afterOutput", "outputMachine", "ring", o, o);
  const r = laneBar(sheet, "ring", ["afterOutput", "wheels"], ["gears"], 1, o, height * 0.09);
  lane("wheels", "ring", "wheels", r, r);
  const road = roadSide(sheet, ROAD, sheet.whole("wheels"), r - sheet.whole("wheels") / 2);
  const { ribbons, turns, bars, ways } = sheet;
  return { ribbons, turns, bars, ways, road, heat, places, energies, asked };
}

/** The ledger as it is drawn. */
export type EnergyLayout = ReturnType<typeof energyLayout>;
