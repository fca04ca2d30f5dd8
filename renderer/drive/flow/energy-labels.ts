import { t } from "../../texts/catalogue.ts";
import type { Measure } from "../../ui/labels.ts";
import { NOTHING } from "./balance.ts";
import type { EnergyLayout } from "./energy-layout.ts";
import { type EnergyScale, energyText } from "./energy-units.ts";
import type { EnergyId } from "./ledger-flows.ts";
import { headLength } from "./shapes.ts";
import { at, Wishes } from "./wishes.ts";

type EnergyWishes = Wishes<EnergyId>;

/** Size of an energy as it stands on the sheet. */
export const shownEnergy = (scale: EnergyScale, joules: number, asked: boolean): string =>
  asked ? t.roadFlow.asked : energyText(scale, Math.abs(joules));

/** Every text of the energy sheet in its place. */
export function energyLabels(l: EnergyLayout, scale: EnergyScale, measure: Measure) {
  const w: EnergyWishes = new Wishes<EnergyId>(l);
  const { text } = w;
  const { places, energies } = l;
  const { nodes, energyWords } = t.roadFlow;
  const shown = (id: EnergyId): string => shownEnergy(scale, energies[id], l.asked.has(id));
  const number = (id: EnergyId, weight: number, spots: Parameters<typeof w.add>[3]): void => {
    if (Math.abs(energies[id]) > NOTHING || l.asked.has(id)) w.add(`value:${id}`, shown(id), weight, spots);
  };
  const engine = w.bar("engine");
  if (w.ribbon("fuel")) {
    const y = engine.y - text * 0.5;
    w.add("name:fuel", nodes.fuel, 91, [at(places.fuel, y, "start")]);
    number("fuel", 90, [at(places.fuel + text * 2.3, y, "start")]);
  }
  const high = engine.y - text * 1.65;
  w.add("name:engine", nodes.engine, 94, [at(places.at("engine"), high)]);
  if (Math.abs(energies.mesh) < scale.per / 2) {
    w.add("name:gearSet", nodes.gearSet, 94, [at(places.at("gearSet") + text * 0.2, high, "end")]);
  }
  const middle = (a: Parameters<typeof places.at>[0], b: typeof a): number =>
    (places.at(a) + places.at(b)) / 2;
  const lane = (id: EnergyId, x: number, weight: number): void => {
    const ribbon = w.ribbon(id);
    if (!ribbon) return;
    const y = w.heightOn(ribbon, 0.5) - ribbon.width / 2 - text * 0.45;
    number(id, weight, [at(x, y), at(x - text, y), at(x, y + ribbon.width + text * 1.5)]);
  };
  lane("afterEngine", middle("engine", "gearSet"), 75);
  lane("wheels", middle("ring", "wheels"), 75);
  // Tips of what turns away carry name and number: the bars there have no others.
  const named: Partial<Record<EnergyId, string>> = {
    mesh: energyWords.mesh,
    contacts: energyWords.contacts,
    sunMachine: energyWords.sunMachine,
    auxiliary: energyWords.auxiliary,
    outputMachine: energyWords.outputMachine,
    gears: energyWords.gears,
  };
  for (const turn of l.turns) {
    const said = named[turn.flow];
    const spots = w.besideTurn(turn);
    const [x, y] = turn.tip;
    const up = [at(x, y - text * 0.4), at(x + text * 2, y - text * 0.4)];
    if (!l.asked.has(turn.flow) && Number(shown(turn.flow).replace(/\D/g, "")) === 0) continue;
    const words = said ? t.roadFlow.between(said, shown(turn.flow)) : shown(turn.flow);
    w.add(
      `value:${turn.flow}`,
      words,
      turn.flow === "contacts" ? 40 : 62,
      turn.dir < 0 && said ? [...up, ...spots] : spots,
    );
  }
  w.add("name:dcLink", nodes.dcLink, 80, [
    at(places.at("dcLink") - text * 0.8, places.lower + text * 1.3, "end"),
    at(places.at("dcLink") + text * 0.6, places.lower + text * 1.3, "start"),
  ]);
  const below = places.lower + text * 1.3;
  w.add("name:ring", nodes.ring, 85, [
    at(places.at("ring") + text * 0.3, below, "end"),
    at(places.at("ring") - text * 1.2, below, "end"),
  ]);
  const wheel = w.bar("wheels");
  w.add("name:wheels", nodes.wheels, 85, [
    at(places.at("wheels") + text * 0.2, Math.max(below, wheel.y + wheel.height + text), "end"),
  ]);
  battery(w, l, number);
  for (const { flow, y, width } of l.heat) {
    if (width <= 0) continue;
    const x = places.heat + headLength(width) + text * 0.5;
    const word = flow === "heat" ? t.roadFlow.heat : t.roadFlow.friction;
    w.add(`value:${flow}`, shown(flow), 82, [at(x, y + text * 0.35, "start")]);
    const beside = x + measure(shown(flow), text) + text * 0.45;
    w.add(`word:${flow}`, word, 60, [at(beside, y + text * 0.35, "start")]);
  }
  for (const { flow, y, x } of l.road) {
    const tall = flow === "motion" || flow === "height";
    const from = x + 6;
    const gives = energies[flow] < 0 && !l.asked.has(flow);
    const pair = energyWords.ends[flow as keyof typeof energyWords.ends];
    w.add(`value:${flow}`, shown(flow), 80, [at(from, y + text * (tall ? -0.12 : 0.35), "start")]);
    const beside = from + measure(shown(flow), text) + text * 0.45;
    const place = tall ? at(from, y + text * 1.02, "start") : at(beside, y + text * 0.35, "start");
    w.add(`word:${flow}`, gives ? pair[1] : pair[0], 60, [place]);
  }
  return w.placed(measure);
}

function battery(
  w: EnergyWishes,
  l: EnergyLayout,
  number: (id: EnergyId, weight: number, spots: ReturnType<typeof at>[]) => void,
): void {
  const { text } = w;
  const { places, energies } = l;
  const { nodes, energyWords } = t.roadFlow;
  const x = places.tip - 10;
  const y = places.cells - Math.max(text * 0.35, w.bar("battery").height / 2 + text * 0.15);
  w.add("name:battery", nodes.battery, 95, [at(x, y, "end")]);
  if (!l.asked.has("stored")) {
    const word = energies.stored < 0 ? energyWords.fuller : energyWords.emptier;
    w.add("word:battery", word, 49, [at(x, y + text * 1.15, "end")]);
  }
  const ribbon = w.ribbon("stored");
  const mid = (places.tip + places.at("battery")) / 2;
  number("stored", 78, [
    at(mid, places.cells - (ribbon?.width ?? 0) - text * 0.42),
    at(mid, places.cells + text * 1.1),
  ]);
  const over = w.ribbon("batteryOver");
  const direct = w.ribbon("battery");
  const link = over && (!direct || over.width > direct.width) ? over : direct;
  if (!link) return;
  const { mark, width } = link;
  const aside = width * 0.5 + text * 0.8;
  number("battery", 70, [
    at(mark.x + aside, mark.y - text * 0.3, "start"),
    at(mark.x, mark.y - width / 2 - text * 0.42),
    at(mark.x - aside, mark.y + text * 0.9, "end"),
  ]);
}
