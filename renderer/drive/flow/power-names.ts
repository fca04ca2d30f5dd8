import type { FlowId } from "../../../sim/run/flows.ts";
import { t } from "../../texts/catalogue.ts";
import type { PowerLayout } from "./power-layout.ts";
import { isShown } from "./shown.ts";
import { at, type Wishes } from "./wishes.ts";

/** Weights: names stay, what a part does just now may go. */
const NAME = 95;
const WORD = 48;

/** Wishes of one instant. */
export type PowerWishes = Wishes<FlowId>;

/** What a machine does: it generates, drives, or idles. @param into W of shaft power that becomes electrical */
const machineWord = (into: number): string =>
  !isShown(into) ? t.roadFlow.words.idle : into > 0 ? t.roadFlow.words.generating : t.roadFlow.words.driving;

function upperLane(w: PowerWishes, { flows, asked, places }: PowerLayout): void {
  const { text, compact } = w;
  const { nodes, short } = t.roadFlow;
  const one = places.upper + text * 1.3;
  const two = one + text * 1.15;
  const s = places.at("sunMachine") - text * 0.3;
  w.add("name:sunMachine", compact ? short.sunMachine : nodes.sunMachine, NAME, [at(s, one, "start")]);
  if (!asked.has("sunElectric")) {
    w.add("word:sunMachine", machineWord(flows.sunElectric), WORD, [at(s, two, "start")]);
  }
  const d = places.at("dcLink");
  w.add("name:dcLink", nodes.dcLink, NAME, [
    at(d + text * 0.3, one, "end"),
    at(d - text * 1.1, one, "end"),
    at(d + text * 0.4, two, "start"),
    at(d + text * 0.3, two, "end"),
  ]);
  const o = places.at("outputMachine") + text * 0.5;
  w.add("name:outputMachine", compact ? short.outputMachine : nodes.outputMachine, NAME, [at(o, one, "end")]);
  if (!asked.has("outputElectric")) {
    w.add("word:outputMachine", machineWord(-flows.outputElectric), WORD, [at(o, two, "end")]);
  }
}

function battery(w: PowerWishes, { flows, asked, places }: PowerLayout): void {
  const { text } = w;
  const { nodes, words } = t.roadFlow;
  const x = places.tip - 10;
  const y = places.cells - Math.max(text * 0.35, w.bar("battery").height / 2 + text * 0.15);
  w.add("name:battery", nodes.battery, NAME, [at(x, y, "end")]);
  const word = !isShown(flows.battery) ? words.idle : flows.battery > 0 ? words.giving : words.charging;
  if (!asked.has("battery")) w.add("word:battery", word, WORD, [at(x, y + text * 1.15, "end")]);
}

function engineAndGearSet(w: PowerWishes, { flows, asked, places }: PowerLayout): void {
  const { text } = w;
  const { nodes, words } = t.roadFlow;
  const { lower } = places;
  const top = w.bar("engine").y;
  const gear = w.bar("gearSet");
  const turning = w.ribbon("sunOver") !== undefined;
  const high = Math.min(lower - text * 2.2, top - text * 1.65, turning ? lower : gear.y - text * 1.65);
  const e = places.at("engine");
  w.add("name:engine", nodes.engine, NAME, [
    at(e, high),
    at(e - text * 0.6, high, "end"),
    at(e - text * 0.6, high - text * 1.2, "end"),
  ]);
  if (!asked.has("engine") && !asked.has("fuel")) {
    const fired = isShown(flows.fuel);
    const word = isShown(flows.engine)
      ? flows.engine < 0
        ? words.turned
        : ""
      : fired
        ? words.idling
        : words.off;
    const under = fired ? at(e + text * 0.6, top - text * 0.5, "start") : at(e, high + text * 1.15);
    if (word) w.add("word:engine", word, WORD, [under, at(e - text * 0.6, high + text * 1.15, "end")]);
  }
  const g = places.at("gearSet");
  const path = w.ribbon("ring")?.width ?? 0;
  w.add("name:gearSet", nodes.gearSet, NAME - 1, [
    ...(turning ? [] : [at(g + text * 0.3, high, "end")]),
    at(g + text * 0.6, lower - path - text * 0.5, "start"),
    at(g + text * 0.3, high, "end"),
    at(g + text * 1.8, lower + text * 1.2, "start"),
    at(g - text * 0.6, lower + text * 1.2, "end"),
    at(g + text * 2.8, lower + text * 1.2, "start"),
  ]);
}

function ringAndWheels(w: PowerWishes, { places }: PowerLayout, reversing: boolean): void {
  const { text } = w;
  const { nodes, words } = t.roadFlow;
  const below = places.lower + text * 1.25;
  const r = places.at("ring");
  w.add("name:ring", nodes.ring, NAME - 2, [
    at(r + text * 0.3, below, "end"),
    at(r - text * 1.2, below, "end"),
    at(r - text * 2.2, below, "end"),
  ]);
  const wheel = w.bar("wheels");
  const under = Math.max(below, wheel.y + wheel.height + text);
  const x = places.at("wheels") + text * 0.2;
  w.add("name:wheels", nodes.wheels, NAME - 2, [at(x, under, "end"), at(x - text * 0.6, under, "end")]);
  if (reversing) w.add("word:wheels", words.reverse, WORD, [at(x, under + text * 1.15, "end")]);
}

/** Names on places that do not move, and under them what each part does just now. */
export function powerNames(w: PowerWishes, l: PowerLayout, reversing: boolean): void {
  upperLane(w, l);
  battery(w, l);
  engineAndGearSet(w, l);
  ringAndWheels(w, l, reversing);
}
