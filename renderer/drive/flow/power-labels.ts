import type { FlowId } from "../../../sim/run/flows.ts";
import { kilowatts } from "../../state/format.ts";
import { t } from "../../texts/catalogue.ts";
import {
  type Anchor,
  type Box,
  type LabelWish,
  type Measure,
  type Place,
  placeLabels,
  type Segment,
} from "../../ui/labels.ts";
import { type BarId, NOTHING } from "./balance.ts";
import type { PowerLayout, Ribbon, TurnOff } from "./power-layout.ts";

const at = (x: number, y: number, anchor: Anchor = "middle"): Place => ({ x, y, anchor });

/** A power as it stands on the sheet: its size to 0.1 kW, "< 0.1" for what is less, "?" for what is asked. */
export const shownPower = (watts: number, asked = false): string => {
  if (asked) return t.roadFlow.asked;
  const size = Math.abs(watts);
  return size >= 50 || size <= NOTHING ? kilowatts(size) : t.roadFlow.little;
};

/** Everything that the labels of one instant are made of. */
class Wishes {
  readonly list: LabelWish[] = [];
  readonly text: number;
  readonly compact: boolean;

  constructor(
    readonly l: PowerLayout,
    readonly reversing: boolean,
  ) {
    this.text = l.places.text;
    this.compact = l.places.width < this.text * 56;
  }

  add(id: string, text: string, weight: number, places: readonly Place[]): void {
    this.list.push({ id, text, size: this.text, weight, places, droppable: weight < 50 });
  }

  flow(id: FlowId): number {
    return this.l.input.flows[id];
  }

  asked(id: FlowId): boolean {
    return this.l.input.asked.has(id);
  }

  shown(id: FlowId): string {
    return shownPower(this.flow(id), this.asked(id));
  }

  active(id: FlowId): boolean {
    return Math.abs(this.flow(id)) > 50 && !this.asked(id);
  }

  bar(id: BarId) {
    return this.l.bars.find((bar) => bar.id === id) ?? { x: 0, y: 0, height: 0 };
  }

  ribbon(id: string): Ribbon | undefined {
    return this.l.ribbons.find((ribbon) => ribbon.id === id);
  }

  value(id: FlowId, places: readonly Place[], weight = 70): void {
    this.add(`value:${id}`, this.shown(id), weight, places);
  }

  /** Names on fixed places, and what each does just now. */
  names(): void {
    const { text, compact } = this;
    const { places } = this.l;
    const { nodes, short, words } = t.roadFlow;
    const one = places.upper + text * 1.3;
    const two = one + text * 1.15;
    const machine = (id: FlowId, generates: number): string =>
      !this.active(id) ? words.idle : generates > 0 ? words.generating : words.driving;
    const s = places.at("sunMachine") - text * 0.3;
    this.add("name:sunMachine", compact ? short.sunMachine : nodes.sunMachine, 96, [at(s, one, "start")]);
    const sunWord = machine("sunElectric", this.flow("sunElectric"));
    if (!this.asked("sunElectric")) this.add("word:sunMachine", sunWord, 48, [at(s, two, "start")]);
    const d = places.at("dcLink");
    this.add("name:dcLink", nodes.dcLink, 95, [at(d + text * 0.2, one, "end"), at(d - text * 0.9, one, "end")]);
    const o = places.at("outputMachine") + text * 0.5;
    this.add("name:outputMachine", compact ? short.outputMachine : nodes.outputMachine, 96, [
      at(o, one, "end"),
    ]);
    const outWord = machine("outputElectric", -this.flow("outputElectric"));
    if (!this.asked("outputElectric")) this.add("word:outputMachine", outWord, 48, [at(o, two, "end")]);
    const cells = places.tip - 10;
    const middle = places.cells - this.bar("battery").height / 2 + text * 0.35;
    const nameY = Math.min(places.cells - text * 0.35, middle - text * 0.5);
    this.add("name:battery", nodes.battery, 94, [at(cells, nameY, "end")]);
    const power = this.flow("battery");
    const word = !this.active("battery") ? words.idle : power > 0 ? words.assisting : words.charging;
    if (!this.asked("battery")) this.add("word:battery", word, 48, [at(cells, nameY + text * 1.15, "end")]);
    this.lowerNames();
  }

  private lowerNames(): void {
    const { text } = this;
    const { places } = this.l;
    const { nodes, words } = t.roadFlow;
    const { lower } = places;
    const engine = this.bar("engine");
    const top = Math.min(engine.y, lower - 1);
    const high = Math.min(lower - text * 2, top - text * 1.65);
    const e = places.at("engine");
    this.add("name:engine", nodes.engine, 93, [at(e, high), at(e - text * 0.5, high, "end"), at(e, high - text)]);
    if (!this.asked("engine") && !this.active("engine")) {
      const word = this.active("fuel") ? words.idling : words.off;
      if (!this.active("fuel")) this.add("word:engine", word, 47, [at(e, high + text * 1.15)]);
      else this.add("word:engine", word, 47, [at(e + 8, top - text * 0.5, "start")]);
    } else if (this.flow("engine") < 0 && !this.asked("engine")) {
      this.add("word:engine", words.turned, 47, [at(e, high + text * 1.15)]);
    }
    const g = places.at("gearSet");
    const gear = this.bar("gearSet");
    const gearHigh = Math.min(lower - text * 2, gear.y - text * 0.6);
    this.add("name:gearSet", nodes.gearSet, 93, [
      at(g + text * 0.3, Math.min(high, gearHigh), "end"),
      at(g + text * 0.6, lower - this.pathTop() - text * 0.5, "start"),
      at(g + text * 0.3, gear.y - text * 0.5, "end"),
      at(g + text * 0.6, lower + text * 1.2, "start"),
      at(g - text * 0.6, lower + text * 1.2, "end"),
    ]);
    const r = places.at("ring");
    const below = lower + text * 1.3;
    this.add("name:ring", nodes.ring, 92, [at(r + text * 0.2, below, "end"), at(r - text, below, "end")]);
    const w = places.at("wheels");
    const wheel = this.bar("wheels");
    const under = Math.max(below, wheel.y + wheel.height + text * 1.1);
    this.add("name:wheels", nodes.wheels, 92, [at(w + text * 0.2, under, "end")]);
    if (this.reversing) this.add("word:wheels", words.reverse, 49, [at(w + text * 0.2, under + text * 1.15, "end")]);
  }

  /** Height of what the mechanical path takes, px. */
  private pathTop(): number {
    return this.ribbon("ring")?.width ?? 0;
  }

  /** Above a level ribbon, then under it. */
  private level(id: FlowId, from: number, to: number, weight = 70): void {
    const ribbon = this.ribbon(id);
    if (!ribbon) return;
    const mid = (from + to) / 2;
    const [, y] = ribbon.middle[Math.floor(ribbon.middle.length / 2)] ?? [0, 0];
    const above = y - ribbon.width / 2 - this.text * 0.42;
    const below = y + ribbon.width / 2 + this.text * 1.05;
    const aside = this.text * 1.3;
    this.value(
      id,
      [at(mid, above), at(mid - aside, above), at(mid + aside, above), at(mid, below), at(mid + aside, below)],
      weight,
    );
  }

  values(): void {
    const { text } = this;
    const { places } = this.l;
    const engine = this.bar("engine");
    const x = (id: BarId): number => places.at(id);
    if (this.ribbon("fuel")) {
      const y = engine.y - text * 0.5;
      this.add("name:fuel", t.roadFlow.nodes.fuel, 91, [at(places.fuel, y, "start")]);
      this.value("fuel", [at(places.fuel + text * 2.3, y, "start")]);
    }
    const engineRibbon = this.ribbon("engine");
    if (engineRibbon) {
      const mid = (x("engine") + x("gearSet")) / 2 + 2;
      const above = places.lower - engineRibbon.width - text * 0.45;
      this.value("engine", [at(mid, above), at(x("engine") + 8, above, "start"), at(mid, above - text)]);
    }
    this.steep("sun", x("gearSet"), x("sunMachine"), 1);
    this.level("sunElectric", x("sunMachine"), x("dcLink"));
    this.batteryValues();
    this.level("outputElectric", x("dcLink"), x("outputMachine"));
    this.steep("outputShaft", x("outputMachine"), x("ring"), -1);
    this.level("wheels", x("ring"), x("wheels"));
    if (this.ribbon("ring")) {
      const mid = (x("sunMachine") + x("outputMachine")) / 2;
      const y = places.lower + text * 1.15;
      const aside = [0, 3, 6].map((by) => mid + by * text);
      this.value("ring", aside.map((px) => at(px - text * 3.4, y, "end")));
      this.add("path", t.roadFlow.path, 46, aside.map((px) => at(px - text * 3, y, "start")));
    }
    this.heat();
    this.roadEnds();
    for (const turn of this.l.turns) this.turn(turn);
    this.loop();
  }

  /** Beside a ribbon that rises (+1) or falls (−1), or along the run of the one that turns round. */
  private steep(id: "sun" | "outputShaft", from: number, to: number, rise: 1 | -1): void {
    const { text } = this;
    const direct = this.ribbon(id);
    const over = this.ribbon(`${id}Over`);
    if (over && (!direct || over.width > direct.width)) {
      const { upper } = this.l.places;
      const bar = this.bar(id === "sun" ? "sunMachine" : "outputMachine");
      const mid = (from + to) / 2;
      this.value(id, [
        at(mid, bar.y - text * 0.42),
        at(mid + rise * text, bar.y - text * 0.42),
        at(mid, upper + text * 1.15),
      ]);
      return;
    }
    if (!direct) return;
    const { mark, width } = direct;
    const aside = width * 0.55 + text * 0.75;
    const out = at(mark.x - rise * aside, mark.y - text * 0.35, rise > 0 ? "end" : "start");
    const inner = at(mark.x + rise * aside, mark.y + text * 1.1, rise > 0 ? "start" : "end");
    const places = [out, at(out.x, out.y - text * 0.8, out.anchor), at(out.x - rise * text * 0.6, out.y, out.anchor)];
    this.value(id, [...places, inner, at(inner.x, inner.y + text * 0.7, inner.anchor)]);
  }

  private batteryValues(): void {
    const { text } = this;
    const { places } = this.l;
    const direct = this.ribbon("battery");
    const over = this.ribbon("batteryOver");
    const source = this.ribbon("source");
    if (source) {
      const y = places.cells - source.width - text * 0.42;
      this.value("source", [at((places.tip + places.at("battery")) / 2, y)], 45);
    }
    if (over && (!direct || over.width > direct.width)) {
      const mid = (places.at("battery") + places.at("dcLink")) / 2;
      const [, y] = over.middle[Math.floor(over.middle.length / 4)] ?? [0, 0];
      this.value("battery", [at(mid, y - over.width / 2 - text * 0.42), at(mid, y + over.width / 2 + text * 1.05)]);
    } else if (direct) {
      const { mark, width } = direct;
      const aside = width * 0.5 + text * 0.8;
      this.value("battery", [
        at(mark.x + aside, mark.y - text * 0.3, "start"),
        at(mark.x + aside + text, mark.y, "start"),
        at(mark.x - aside, mark.y + text * 0.9, "end"),
      ]);
    }
  }

  private heat(): void {
    const { text } = this;
    const ribbons = [this.ribbon("engineLoss"), this.ribbon("engineLossRound")].filter((one) => one !== undefined);
    const [first] = ribbons;
    if (!first) return;
    const width = ribbons.reduce((sum, one) => sum + one.width, 0);
    const points = ribbons.flatMap(({ middle }) => middle.slice(-1));
    const y = points.reduce((sum, [, py]) => sum + py, 0) / points.length;
    const x = this.l.places.heat + Math.max(7, Math.min(width * 0.45, 20)) + 7;
    const words = this.flow("fuel") > NOTHING || this.asked("fuel") ? t.roadFlow.heat : t.roadFlow.friction;
    this.value("engineLoss", [at(x, y, "start"), at(x, y + text * 0.35, "start")]);
    this.add("word:heat", words, 49, [at(x, y + text * 1.15, "start")]);
  }

  private roadEnds(): void {
    const { text } = this;
    for (const { flow, y, x } of this.l.road) {
      const words = t.roadFlow.ends[flow as keyof typeof t.roadFlow.ends];
      const word = this.flow(flow) < 0 ? words[1] : words[0];
      const tall = flow === "speedingUp" || flow === "climbing";
      const from = x + 6;
      this.value(flow, [at(from, y + text * (tall ? -0.12 : 0.35), "start")], 80);
      const beside = from + text * (Math.abs(this.flow(flow)) < 9950 ? 1.95 : 2.5);
      const place = tall ? at(from, y + text * 1.02, "start") : at(beside, y + text * 0.35, "start");
      this.add(`word:${flow}`, word, 60, [place]);
    }
  }

  private turn({ flow, tip, dir, side, width, id, x }: TurnOff): void {
    const { text, compact } = this;
    const words: Partial<Record<FlowId, (n: string) => string>> = {
      meshLoss: t.roadFlow.mesh,
      gearSetSpin: t.roadFlow.spin,
      ringSpin: t.roadFlow.spin,
      gearsLoss: t.roadFlow.gears,
      auxiliary: compact ? t.roadFlow.aux : t.roadFlow.auxiliaries,
    };
    const shown = this.shown(flow);
    const said = words[flow]?.(shown) ?? shown;
    const aside = width / 2 + text * 0.55;
    const y = tip[1] - dir * text * 0.1 + (dir > 0 ? 0 : text * 0.55);
    const outer = at(x + side * aside, y, side > 0 ? "start" : "end");
    const inner = at(x - side * aside, y, side > 0 ? "end" : "start");
    const far = at(x, tip[1] + (dir > 0 ? text * 0.95 : -text * 0.3));
    const weight = Math.abs(this.flow(flow)) < 50 ? 40 : flow === "meshLoss" ? 44 : 49;
    // A loss drawn on both sides is one number.
    if (this.list.some((wish) => wish.id === `value:${flow}`)) return;
    void id;
    this.add(`value:${flow}`, said, weight, dir > 0 ? [outer, far, inner] : [inner, outer, far]);
  }

  private loop(): void {
    const { circulating, places } = this.l;
    if (circulating <= 0) return;
    const { text } = this;
    const y = places.lower - this.pathTop() - text * 0.55;
    const mid = (places.at("sunMachine") + places.at("outputMachine")) / 2;
    this.add("loop", t.roadFlow.circulating(kilowatts(circulating)), 65, [
      at(mid, y),
      at(mid + text * 3, y),
      at(mid - text * 3, y),
    ]);
  }
}

/** Boxes about level ribbons; both edges of the others. */
function obstaclesOf(l: PowerLayout): { boxes: Box[]; lines: Segment[] } {
  const boxes: Box[] = l.bars.map(({ x, y, height }) => ({ x: x - 2, y: y - 2, width: 4, height: height + 4 }));
  const lines: Segment[] = [];
  for (const { middle, width } of l.ribbons) {
    const [first] = middle;
    const last = middle[middle.length - 1];
    if (!first || !last) continue;
    if (middle.length === 2) {
      boxes.push({ x: first[0], y: first[1] - width / 2, width: last[0] - first[0], height: width });
      continue;
    }
    const step = middle.length > 8 ? 4 : 1;
    const half = width / 2;
    for (let i = step; i < middle.length; i += step) {
      const [x1, y1] = middle[i - step] ?? first;
      const [x2, y2] = middle[i] ?? last;
      const length = Math.hypot(x2 - x1, y2 - y1) || 1;
      const [nx, ny] = [((y1 - y2) / length) * half, ((x2 - x1) / length) * half];
      lines.push({ x1: x1 + nx, y1: y1 + ny, x2: x2 + nx, y2: y2 + ny });
      lines.push({ x1: x1 - nx, y1: y1 - ny, x2: x2 - nx, y2: y2 - ny });
    }
  }
  for (const { box } of l.turns) boxes.push(box);
  return { boxes, lines };
}

/** Every text of the sheet in its place. @param reversing whether the vehicle rolls backward */
export function powerLabels(l: PowerLayout, reversing: boolean, measure: Measure) {
  const wishes = new Wishes(l, reversing);
  wishes.names();
  wishes.values();
  const { width, foot, text } = l.places;
  const bounds = { x: 0, y: -text * 0.4, width: width + text * 0.5, height: foot + text * 0.6 };
  return placeLabels(wishes.list, { ...obstaclesOf(l), bounds }, measure);
}
