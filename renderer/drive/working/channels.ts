import { at } from "../../../shared/at.ts";
import type { CycleTrace } from "../../../shared/cycle.ts";
import { mpsToKmh, mpsToMph } from "../../../shared/units.ts";
import type { ChannelId } from "../../../sim/run/channels.ts";
import { num, roadSpeed, roadUnitName, shaftSpeed, shaftUnitName } from "../../state/format.ts";
import { t } from "../../texts/catalogue.ts";
import type { Token, WorkingInk } from "../../ui/WorkingLines.tsx";
import { flowSymbol, flowWorking } from "./flows.ts";
import { after, constant, firstThatHolds, kwResult, type Lines, sym, txt, val } from "./pieces.ts";
import { before, ledgerAt, type RoadSource, sinceBefore } from "./source.ts";

const notes = t.roadWorking.notes;
const TIMES = txt(" × ");
const OVER = txt(" / ");

const inked = (text: string, ink?: WorkingInk): Token => ({ text, ...(ink ? { ink } : {}) });

/** A number that is given and follows from nothing else that is kept. */
function given(symbol: Token, shown: Token, note: string): Lines {
  return { left: symbol, formula: [symbol], live: [shown], result: shown, note };
}

/** Place in a cycle's samples about a time: the two and the share between them. */
function around(cycle: CycleTrace, time: number) {
  let next = cycle.time.findIndex((one) => one >= time);
  if (next < 1) next = Math.min(1, cycle.time.length - 1);
  const [t0, t1] = [at(cycle.time, next - 1), at(cycle.time, next)];
  return { last: next - 1, next, t0, t1 };
}

/** A cycle's value between two of its samples. */
function between(
  from: RoadSource,
  id: "target" | "grade",
  values: Float64Array,
  shape: {
    readonly symbol: Token;
    readonly show: (value: number) => Token;
    readonly result: Token;
    readonly tolerance: number;
  },
): Lines {
  const { detail, run } = from;
  const { last, next, t0, t1 } = around(run.request.cycle, detail.at.time);
  const [v0, v1] = [at(values, last), at(values, next)];
  const value = v0 + ((v1 - v0) * (detail.at.time - t0)) / (t1 - t0);
  const { symbol, show, result } = shape;
  const x = symbol.text;
  const lines = (): Lines => ({
    left: symbol,
    formula: [
      ...[sym(x, "0"), txt(" + ("), sym(x, "1"), txt(" − "), sym(x, "0"), txt(") (t − "), sym("t", "0")],
      ...[txt(") / ("), sym("t", "1"), txt(" − "), sym("t", "0"), txt(")")],
    ],
    live: [
      ...[show(v0), txt(" + ("), show(v1), txt(" − "), show(v0), txt(") × ("), val(detail.at.time, 2)],
      ...[txt(" − "), val(t0, 2), txt(") / ("), val(t1, 2), txt(" − "), val(t0, 2), txt(")")],
    ],
    result,
    note: notes.betweenSamples(run.request.cycle.title),
  });
  return firstThatHolds(detail.at[id], shape.tolerance, [{ value, lines }], () =>
    given(symbol, result, notes.drivenByHand),
  );
}

/** ω in the person's unit without its name, as the lever line says it. */
const turn = ({ units }: RoadSource, speed: number, ink: WorkingInk, brackets = false): Token => {
  const text = shaftSpeed(units, speed);
  return inked(brackets && text.startsWith("−") ? `(${text})` : text, ink);
};
const turnResult = (from: RoadSource, speed: number, ink: WorkingInk): Token =>
  inked(`${shaftSpeed(from.units, speed)} ${shaftUnitName(from.units)}`, ink);

const W = {
  sun: sym("ω", "s", "sun"),
  carrier: sym("ω", "c", "carrier"),
  ring: sym("ω", "r", "ring"),
} as const;

function sunSpeed(from: RoadSource): Lines {
  const { p, detail } = from;
  return {
    left: W.sun,
    formula: [txt("(1 + k) "), W.carrier, txt(" − k "), W.ring],
    live: [
      ...[constant(p.k1), TIMES, turn(from, detail.at.engineSpeed, "carrier", true)],
      ...[txt(" − "), constant(p.k), TIMES, turn(from, detail.at.ringSpeed, "ring", true)],
    ],
    result: turnResult(from, detail.at.sunMachineSpeed, "sun"),
    note: notes.teeth,
  };
}

function carrierSpeed(from: RoadSource): Lines {
  const { p, detail } = from;
  return {
    left: W.carrier,
    formula: [txt("("), W.sun, txt(" + k "), W.ring, txt(") / (1 + k)")],
    live: [
      ...[txt("("), turn(from, detail.at.sunMachineSpeed, "sun"), txt(" + "), constant(p.k), TIMES],
      ...[turn(from, detail.at.ringSpeed, "ring", true), txt(") / "), constant(p.k1)],
    ],
    result: turnResult(from, detail.at.engineSpeed, "carrier"),
    note: notes.teeth,
  };
}

function ringSpeed(from: RoadSource): Lines {
  const { p, detail } = from;
  return {
    left: W.ring,
    formula: [txt("((1 + k) "), W.carrier, txt(" − "), W.sun, txt(") / k")],
    live: [
      ...[txt("("), constant(p.k1), TIMES, turn(from, detail.at.engineSpeed, "carrier", true), txt(" − ")],
      ...[turn(from, detail.at.sunMachineSpeed, "sun", true), txt(") / "), constant(p.k)],
    ],
    result: turnResult(from, detail.at.ringSpeed, "ring"),
    note: notes.teeth,
  };
}

/** A torque as another one and the body's own J ω̇. */
function torque(
  left: Token,
  [other, value]: readonly [symbol: Token, value: number],
  sign: 1 | -1,
  [inertia, rate]: readonly [inertia: number, rate: number],
  [sub, ink]: readonly [sub: string, ink: WorkingInk],
  result: number,
): Lines {
  const joint = txt(sign > 0 ? " + " : " − ");
  return {
    left,
    formula: [other, joint, sym("J", sub), sym(" ω̇", sub, ink)],
    live: [
      val(value, 2, "N·m", ink),
      joint,
      constant(inertia, "kg·m²"),
      TIMES,
      after(rate, 2, "rad/s²", ink),
    ],
    result: val(result, 1, "N·m", ink),
    note: notes.ownInertia,
  };
}

function ringTorque(from: RoadSource): Lines {
  const { p, detail } = from;
  const { sunTorque, carrierTorque } = detail.at;
  return {
    left: sym("T", "r", "ring"),
    formula: [
      ...[txt("−"), sym("T", "s", "sun"), txt(" − "), sym("T", "c", "carrier"), txt(" + ")],
      ...[sym("J", "p"), sym(" ω̇", "p")],
    ],
    live: [
      ...[txt("−"), after(sunTorque, 2, "N·m", "sun"), txt(" − "), after(carrierTorque, 2, "N·m", "carrier")],
      ...[txt(" + "), constant(p.planetInertia, "kg·m²"), TIMES, after(detail.rate.planet, 2, "rad/s²")],
    ],
    result: val(detail.at.ringTorque, 1, "N·m", "ring"),
    note: notes.torquesBalance,
  };
}

function outputTorque(from: RoadSource): Lines {
  const { p, detail } = from;
  const { flows, mean } = detail;
  const rest = flows.wheels + flows.gearsLoss + flows.ringSpin - flows.ring;
  const truth = detail.at.outputMachineTorque;
  const symbol = sym("T", "om", "ring");
  const result = val(truth, 1, "N·m", "ring");
  const flow = (id: "wheels" | "gearsLoss" | "ringSpin" | "ring"): Token => flowSymbol(id);
  const watts = (value: number): Token => after(value, 1);
  const lines = (): Lines => ({
    left: symbol,
    formula: [
      ...[txt("("), flow("wheels"), txt(" + "), flow("gearsLoss"), txt(" + "), flow("ringSpin"), txt(" − ")],
      ...[flow("ring"), txt(") / ("), sym("i", "m"), sym(" ω̄", "r", "ring"), txt(")")],
    ],
    live: [
      ...[
        txt("("),
        watts(flows.wheels),
        txt(" + "),
        watts(flows.gearsLoss),
        txt(" + "),
        watts(flows.ringSpin),
      ],
      ...[txt(" − "), watts(flows.ring), txt(") W / ("), constant(p.reduction), TIMES],
      ...[after(mean.ring, 2, "rad/s", "ring"), txt(")")],
    ],
    result,
    note: notes.outputTorque,
  });
  // Close to rest the division says nothing.
  const value = Math.abs(mean.ring) > 5 ? rest / (p.reduction * mean.ring) : Number.NaN;
  return firstThatHolds(truth, 0.02, [{ value, lines }], () =>
    given(symbol, result, notes.outputTorqueGiven),
  );
}

function speed(from: RoadSource): Lines {
  const { detail, vehicle, units } = from;
  return {
    left: sym("v"),
    formula: [W.ring, txt(" "), sym("r", "w"), txt(" / "), sym("i", "f")],
    live: [
      ...[val(detail.at.ringSpeed, 2, "rad/s", "ring"), TIMES, constant(vehicle.body.wheelRadius, "m"), OVER],
      constant(vehicle.finalDrive.ratio),
    ],
    result: inked(roadSpeed(units, detail.at.speed), "ring"),
    note: notes.roadSpeed,
  };
}

function target(from: RoadSource): Lines {
  const { detail, units, run } = from;
  const inUnit = units.road === "kmh" ? mpsToKmh : mpsToMph;
  return between(from, "target", run.request.cycle.speed, {
    symbol: sym("v*"),
    show: (value) => after(inUnit(value), 2),
    result: txt(`${num(inUnit(detail.at.target), 1)} ${roadUnitName(units)}`),
    tolerance: 1e-3,
  });
}

function grade(from: RoadSource): Lines {
  return between(from, "grade", from.run.request.cycle.grade, {
    symbol: sym("g"),
    show: (value) => after(value * 100, 3),
    result: txt(`${num(from.detail.at.grade * 100, 1)} %`),
    tolerance: 1e-5,
  });
}

/** Something that grows by a rate over the time since the row before. */
function grown(
  from: RoadSource,
  shape: {
    readonly symbol: string;
    readonly rate: string;
    readonly was: Token;
    readonly by: Token;
    readonly result: Token;
    readonly note: string;
  },
): Lines {
  return {
    left: sym(shape.symbol),
    formula: [sym(shape.symbol, "−"), txt(" + "), sym(shape.rate), txt(" Δt")],
    live: [shape.was, txt(" + "), shape.by, TIMES, constant(sinceBefore(from), "s")],
    result: shape.result,
    note: shape.note,
  };
}

function distance(from: RoadSource): Lines {
  const { detail } = from;
  const was = before(from, "distance");
  const rate = (detail.at.distance - was) / Math.max(1e-9, sinceBefore(from));
  return grown(from, {
    symbol: "s",
    rate: "v̄",
    was: val(was, 2, "m"),
    by: after(rate, 2, "m/s", "ring"),
    result: val(detail.at.distance, 1, "m"),
    note: notes.grown,
  });
}

function charge(from: RoadSource): Lines {
  const { detail, p } = from;
  const dt = sinceBefore(from);
  const was = before(from, "soc");
  const current = ((was - detail.at.soc) * p.charge) / Math.max(1e-9, dt);
  return {
    left: sym("SOC"),
    formula: [sym("SOC", "−"), txt(" − Ī Δt / "), sym("Q")],
    live: [
      ...[val(was * 100, 3, "%", "battery"), txt(" − "), after(current, 2, "A", "battery"), TIMES],
      ...[constant(dt, "s"), OVER, constant(p.charge, "A·s")],
    ],
    result: val(detail.at.soc * 100, 1, "%", "battery"),
    note: notes.charge,
  };
}

function recovered(from: RoadSource): Lines {
  const { detail } = from;
  const was = before(from, "recovered");
  const power = (detail.at.recovered - was) / Math.max(1e-9, sinceBefore(from));
  return grown(from, {
    symbol: "E",
    rate: "P̄",
    was: val(was / 1000, 3, "kJ", "battery"),
    by: after(power / 1000, 2, "kW", "battery"),
    result: val(detail.at.recovered / 1000, 2, "kJ", "battery"),
    note: notes.recovered,
  });
}

function fuelUsed(from: RoadSource): Lines {
  const [running, starts] = [ledgerAt(from, "running_fuel").now, ledgerAt(from, "start_fuel").now];
  return {
    left: sym("E", "f", "fuel"),
    formula: [sym("E", "running", "fuel"), txt(" + "), sym("E", "starts", "fuel")],
    live: [val(running / 1000, 3, "kJ", "fuel"), txt(" + "), val(starts / 1000, 3, "kJ", "fuel")],
    result: val(from.detail.at.fuel / 1000, 2, "kJ", "fuel"),
    note: notes.fuelUsed,
  };
}

function batteryPower(from: RoadSource): Lines {
  const { at: v } = from.detail;
  const kilo = (value: number, ink?: WorkingInk): Token => after(value / 1000, 3, "", ink);
  return {
    left: sym("P", "b", "battery"),
    formula: [
      ...[sym("P", "sm,el", "sun"), txt(" + "), sym("P", "om,el", "ring"), txt(" + "), sym("P", "aux")],
    ],
    live: [
      ...[txt("("), kilo(v.sunMachineElectric, "sun"), txt(" + "), kilo(v.outputMachineElectric, "ring")],
      ...[txt(" + "), kilo(v.auxiliary), txt(") kW")],
    ],
    result: kwResult(v.batteryPower, "battery"),
    note: notes.dcLink,
  };
}

function current(from: RoadSource): Lines {
  const { at: v } = from.detail;
  return {
    left: sym("I", "", "battery"),
    formula: [sym("P", "b", "battery"), txt(" / "), sym("V")],
    live: [val(v.batteryPower, 1, "W", "battery"), OVER, val(v.batteryVoltage, 2, "V", "battery")],
    result: val(v.batteryCurrent, 1, "A", "battery"),
    note: notes.current,
  };
}

function voltage(from: RoadSource): Lines {
  const { detail } = from;
  const i = detail.at.batteryCurrent;
  const truth = detail.at.batteryVoltage;
  const symbol = sym("V", "", "battery");
  const result = val(truth, 1, "V", "battery");
  const value = detail.openCircuit - detail.resistance * i - detail.polarisation;
  const lines = (): Lines => ({
    left: symbol,
    formula: [sym("V", "oc"), txt(" − "), sym("R"), txt(" "), sym("I"), txt(" − "), sym("U", "1")],
    live: [
      ...[val(detail.openCircuit, 2, "V", "battery"), txt(" − "), constant(detail.resistance, "Ω"), TIMES],
      ...[after(i, 2, "A", "battery"), txt(" − "), after(detail.polarisation, 3, "V")],
    ],
    result,
    note: notes.voltage,
  });
  return firstThatHolds(truth, 0.02, [{ value, lines }], () => given(symbol, result, notes.voltageAtRest));
}

function electric(
  [sub, ink]: readonly [string, WorkingInk],
  torqueNow: number,
  speedNow: number,
  loss: number,
  truth: number,
): Lines {
  return {
    left: sym("P", `${sub},el`, ink),
    formula: [sym("T", sub, ink), txt(" "), sym("ω̄", sub, ink), txt(" + "), sym("P", "loss", "loss")],
    live: [
      ...[val(torqueNow, 2, "N·m", ink), TIMES, after(speedNow, 2, "rad/s", ink), txt(" + ")],
      val(loss, 1, "W", "loss"),
    ],
    result: kwResult(truth, ink),
    note: notes.electric,
  };
}

function time(from: RoadSource): Lines {
  const seconds = from.detail.at.time;
  const period = from.p.h * from.p.stepsPerTick;
  const periods = Math.round(seconds / period);
  const whole = Math.abs(periods * period - seconds) < 1e-6;
  const [count, length] = whole ? [periods, period] : [Math.round(seconds / from.p.h), from.p.h];
  return {
    left: sym("t"),
    formula: [sym("n"), txt(" Δt")],
    live: [val(count, 0), TIMES, constant(length, "s")],
    result: val(seconds, whole ? 1 : 2, "s"),
    note: notes.time,
  };
}

function frictionBrake(from: RoadSource): Lines {
  const { detail } = from;
  const truth = detail.at.frictionBrake;
  const symbol = sym("F", "b");
  const result = val(truth, 0, "N");
  const moves = Math.abs(detail.roadMean);
  const lines = (): Lines => ({
    left: symbol,
    formula: [sym("P", "brake", "loss"), txt(" / |v̄|")],
    live: [val(detail.flows.brake, 1, "W", "loss"), OVER, val(moves, 3, "m/s", "ring")],
    result,
    note: notes.frictionBrake,
  });
  const value = moves > 0.3 ? detail.flows.brake / moves : Number.NaN;
  return firstThatHolds(truth, 0.2, [{ value, lines }], () =>
    given(symbol, result, notes.frictionBrakeGiven),
  );
}

const CHANNELS: Readonly<Record<ChannelId, (from: RoadSource) => Lines>> = {
  time,
  target,
  speed,
  distance,
  grade,
  wheelForceAsk: (from) =>
    given(sym("F", "ask"), val(from.detail.at.wheelForceAsk, 0, "N"), notes.wheelForceAsk),
  wheelPowerAsk: (from) => ({
    left: sym("P", "ask"),
    formula: [sym("F", "ask"), txt(" v")],
    live: [
      ...[val(from.detail.at.wheelForceAsk, 1, "N"), TIMES, after(from.detail.at.speed, 3, "m/s", "ring")],
    ],
    result: kwResult(from.detail.at.wheelPowerAsk),
    note: notes.wheelPowerAsk,
  }),
  engineOn: (from) =>
    given(sym("on", "e", "carrier"), val(from.detail.at.engineOn, 0, "", "carrier"), notes.engineOn),
  engineSpeed: carrierSpeed,
  engineTorque: ({ p, detail }) =>
    torque(
      sym("T", "e", "carrier"),
      [sym("T", "c", "carrier"), detail.at.carrierTorque],
      1,
      [p.carrierInertia, detail.rate.carrier],
      ["c", "carrier"],
      detail.at.engineTorque,
    ),
  fuelPower: (from) => flowWorking("fuel", from),
  fuel: fuelUsed,
  sunMachineSpeed: sunSpeed,
  sunMachineTorque: ({ p, detail }) =>
    torque(
      sym("T", "sm", "sun"),
      [sym("T", "s", "sun"), detail.at.sunTorque],
      1,
      [p.sunInertia, detail.rate.sun],
      ["s", "sun"],
      detail.at.sunMachineTorque,
    ),
  sunMachineElectric: (from) => {
    const { at: v, mean, flows } = from.detail;
    return electric(["sm", "sun"], v.sunMachineTorque, mean.sun, flows.sunLoss, v.sunMachineElectric);
  },
  outputMachineSpeed: (from) => ({
    left: sym("ω", "o", "ring"),
    formula: [sym("i", "m"), txt(" "), W.ring],
    live: [constant(from.p.reduction), TIMES, turn(from, from.detail.at.ringSpeed, "ring", true)],
    result: turnResult(from, from.detail.at.outputMachineSpeed, "ring"),
    note: notes.reduction,
  }),
  outputMachineTorque: outputTorque,
  outputMachineElectric: (from) => {
    const { at: v, mean, flows } = from.detail;
    return electric(
      ["om", "ring"],
      v.outputMachineTorque,
      mean.output,
      flows.outputLoss,
      v.outputMachineElectric,
    );
  },
  ringSpeed,
  sunTorque: ({ p, detail }) =>
    torque(
      sym("T", "s", "sun"),
      [sym("T", "sm", "sun"), detail.at.sunMachineTorque],
      -1,
      [p.sunInertia, detail.rate.sun],
      ["s", "sun"],
      detail.at.sunTorque,
    ),
  ringTorque,
  carrierTorque: ({ p, detail }) =>
    torque(
      sym("T", "c", "carrier"),
      [sym("T", "e", "carrier"), detail.at.engineTorque],
      -1,
      [p.carrierInertia, detail.rate.carrier],
      ["c", "carrier"],
      detail.at.carrierTorque,
    ),
  frictionBrake,
  batteryPower,
  batteryCurrent: current,
  batteryVoltage: voltage,
  soc: charge,
  auxiliary: (from) => flowWorking("auxiliary", from),
  recovered,
};

/** The working of a channel of the log. */
export const channelWorking = (id: ChannelId, from: RoadSource): Lines => CHANNELS[id](from);
