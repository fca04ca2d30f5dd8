import type { BenchPoint } from "../../sim/bench/bench.ts";
import { roadOfRing, SHAFTS, type Shaft, type ShaftValues } from "../../sim/bench/shafts.ts";
import type { Vehicle } from "../../sim/parameters/schema.ts";
import type { BenchState } from "../state/bench.ts";
import { kilowatts, num, ratio, roadSpeed, shaftSpeed, shaftUnitName, type Units } from "../state/format.ts";
import type { WorkingId } from "../state/working.ts";
import { t } from "../texts/catalogue.ts";
import type { Token, WorkingText } from "../ui/WorkingLines.tsx";
import { workingTitle } from "../ui/working-title.ts";

export type { Token } from "../ui/WorkingLines.tsx";

/** The working of a number on Bench. */
export interface Working extends WorkingText {
  /** `data-point` of what it explains */
  readonly point: string;
  /** a second relation that belongs to it */
  readonly also?: WorkingText;
}

/** Everything a working may read. */
export interface WorkingSource {
  readonly state: BenchState;
  readonly point: BenchPoint;
  readonly vehicle: Vehicle;
  readonly units: Units;
  readonly turns: ShaftValues;
  /** turns or speeds, whichever "per carrier turn" is of */
  readonly perOf: ShaftValues;
}

const SUBS: Readonly<Record<Shaft, string>> = { sun: "s", carrier: "c", ring: "r" };
const sym = (letter: string, shaft: Shaft): Token => ({ text: letter, ink: shaft, sub: SUBS[shaft] });
const txt = (text: string): Token => ({ text });

/** Willis' relation solved for one shaft, over any quantity that obeys it (speeds, turns). */
function willis(shaft: Shaft, letter: string, k: number, say: (s: Shaft) => string) {
  const [s, c, r] = [sym(letter, "sun"), sym(letter, "carrier"), sym(letter, "ring")];
  const live = (name: Shaft): Token => ({ text: say(name), ink: name });
  const [kk, k1] = [ratio(k), ratio(1 + k)];
  const solved: Readonly<Record<Shaft, { formula: Token[]; live: Token[] }>> = {
    sun: {
      formula: [txt("(1 + k) "), c, txt(" − k "), r],
      live: [txt(`${k1} × `), live("carrier"), txt(` − ${kk} × `), live("ring")],
    },
    carrier: {
      formula: [txt("("), s, txt(" + k "), r, txt(") / (1 + k)")],
      live: [txt("("), live("sun"), txt(` + ${kk} × `), live("ring"), txt(`) / ${k1}`)],
    },
    ring: {
      formula: [txt("((1 + k) "), c, txt(" − "), s, txt(") / k")],
      live: [txt(`(${k1} × `), live("carrier"), txt(" − "), live("sun"), txt(`) / ${kk}`)],
    },
  };
  return { left: sym(letter, shaft), ...solved[shaft] };
}

const teethNote = ({ vehicle, point }: WorkingSource): string =>
  `k ${t.working.teeth(vehicle.gearSet.ringTeeth, vehicle.gearSet.sunTeeth, ratio(point.k))}`;

function speedWorking(shaft: Shaft, from: WorkingSource): Working {
  const { units, state } = from;
  const say = (name: Shaft): string => shaftSpeed(units, state.speeds[name]);
  return {
    title: workingTitle(`speed:${shaft}`),
    ...willis(shaft, "ω", from.point.k, say),
    result: { text: `${say(shaft)} ${shaftUnitName(units)}`, ink: shaft },
    note: `${teethNote(from)} ${t.working.point(t.working.atB(t.lower[shaft]))}`,
    point: `speed:${shaft}`,
  };
}

function torqueWorking(shaft: Shaft, from: WorkingSource): Working {
  const { torques, k } = from.point;
  const engine: Token = { text: num(torques.carrier, 1), ink: "carrier" };
  const parts: Readonly<Record<Shaft, { formula: Token[]; live: Token[] }>> = {
    sun: {
      formula: [txt("−"), sym("T", "carrier"), txt(" / (1 + k)")],
      live: [txt("−"), engine, txt(` / ${ratio(1 + k)}`)],
    },
    carrier: { formula: [sym("T", "carrier")], live: [txt(t.working.ask)] },
    ring: {
      formula: [txt("−k "), sym("T", "carrier"), txt(" / (1 + k)")],
      live: [txt(`−${ratio(k)} × `), engine, txt(` / ${ratio(1 + k)}`)],
    },
  };
  return {
    title: workingTitle(`torque:${shaft}`),
    left: sym("T", shaft),
    ...parts[shaft],
    result: { text: `${num(torques[shaft], 1)} N·m`, ink: shaft },
    note: t.working.steady,
    point: `torque:${shaft}`,
  };
}

function powerWorking(shaft: Shaft, { point, state }: WorkingSource): Working {
  const rad = num(state.speeds[shaft], 1);
  return {
    title: workingTitle(`power:${shaft}`),
    left: sym("P", shaft),
    formula: [sym("T", shaft), txt(" "), sym("ω", shaft)],
    live: [
      { text: num(point.torques[shaft], 1), ink: shaft },
      txt(" N·m × "),
      { text: rad, ink: shaft },
      txt(" rad/s"),
    ],
    result: { text: `${kilowatts(point.powers[shaft])} kW`, ink: shaft },
    note: t.working.powerNote,
    point: `power:${shaft}`,
  };
}

function turnsWorking(shaft: Shaft, from: WorkingSource): Working {
  const say = (name: Shaft): string => num(from.turns[name], 2);
  return {
    title: workingTitle(`turns:${shaft}`),
    ...willis(shaft, "n", from.point.k, say),
    result: { text: say(shaft), ink: shaft },
    note: `${teethNote(from)} ${t.working.turnsNote}`,
    point: `turns:${shaft}`,
  };
}

function limitWorking(shaft: Shaft, { vehicle, units }: WorkingSource): Working {
  const { outputMachine: om, sunMachine, engine } = vehicle;
  const say = (speed: number): string => shaftSpeed(units, speed);
  const own: Readonly<Record<Shaft, { live: string; result: number; note: string }>> = {
    sun: { live: say(sunMachine.maxSpeed), result: sunMachine.maxSpeed, note: t.working.limitSun },
    carrier: { live: say(engine.maxSpeed), result: engine.maxSpeed, note: t.working.limitCarrier },
    ring: {
      live: `${say(om.maxSpeed)} / ${ratio(om.reduction)}`,
      result: om.maxSpeed / om.reduction,
      note: t.working.limitRing,
    },
  };
  const { live, result, note } = own[shaft];
  return {
    title: workingTitle(`limit:${shaft}`),
    left: { text: "ω", ink: shaft, sub: "max" },
    formula:
      shaft === "ring"
        ? [{ text: "ω", sub: "o,max", ink: shaft }, txt(" / i"), { text: "", sub: "m" }]
        : [{ text: "ω", ink: shaft, sub: "max" }],
    live: [{ text: live, ink: shaft }],
    result: { text: `${say(result)} ${shaftUnitName(units)}`, ink: shaft },
    note,
    point: `limit:${shaft}`,
  };
}

function perWorking(shaft: Shaft, { perOf }: WorkingSource): Working {
  const live = (name: Shaft): Token => ({ text: num(perOf[name], 2), ink: name });
  return {
    title: workingTitle(`per:${shaft}`),
    left: { text: "z", ink: shaft, sub: SUBS[shaft] },
    formula: [sym("n", shaft), txt(" / "), sym("n", "carrier")],
    live: [live(shaft), txt(" / "), live("carrier")],
    result: { text: num(perOf[shaft] / perOf.carrier, 3), ink: shaft },
    note: t.bench.working.perNote,
    point: `per:${shaft}`,
  };
}

/** Torques are forces on the line, the sun's k times as far from the carrier's axis as the ring's. */
function balanceWorking({ point }: WorkingSource): Working {
  const { torques, k } = point;
  const symbol = (shaft: Shaft): Token => sym("T", shaft);
  const live = (shaft: Shaft): Token => ({ text: num(torques[shaft], 1), ink: shaft });
  const bracketed = (shaft: Shaft): Token[] =>
    torques[shaft] < 0 ? [txt("("), live(shaft), txt(")")] : [live(shaft)];
  const newtonMetres = (value: number): Token => ({ text: `${num(value, 1)} N·m` });
  const title = workingTitle("balance");
  return {
    title,
    left: { text: "ΣT" },
    formula: [symbol("sun"), txt(" + "), symbol("carrier"), txt(" + "), symbol("ring")],
    live: [live("sun"), txt(" + "), ...bracketed("carrier"), txt(" + "), ...bracketed("ring")],
    result: newtonMetres(torques.sun + torques.carrier + torques.ring),
    also: {
      title,
      left: { text: "M", sub: "c" },
      formula: [txt("k "), symbol("sun"), txt(" − "), symbol("ring")],
      live: [txt(`${ratio(k)} × `), ...bracketed("sun"), txt(" − "), ...bracketed("ring")],
      result: newtonMetres(k * torques.sun - torques.ring),
      note: "",
    },
    note: t.bench.working.balanceNote,
    point: "torque:carrier",
  };
}

type Single = Exclude<WorkingId, `${string}:${string}`>;

const SINGLE: Readonly<Record<Single, (from: WorkingSource) => Working>> = {
  "full-load": ({ point }) => ({
    title: workingTitle("full-load"),
    left: { text: "T", sub: "full", ink: "carrier" },
    formula: [{ text: "T", sub: "full", ink: "carrier" }, txt("("), sym("ω", "carrier"), txt(")")],
    live: [{ text: num(point.engine.most, 1), ink: "carrier" }],
    result: { text: `${num(point.engine.most, 1)} N·m`, ink: "carrier" },
    note: t.working.fullLoadNote,
    point: "full-load",
  }),
  electrical: ({ point, state, units }) => ({
    title: workingTitle("electrical"),
    left: { text: "e" },
    formula: [txt("1 − k "), sym("ω", "ring"), txt(" / ((1 + k) "), sym("ω", "carrier"), txt(")")],
    live: [
      txt(`1 − ${ratio(point.k)} × `),
      { text: shaftSpeed(units, state.speeds.ring), ink: "ring" },
      txt(` / (${ratio(1 + point.k)} × `),
      { text: shaftSpeed(units, state.speeds.carrier), ink: "carrier" },
      txt(")"),
    ],
    result: { text: `${num((point.shares?.electrical ?? 0) * 100, 1)} %` },
    note: t.working.point(t.working.atC),
    point: "electrical",
  }),
  output: ({ point, state, vehicle }) => ({
    title: workingTitle("output"),
    left: { text: "T", sub: "o", ink: "ring" },
    formula: [
      { text: "P", sub: "o", ink: "ring" },
      txt(" / ("),
      sym("ω", "ring"),
      txt(" i"),
      { text: "", sub: "m" },
      txt(")"),
    ],
    live: [
      { text: kilowatts(point.flows.outputMachine), ink: "ring" },
      txt(" kW / "),
      { text: num(point.output.speed, 1), ink: "ring" },
      txt(" rad/s"),
    ],
    result: { text: `${num(point.output.torque, 1)} N·m`, ink: "ring" },
    note: `${state.outputTorque === null ? t.working.outputNote : t.working.outputGiven} ${t.working.reduction(ratio(vehicle.outputMachine.reduction))}`,
    point: "output",
  }),
  balance: balanceWorking,
  "output-power": ({ point }) => ({
    title: workingTitle("output-power"),
    left: { text: "P", sub: "out", ink: "ring" },
    formula: [txt("−"), sym("P", "ring"), txt(" + "), { text: "P", sub: "o", ink: "ring" }],
    live: [
      { text: kilowatts(point.flows.ring), ink: "ring" },
      txt(" + "),
      { text: kilowatts(point.flows.outputMachine), ink: "ring" },
    ],
    result: { text: `${kilowatts(point.flows.output)} kW`, ink: "ring" },
    note: t.bench.working.outputPowerNote,
    point: "output-power",
  }),
  "output-most": ({ point, vehicle }) => {
    const { peakTorque, peakPower } = vehicle.outputMachine;
    const speed = num(Math.abs(point.output.speed), 1);
    return {
      title: workingTitle("output-most"),
      left: { text: "T", sub: "max", ink: "ring" },
      formula: [
        txt("min("),
        { text: "T", sub: "peak", ink: "ring" },
        txt(", "),
        { text: "P", sub: "peak", ink: "ring" },
        txt(" / ω"),
        { text: "", sub: "o" },
        txt(")"),
      ],
      live: [
        txt("min("),
        { text: num(peakTorque), ink: "ring" },
        txt(", "),
        { text: num(peakPower), ink: "ring" },
        txt(` W / ${speed})`),
      ],
      result: { text: `${num(point.output.most, 1)} N·m`, ink: "ring" },
      note: t.bench.working.outputMostNote,
      point: "output-most",
    };
  },
  battery: ({ point }) => ({
    title: workingTitle("battery"),
    left: { text: "P", sub: "b" },
    formula: [{ text: "P", sub: "o", ink: "ring" }, txt(" + "), sym("P", "sun")],
    live: [
      { text: kilowatts(point.flows.outputMachine), ink: "ring" },
      txt(" + "),
      { text: kilowatts(point.powers.sun), ink: "sun" },
    ],
    result: { text: `${kilowatts(point.flows.battery)} kW` },
    note: t.working.point(t.working.atC),
    point: "battery",
  }),
  ratio: ({ point, vehicle }) => ({
    title: workingTitle("ratio"),
    left: { text: "k" },
    formula: [{ text: "N", sub: "r", ink: "ring" }, txt(" / "), { text: "N", sub: "s", ink: "sun" }],
    live: [
      { text: num(vehicle.gearSet.ringTeeth), ink: "ring" },
      txt(" / "),
      { text: num(vehicle.gearSet.sunTeeth), ink: "sun" },
    ],
    result: { text: ratio(point.k) },
    note: t.working.point(t.working.atB(SHAFTS.map((shaft) => t.lower[shaft]).join(", "))),
    point: "ratio",
  }),
  road: ({ vehicle, state, units }) => ({
    title: workingTitle("road"),
    left: { text: "v" },
    formula: [sym("ω", "ring"), txt(" r"), { text: "", sub: "w" }, txt(" / i"), { text: "", sub: "f" }],
    live: [
      { text: num(state.speeds.ring, 1), ink: "ring" },
      txt(` rad/s × ${ratio(vehicle.body.wheelRadius)} m / ${ratio(vehicle.finalDrive.ratio)}`),
    ],
    result: { text: roadSpeed(units, roadOfRing(vehicle, state.speeds.ring)), ink: "ring" },
    note: t.working.roadNote,
    point: "road",
  }),
};

const OF_SHAFT = {
  speed: speedWorking,
  torque: torqueWorking,
  power: powerWorking,
  turns: turnsWorking,
  limit: limitWorking,
  per: perWorking,
} as const;

/** The working of a number, with its live values. */
export function workingOf(id: WorkingId, from: WorkingSource): Working {
  if (id in SINGLE) return SINGLE[id as Single](from);
  const [kind, shaft] = id.split(":") as [keyof typeof OF_SHAFT, Shaft];
  return OF_SHAFT[kind](shaft, from);
}
