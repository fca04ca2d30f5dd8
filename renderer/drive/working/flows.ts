import type { MachineLoss } from "../../../sim/drivetrain/machine.ts";
import { machineLoss } from "../../../sim/drivetrain/machine.ts";
import { FLOW_NODES, type FlowId, type FlowNode, nodeRest } from "../../../sim/run/flows.ts";
import { t } from "../../texts/catalogue.ts";
import type { Token, WorkingInk } from "../../ui/WorkingLines.tsx";
import {
  after,
  constant,
  firstThatHolds,
  kwResult,
  type Lines,
  sumSymbols,
  sumValues,
  sym,
  type Term,
  txt,
  val,
} from "./pieces.ts";
import type { RoadSource } from "./source.ts";

/** Symbol and colour of each flow. */
export const FLOW_SYMBOL: Readonly<Record<FlowId, readonly [sub: string, ink: WorkingInk | undefined]>> = {
  fuel: ["f", "fuel"],
  engineLoss: ["heat", "loss"],
  engine: ["e", "carrier"],
  gearSetSpin: ["spin", undefined],
  meshLoss: ["mesh", "loss"],
  sun: ["s", "sun"],
  sunLoss: ["s,loss", "loss"],
  sunElectric: ["s,el", "sun"],
  source: ["oc", "battery"],
  batteryLoss: ["b,loss", "loss"],
  battery: ["b", "battery"],
  auxiliary: ["aux", undefined],
  outputElectric: ["o,el", "ring"],
  outputLoss: ["o,loss", "loss"],
  outputShaft: ["o", "ring"],
  ring: ["r", "ring"],
  gearsLoss: ["gears", "loss"],
  ringSpin: ["r,spin", undefined],
  wheels: ["w", "ring"],
  air: ["air", "loss"],
  rolling: ["roll", "loss"],
  climbing: ["climb", undefined],
  brake: ["brake", "loss"],
  speedingUp: ["acc", "ring"],
};

/** Watts within which a formula counts as what the log says: flows are kept to seven figures. */
const TOLERANCE = 0.6;

export const flowSymbol = (id: FlowId): Token => sym("P", FLOW_SYMBOL[id][0], FLOW_SYMBOL[id][1]);
const ink = (id: FlowId): WorkingInk | undefined => FLOW_SYMBOL[id][1];

const term = ({ detail }: RoadSource, id: FlowId, sign: 1 | -1): Term => ({
  symbol: flowSymbol(id),
  sign,
  value: detail.flows[id],
});

const nodeOf = (id: FlowNode["id"]): FlowNode => {
  const node = FLOW_NODES.find((one) => one.id === id);
  if (!node) throw new RangeError(`no node ${id}`);
  return node;
};

/** A flow as what its node leaves for it. */
function balance(from: RoadSource, id: FlowId, node: FlowNode["id"], note: string): Lines {
  const { in: ins, out } = nodeOf(node);
  const own = ins.includes(id) ? -1 : 1;
  const terms = [
    ...ins.filter((one) => one !== id).map((one) => term(from, one, own === 1 ? 1 : -1)),
    ...out.filter((one) => one !== id).map((one) => term(from, one, own === 1 ? -1 : 1)),
  ].sort((a, b) => b.sign - a.sign);
  return {
    left: flowSymbol(id),
    formula: sumSymbols(terms),
    live: [txt("("), ...sumValues(terms, 3, 1e-3), txt(") kW")],
    result: kwResult(from.detail.flows[id], ink(id)),
    note,
  };
}

interface Product {
  readonly id: FlowId;
  readonly formula: readonly Token[];
  readonly live: readonly Token[];
  readonly note: string;
}

const flow = (from: RoadSource, { id, formula, live, note }: Product): Lines => ({
  left: flowSymbol(id),
  formula,
  live,
  result: kwResult(from.detail.flows[id], ink(id)),
  note,
});

const TIMES = txt(" × ");

/** Torque times mean speed of the step. */
function turning(
  from: RoadSource,
  id: FlowId,
  shaft: readonly [torque: string, speed: string, ink: WorkingInk],
  torque: number,
  speed: number,
  sign: "" | "−",
): Lines {
  const [own, body, colour] = shaft;
  const minus = sign ? [txt("−")] : [];
  return flow(from, {
    id,
    formula: [...minus, sym("T", own, colour), txt(" "), sym("ω̄", body, colour)],
    live: [
      ...minus,
      sign ? after(torque, 2, "N·m", colour) : val(torque, 2, "N·m", colour),
      TIMES,
      after(speed, 2, "rad/s", colour),
    ],
    note: t.roadWorking.notes.turning,
  });
}

function fuel(from: RoadSource): Lines {
  const { detail, vehicle } = from;
  const { at, mean, friction, indicatedEfficiency, flows } = detail;
  const burns = at.engineOn === 1 && !vehicle.engine.map;
  const value = burns ? ((at.engineTorque + friction) * mean.carrier) / indicatedEfficiency : Number.NaN;
  const lines = (): Lines =>
    flow(from, {
      id: "fuel",
      formula: [
        txt("("),
        sym("T", "e", "carrier"),
        txt(" + "),
        sym("T", "fric"),
        txt(") "),
        sym("ω̄", "c", "carrier"),
        txt(" / "),
        sym("e"),
      ],
      live: [
        txt("("),
        val(at.engineTorque, 2, "N·m", "carrier"),
        txt(" + "),
        val(friction, 2, "N·m"),
        txt(") × "),
        val(mean.carrier, 2, "rad/s", "carrier"),
        txt(" / "),
        val(indicatedEfficiency * 100, 2, "%"),
      ],
      note: t.roadWorking.notes.fuel,
    });
  return firstThatHolds(flows.fuel, TOLERANCE, [{ value, lines }], () =>
    balance(
      from,
      "fuel",
      "engine",
      at.engineOn === 1 ? t.roadWorking.notes.fuelSum : t.roadWorking.notes.fuelOff,
    ),
  );
}

function machineLossLines(
  from: RoadSource,
  id: "sunLoss" | "outputLoss",
  loss: MachineLoss,
  torque: number,
  speed: number,
): Lines {
  const [sub, colour] = id === "sunLoss" ? (["sm", "sun"] as const) : (["om", "ring"] as const);
  const node = id === "sunLoss" ? "sunMachine" : "outputMachine";
  const size = (): Token => val(Math.abs(torque), 2, "", colour);
  const turn = (): Token => val(Math.abs(speed), 2, "", colour);
  const c = (n: string): Token => sym("c", n);
  const lines = (): Lines =>
    flow(from, {
      id,
      formula: [
        ...[c("0"), txt(" + "), c("1"), sym("T", sub, colour), txt("² + "), c("2"), txt("|"), sym("ω̄")],
        ...[
          txt("| + "),
          c("3"),
          txt("|"),
          sym("ω̄"),
          txt("|³ + "),
          c("4"),
          txt("|"),
          sym("T"),
          sym("ω̄"),
          txt("|"),
        ],
      ],
      live: [
        ...[txt("("), constant(loss.loss0), txt(" + "), constant(loss.loss1), TIMES, size(), txt("² + ")],
        ...[
          constant(loss.loss2),
          TIMES,
          turn(),
          txt(" + "),
          constant(loss.loss3),
          TIMES,
          turn(),
          txt("³ + "),
        ],
        ...[constant(loss.loss4), TIMES, size(), TIMES, turn(), txt(") W")],
      ],
      note: id === "sunLoss" ? t.roadWorking.notes.sunLoss : t.roadWorking.notes.outputLoss,
    });
  return firstThatHolds(
    from.detail.flows[id],
    TOLERANCE,
    [{ value: machineLoss(loss, torque, speed), lines }],
    () => balance(from, id, node, t.roadWorking.notes.asleep),
  );
}

/** Inertia × acceleration × mean speed of some bodies, as one sum in watts. */
function spinning(
  from: RoadSource,
  id: FlowId,
  parts: readonly (readonly [sub: string, inertia: number, rate: number, speed: number])[],
  note: string,
): Lines {
  return flow(from, {
    id,
    formula: parts.flatMap(([sub], i) => [
      ...(i > 0 ? [txt(" + ")] : []),
      sym("J", sub),
      sym(" ω̇", sub),
      sym(" ω̄", sub),
    ]),
    live: [
      txt("("),
      ...parts.flatMap(([, inertia, rate, speed], i) => [
        ...(i > 0 ? [txt(" + ")] : []),
        constant(inertia),
        TIMES,
        after(rate, 3),
        TIMES,
        after(speed, 2),
      ]),
      txt(") W"),
    ],
    note,
  });
}

function air(from: RoadSource): Lines {
  const { p, detail, settings } = from;
  const wind = detail.roadMean + settings.headWind;
  const value = (p.dragB + p.dragC * Math.abs(wind)) * wind * detail.roadMean;
  const still = settings.headWind === 0;
  const u = still ? "v̄" : "u";
  const linear = p.dragB !== 0;
  const lines = (): Lines =>
    flow(from, {
      id: "air",
      formula: linear
        ? [txt("("), sym("B"), txt(" + "), sym("C"), txt(`|${u}|) ${u} v̄`)]
        : [sym("C"), txt(` |${u}| ${u} v̄`)],
      live: [
        ...(linear
          ? [txt("("), constant(p.dragB), txt(" + "), constant(p.dragC)]
          : [txt("("), constant(p.dragC)]),
        ...[TIMES, val(Math.abs(wind), 3), txt(linear ? ") × " : " × ")],
        ...[after(wind, 3), TIMES, after(detail.roadMean, 3, "", "ring"), txt(linear ? " W" : ") W")],
      ],
      note: still ? t.roadWorking.notes.air : t.roadWorking.notes.airWind,
    });
  return firstThatHolds(detail.flows.air, TOLERANCE, [{ value, lines }], () =>
    balance(from, "air", "wheels", t.roadWorking.notes.airSum),
  );
}

/** A force at the tyres times the mean road speed; where that does not hold, what the wheels' node leaves. */
function atWheels(
  from: RoadSource,
  id: "rolling" | "climbing" | "brake",
  symbols: readonly Token[],
  force: number,
  speed: number,
  notes: { readonly holds: string; readonly sum: string },
): Lines {
  const lines = (): Lines =>
    flow(from, {
      id,
      formula: symbols,
      live: [val(force, 2, "N"), TIMES, after(speed, 3, "m/s", "ring")],
      note: notes.holds,
    });
  return firstThatHolds(from.detail.flows[id], TOLERANCE, [{ value: force * speed, lines }], () =>
    balance(from, id, "wheels", notes.sum),
  );
}

function rolling(from: RoadSource): Lines {
  const { p, detail, vehicle } = from;
  const cosine = 1 / Math.sqrt(1 + detail.at.grade * detail.at.grade);
  const formula = vehicle.body.roadLoad === "coastdown";
  const symbols = formula ? [sym("A"), txt(" cos θ |v̄|")] : [sym("c", "r"), txt(" m g cos θ |v̄|")];
  return atWheels(from, "rolling", symbols, p.rolling * cosine, Math.abs(detail.roadMean), {
    holds: t.roadWorking.notes.rolling,
    sum: t.roadWorking.notes.rollingSum,
  });
}

function climbing(from: RoadSource): Lines {
  const { p, detail } = from;
  const sine = detail.at.grade / Math.sqrt(1 + detail.at.grade * detail.at.grade);
  return atWheels(from, "climbing", [txt("m g sin θ v̄")], p.weight * sine, detail.roadMean, {
    holds: t.roadWorking.notes.climbing,
    sum: t.roadWorking.notes.climbingSum,
  });
}

function brake(from: RoadSource): Lines {
  const { detail } = from;
  const symbols = [sym("F", "b"), txt(" |v̄|")];
  return atWheels(from, "brake", symbols, detail.at.frictionBrake, Math.abs(detail.roadMean), {
    holds: t.roadWorking.notes.brake,
    sum: t.roadWorking.notes.brakeSum,
  });
}

const notes = t.roadWorking.notes;

const WORKINGS: Readonly<Record<FlowId, (from: RoadSource) => Lines>> = {
  fuel,
  engineLoss: (from) => balance(from, "engineLoss", "engine", notes.engineLoss),
  engine: (from) =>
    turning(from, "engine", ["e", "c", "carrier"], from.detail.at.engineTorque, from.detail.mean.carrier, ""),
  gearSetSpin: (from) => {
    const { p, detail } = from;
    const { rate, mean } = detail;
    return spinning(
      from,
      "gearSetSpin",
      [
        ["c", p.carrierInertia, rate.carrier, mean.carrier],
        ["s", p.sunInertia, rate.sun, mean.sun],
        ["p", p.planetInertia, rate.planet, mean.planet],
      ],
      notes.gearSetSpin,
    );
  },
  meshLoss: (from) =>
    flow(from, {
      id: "meshLoss",
      formula: [
        sym("T", "loss"),
        txt(" ("),
        sym("ω̄", "s", "sun"),
        txt(" − "),
        sym("ω̄", "c", "carrier"),
        txt(")"),
      ],
      live: [
        val(from.detail.meshLoss, 4, "N·m"),
        txt(" × ("),
        val(from.detail.mean.sun, 2, "", "sun"),
        txt(" − "),
        val(from.detail.mean.carrier, 2, "", "carrier"),
        txt(") rad/s"),
      ],
      note: notes.meshLoss,
    }),
  sun: (from) =>
    turning(from, "sun", ["sm", "s", "sun"], from.detail.at.sunMachineTorque, from.detail.mean.sun, "−"),
  sunLoss: (from) =>
    machineLossLines(
      from,
      "sunLoss",
      from.vehicle.sunMachine,
      from.detail.at.sunMachineTorque,
      from.detail.mean.sun,
    ),
  sunElectric: (from) => balance(from, "sunElectric", "sunMachine", notes.sunElectric),
  source: (from) => balance(from, "source", "battery", notes.source),
  batteryLoss: (from) => {
    const { detail } = from;
    const current = detail.at.batteryCurrent;
    const formula = [txt("("), sym("R"), sym(" I"), txt(" + "), sym("U", "1"), txt(") "), sym("I")];
    return flow(from, {
      id: "batteryLoss",
      formula,
      live: [
        txt("("),
        constant(detail.resistance, "Ω"),
        TIMES,
        after(current, 3, "A", "battery"),
        txt(" + "),
        after(detail.polarisation, 4, "V"),
        txt(") × "),
        after(current, 3, "A", "battery"),
      ],
      note: notes.batteryLoss,
    });
  },
  battery: (from) =>
    flow(from, {
      id: "battery",
      formula: [sym("V"), txt(" "), sym("I")],
      live: [
        val(from.detail.at.batteryVoltage, 2, "V", "battery"),
        TIMES,
        after(from.detail.at.batteryCurrent, 3, "A", "battery"),
      ],
      note: notes.battery,
    }),
  auxiliary: (from) =>
    flow(from, {
      id: "auxiliary",
      formula: [flowSymbol("auxiliary")],
      live: [val(from.detail.flows.auxiliary, 0, "W")],
      note: notes.auxiliary,
    }),
  outputElectric: (from) => balance(from, "outputElectric", "outputMachine", notes.outputElectric),
  outputLoss: (from) =>
    machineLossLines(
      from,
      "outputLoss",
      from.vehicle.outputMachine,
      from.detail.at.outputMachineTorque,
      from.detail.mean.output,
    ),
  outputShaft: (from) =>
    turning(
      from,
      "outputShaft",
      ["om", "o", "ring"],
      from.detail.at.outputMachineTorque,
      from.detail.mean.output,
      "",
    ),
  ring: (from) =>
    turning(from, "ring", ["r", "r", "ring"], from.detail.at.ringTorque, from.detail.mean.ring, "−"),
  gearsLoss: (from) => balance(from, "gearsLoss", "ring", notes.gearsLoss),
  ringSpin: (from) =>
    spinning(
      from,
      "ringSpin",
      [["r", from.p.ringSideInertia, from.detail.rate.ring, from.detail.mean.ring]],
      notes.ringSpin,
    ),
  wheels: (from) => balance(from, "wheels", "wheels", notes.wheels),
  air,
  rolling,
  climbing,
  brake,
  speedingUp: (from) => {
    const { p, detail } = from;
    const mass = p.wheelSideInertia / (p.metresPerRing * p.metresPerRing);
    return flow(from, {
      id: "speedingUp",
      formula: [sym("m", "w"), txt(" a v̄")],
      live: [
        val(mass, 1, "kg"),
        TIMES,
        after(detail.rate.ring * p.metresPerRing, 4, "m/s²"),
        TIMES,
        after(detail.roadMean, 3, "m/s", "ring"),
      ],
      note: notes.speedingUp,
    });
  },
};

/** The working of a flow of the sheet. */
export const flowWorking = (id: FlowId, from: RoadSource): Lines => WORKINGS[id](from);

/** The working of a node: what goes in less what comes out. */
export function nodeWorking(id: FlowNode["id"], from: RoadSource): Lines {
  const node = nodeOf(id);
  const terms = [...node.in.map((one) => term(from, one, 1)), ...node.out.map((one) => term(from, one, -1))];
  return {
    left: txt("0"),
    formula: sumSymbols(terms),
    live: [txt("("), ...sumValues(terms, 3, 1e-3), txt(") kW")],
    result: txt(kwResult(nodeRest(from.detail.flows, node)).text),
    note: notes.node,
  };
}
