import type { FlowId } from "../../../sim/run/flows.ts";
import { kilowatts } from "../../state/format.ts";
import { t } from "../../texts/catalogue.ts";
import type { Measure, Place } from "../../ui/labels.ts";
import { NOTHING } from "./balance.ts";
import type { BarId } from "./bars.ts";
import type { PowerLayout } from "./power-layout.ts";
import { type PowerWishes, powerNames } from "./power-names.ts";
import { headLength } from "./shapes.ts";
import { isShown, shownPower } from "./shown.ts";
import { at, Wishes } from "./wishes.ts";

const VALUE = 70;

/** One flow's number. */
function value(w: PowerWishes, l: PowerLayout, id: FlowId, places: readonly Place[], weight = VALUE): void {
  w.add(`value:${id}`, shownPower(l.flows[id], l.asked.has(id)), weight, places);
}

/** Above a level ribbon, then under it. */
function level(w: PowerWishes, l: PowerLayout, id: FlowId, from: BarId, to: BarId): void {
  const ribbon = w.ribbon(id);
  if (!ribbon) return;
  const { text } = w;
  const [a, b] = [l.places.at(from), l.places.at(to)];
  const mid = (a + b) / 2;
  const above = w.heightOn(ribbon, 0.5) - ribbon.width / 2 - text * 0.42;
  const below = w.heightOn(ribbon, 0.5) + ribbon.width / 2 + text * 1.05;
  const near = at(a + text * 1.6, above, "start");
  value(w, l, id, [at(mid, above), at(mid - text, above), near, at(mid + text, above), at(mid, below)]);
}

/** Beside a ribbon that rises (+1) or falls (−1) to the right, or over the run of the one that turns round. */
function steep(
  w: PowerWishes,
  l: PowerLayout,
  id: "sun" | "outputShaft",
  from: BarId,
  to: BarId,
  rise: 1 | -1,
): void {
  const { text } = w;
  const direct = w.ribbon(id);
  const over = w.ribbon(`${id}Over`);
  if (over && (!direct || over.width > direct.width)) {
    const bar = w.bar(id === "sun" ? "sunMachine" : "outputMachine");
    const mid = (l.places.at(from) + l.places.at(to)) / 2;
    const above = bar.y - text * 0.42;
    value(w, l, id, [at(mid, above), at(mid + rise * text, above), at(mid - rise * text, above)]);
    return;
  }
  if (!direct) return;
  const { mark, width } = direct;
  const aside = width * 0.55 + text * 0.75;
  const outer = (by: number, down: number): Place =>
    at(mark.x - rise * (aside + by * text), mark.y + (down - 0.35) * text, rise > 0 ? "end" : "start");
  const inner = (by: number, down: number): Place =>
    at(mark.x + rise * (aside + by * text), mark.y + (down + 1.1) * text, rise > 0 ? "start" : "end");
  value(w, l, id, [outer(0, 0), outer(0, -0.8), outer(0.7, 0), inner(0, 0), inner(0, 0.7), inner(0.8, 0)]);
}

function battery(w: PowerWishes, l: PowerLayout): void {
  const { text } = w;
  const { places } = l;
  const source = w.ribbon("source");
  if (source) {
    const x = (places.tip + places.at("battery")) / 2;
    value(w, l, "source", [at(x, places.cells - source.width - text * 0.42)], 45);
  }
  const direct = w.ribbon("battery");
  const over = w.ribbon("batteryOver");
  if (over && (!direct || over.width > direct.width)) {
    const x = (places.at("battery") + places.at("dcLink")) / 2;
    const y = w.heightOn(over, 0.25);
    value(w, l, "battery", [
      at(x, y - over.width / 2 - text * 0.42),
      at(x, y + over.width / 2 + text * 1.05),
    ]);
  } else if (direct) {
    const { mark, width } = direct;
    const aside = width * 0.5 + text * 0.8;
    value(w, l, "battery", [
      at(mark.x + aside, mark.y - text * 0.3, "start"),
      at(mark.x + aside + text, mark.y, "start"),
      at(mark.x - aside, mark.y + text * 0.9, "end"),
    ]);
  }
}

function lowerLane(w: PowerWishes, l: PowerLayout): void {
  const { text } = w;
  const { places } = l;
  if (w.ribbon("fuel")) {
    const y = w.bar("engine").y - text * 0.5;
    w.add("name:fuel", t.roadFlow.nodes.fuel, 91, [at(places.fuel, y, "start")]);
    value(w, l, "fuel", [at(places.fuel + text * 2.3, y, "start")], 90);
  }
  const engine = w.ribbon("engine");
  if (engine) {
    const [e, g] = [places.at("engine"), places.at("gearSet")];
    const y = Math.min(w.heightOn(engine, 0), w.heightOn(engine, 0.75)) - engine.width / 2 - text * 0.45;
    value(w, l, "engine", [
      at((e + g) / 2 + 2, y),
      at(e + text * 0.6, y, "start"),
      at((e + g) / 2, y - text),
      at((e + g) / 2, w.heightOn(engine, 0.5) + engine.width / 2 + text),
    ]);
  }
  if (w.ribbon("ring")) {
    const mid = (places.at("sunMachine") + places.at("outputMachine")) / 2;
    const y = places.lower + text * 1.15;
    const aside = [0, 3, 6].map((by) => mid + by * text);
    value(
      w,
      l,
      "ring",
      aside.map((x) => at(x - text * 3.4, y, "end")),
    );
    w.add(
      "path",
      t.roadFlow.path,
      46,
      aside.map((x) => at(x - text * 3, y, "start")),
    );
  }
}

/** The engine's heat: right of its head, under what turns away from the gear set. */
function heat(w: PowerWishes, l: PowerLayout): void {
  const { text } = w;
  const { places } = l;
  for (const { flow, y, width } of l.heat) {
    if (width <= 0) continue;
    const x = places.heat + headLength(width) + text * 0.5;
    const downs = l.turns.filter(
      ({ dir, x: px }) => dir > 0 && Math.abs(px - places.at("gearSet")) < text * 4,
    );
    const under =
      downs.some(({ side }) => side < 0) || (downs.length > 0 && x + text * 2.4 > places.at("gearSet"));
    const tips = Math.max(y, ...downs.map(({ tip }) => tip[1] + text * 0.9));
    const low = Math.min(under ? tips : y, places.foot - text * 1.1);
    const fired = l.flows.fuel > NOTHING || l.asked.has("fuel");
    value(w, l, flow, [at(x, low, "start"), at(x, y, "start"), at(x, y + text * 0.35, "start")]);
    const words = fired ? t.roadFlow.heat : t.roadFlow.friction;
    w.add("word:heat", words, 49, [at(x, low + text * 1.15, "start"), at(x + text * 2.5, low, "start")]);
  }
}

function roadEnds(w: PowerWishes, l: PowerLayout, measure: Measure): void {
  const { text } = w;
  for (const { flow, y, x } of l.road) {
    const words = t.roadFlow.ends[flow as keyof typeof t.roadFlow.ends];
    const backward = l.flows[flow] < 0 && !l.asked.has(flow);
    const tall = flow === "speedingUp" || flow === "climbing";
    const from = x + 6;
    value(w, l, flow, [at(from, y + text * (tall ? -0.12 : 0.35), "start")], 80);
    const beside = from + measure(shownPower(l.flows[flow], l.asked.has(flow)), text) + text * 0.45;
    const place = tall ? at(from, y + text * 1.02, "start") : at(beside, y + text * 0.35, "start");
    w.add(`word:${flow}`, backward ? words[1] : words[0], 60, [place]);
  }
}

/** Losses and stores that turn away: some with a word before the number. */
function turns(w: PowerWishes, l: PowerLayout): void {
  const spin = (flow: FlowId) => (l.flows[flow] < 0 ? t.roadFlow.spinGive : t.roadFlow.spinGain);
  const words: Partial<Record<FlowId, (n: string) => string>> = {
    meshLoss: t.roadFlow.mesh,
    gearSetSpin: spin("gearSetSpin"),
    ringSpin: spin("ringSpin"),
    gearsLoss: t.roadFlow.gears,
    auxiliary: w.compact ? t.roadFlow.aux : t.roadFlow.auxiliaries,
  };
  for (const turn of l.turns) {
    const { flow } = turn;
    const shown = shownPower(l.flows[flow], l.asked.has(flow));
    const weight = !isShown(l.flows[flow]) ? 40 : flow === "meshLoss" ? 44 : 49;
    w.add(`value:${flow}`, words[flow]?.(shown) ?? shown, weight, w.besideTurn(turn));
  }
}

/** Power that goes round is named over the mechanical path, or on it where that is tall. */
function loop(w: PowerWishes, { circulating, places }: PowerLayout): void {
  if (circulating <= 0) return;
  const { text } = w;
  const path = w.ribbon("ring")?.width ?? 0;
  const y = places.lower - path - text * 0.55;
  const mid = (places.at("sunMachine") + places.at("outputMachine")) / 2;
  const on = at(mid - text * 6, places.lower - path / 2 + text * 0.35);
  const over = [0, 3, -3].map((by) => at(mid + by * text, y));
  const free = at(places.at("outputMachine") + text, y, "start");
  const spots = path > text * 1.7 ? [on] : [...over, free, on];
  w.add("loop", t.roadFlow.circulating(kilowatts(circulating)), 65, spots);
}

/** Every text of the sheet in its place. @param reversing whether the vehicle rolls backward */
export function powerLabels(l: PowerLayout, reversing: boolean, measure: Measure) {
  const w: PowerWishes = new Wishes<FlowId>(l);
  powerNames(w, l, reversing);
  lowerLane(w, l);
  steep(w, l, "sun", "gearSet", "sunMachine", 1);
  level(w, l, "sunElectric", "sunMachine", "dcLink");
  battery(w, l);
  level(w, l, "outputElectric", "dcLink", "outputMachine");
  steep(w, l, "outputShaft", "outputMachine", "ring", -1);
  level(w, l, "wheels", "ring", "wheels");
  heat(w, l);
  roadEnds(w, l, measure);
  turns(w, l);
  loop(w, l);
  return w.placed(measure);
}
