import { brief, readable } from "../../../shared/readable.ts";
import { roadOfRing, type Shaft, speedLimits } from "../../bench/shafts.ts";
import { mechanicalPoint } from "../../drivetrain/gear-set.ts";
import { pathsAt } from "../../run/power-paths.ts";
import { sayNumber } from "../say.ts";
import { unitById } from "../units.ts";
import { live, ofShaft, row, symbol, type WorkToken } from "../working.ts";
import type { BenchStage, Reading } from "./quantity.ts";

const RPM = unitById("rev/min");
const NM = unitById("N·m");
const KW = unitById("kW");

const k = symbol("k");

const rpm = (value: number, shaft: Shaft): WorkToken => live(sayNumber(value, RPM), shaft);
const nm = (value: number, shaft: Shaft): WorkToken => live(sayNumber(value, NM), shaft);
const kw = (value: number, shaft?: Shaft): WorkToken => live(sayNumber(value, KW), shaft);
const ratio = (value: number): WorkToken => live(brief(value));

const TEETH = "k = ring teeth / sun teeth; speeds in rev/min.";

/** Speed of a shaft, by Willis' equation from the other two: (1 + k) ωc = ωs + k ωr. */
export function benchSpeed(shaft: Shaft): Reading<BenchStage> {
  const [s, c, r] = [ofShaft("N", "sun"), ofShaft("N", "carrier"), ofShaft("N", "ring")];
  const formula = {
    sun: row("(1 + ", k, ") ", c, " − ", k, " ", r),
    carrier: row("(", s, " + ", k, " ", r, ") / (1 + ", k, ")"),
    ring: row("((1 + ", k, ") ", c, " − ", s, ") / ", k),
  };
  return {
    of: ({ point }) => point.speeds[shaft],
    working: ({ point }) => {
      const { sun, carrier, ring } = point.speeds;
      const [kk, k1] = [ratio(point.k), ratio(1 + point.k)];
      const [ns, nc, nr] = [rpm(sun, "sun"), rpm(carrier, "carrier"), rpm(ring, "ring")];
      const lines = {
        sun: row(k1, " × ", nc, " − ", kk, " × ", nr),
        carrier: row("(", ns, " + ", kk, " × ", nr, ") / ", k1),
        ring: row("(", k1, " × ", nc, " − ", ns, ") / ", kk),
      };
      return { symbol: ofShaft("N", shaft), formula: formula[shaft], live: lines[shaft], note: TEETH };
    },
  };
}

/** Torque of a shaft on the gear set, lossless and steady: Ts = −Tc/(1 + k), Tr = −k Tc/(1 + k). */
export function benchTorque(shaft: Shaft): Reading<BenchStage> {
  const c = ofShaft("T", "carrier");
  const formula = {
    sun: row("−", c, " / (1 + ", k, ")"),
    carrier: row(c),
    ring: row("−", k, " ", c, " / (1 + ", k, ")"),
  };
  return {
    of: ({ point }) => point.torques[shaft],
    working: ({ point }) => {
      const engine = nm(point.torques.carrier, "carrier");
      const k1 = ratio(1 + point.k);
      const lines = {
        sun: row("−", engine, " / ", k1),
        carrier: row(engine),
        ring: row("−", ratio(point.k), " × ", engine, " / ", k1),
      };
      const note =
        "Steady: nothing speeds up, so the torques add up to nothing, and so do their moments about any shaft.";
      return { symbol: ofShaft("T", shaft), formula: formula[shaft], live: lines[shaft], note };
    },
  };
}

/** Power of a shaft into the gear set: T ω. */
export function benchPower(shaft: Shaft): Reading<BenchStage> {
  return {
    of: ({ point }) => point.powers[shaft],
    working: ({ point }) => ({
      symbol: ofShaft("P", shaft),
      formula: row(ofShaft("T", shaft), " ", ofShaft("ω", shaft)),
      live: row(
        nm(point.torques[shaft], shaft),
        " N·m × ",
        live(readable(point.speeds[shaft], 1), shaft),
        " rad/s",
      ),
      note: "ω in rad/s: rev/min × π / 30. Positive: put into the gear set.",
    }),
  };
}

const engineOf = ({ point }: BenchStage): number => point.flows.engine;

/** Power that the sun machine takes from the gear set and passes on as electricity, lossless. */
export const benchElectrical: Reading<BenchStage> = {
  of: ({ point }) => point.flows.sun,
  working: ({ point }) => ({
    symbol: symbol("P", "electrical"),
    formula: row("−", ofShaft("T", "sun"), " ", ofShaft("ω", "sun")),
    live: row(
      "−",
      nm(point.torques.sun, "sun"),
      " N·m × ",
      live(readable(point.speeds.sun, 1), "sun"),
      " rad/s",
    ),
    note: "What the sun takes out of the gear set, its machine makes into electricity.",
  }),
};

/** Power straight through the gear set to the ring. */
export const benchMechanical: Reading<BenchStage> = {
  of: ({ point }) => point.flows.ring,
  working: ({ point }) => ({
    symbol: symbol("P", "mechanical"),
    formula: row("−", ofShaft("T", "ring"), " ", ofShaft("ω", "ring")),
    live: row(
      "−",
      nm(point.torques.ring, "ring"),
      " N·m × ",
      live(readable(point.speeds.ring, 1), "ring"),
      " rad/s",
    ),
    note: "The ring takes this out of the gear set by its teeth.",
  }),
};

/** Power that runs round the two electrical and mechanical paths without reaching the road. */
export const benchCirculating: Reading<BenchStage> = {
  of: ({ point }) =>
    point.flows.engine > 0
      ? pathsAt(point.k, point.torques.carrier, point.speeds.carrier, point.speeds.sun).circulating
      : 0,
  working: ({ point }) => ({
    symbol: symbol("P", "circulating"),
    formula: row(symbol("P", "mechanical"), " − ", ofShaft("P", "carrier"), ", if more than 0"),
    live: row(kw(point.flows.ring, "ring"), " kW − ", kw(point.flows.engine, "carrier"), " kW"),
    note: "More goes through the ring than the engine gives: the rest comes back through the sun machine.",
  }),
};

const share = (part: "ring" | "sun", name: string): Reading<BenchStage> => ({
  of: (stage) => stage.point.flows[part] / engineOf(stage),
  working: (stage) => ({
    symbol: symbol("share"),
    formula: row(symbol("P", name), " / ", ofShaft("P", "carrier")),
    live: row(
      kw(stage.point.flows[part], part === "ring" ? "ring" : "sun"),
      " kW / ",
      kw(engineOf(stage), "carrier"),
      " kW",
    ),
    note: "Both shares together are the engine's whole power.",
  }),
});

/** Shares of the engine's power. */
export const benchMechanicalShare = share("ring", "mechanical");
export const benchElectricalShare = share("sun", "electrical");

/** The output machine: torque on its own shaft, and power. */
export const benchOutputTorque: Reading<BenchStage> = {
  of: ({ point }) => point.output.torque,
  working: ({ point }) => ({
    symbol: symbol("T", "o"),
    formula: row(symbol("P", "o"), " / ", symbol("ω", "o")),
    live: row(
      kw(point.flows.outputMachine, "ring"),
      " kW / ",
      live(readable(point.output.speed, 1), "ring"),
      " rad/s",
    ),
    note: "The output machine turns faster than the ring by its reduction.",
  }),
};

/** Power of the output machine: positive when it drives. */
export const benchOutputPower: Reading<BenchStage> = {
  of: ({ point }) => point.flows.outputMachine,
  working: ({ point }) => ({
    symbol: symbol("P", "o"),
    formula: row(symbol("T", "o"), " ", symbol("ω", "o")),
    live: row(
      live(sayNumber(point.output.torque, NM), "ring"),
      " N·m × ",
      live(readable(point.output.speed, 1), "ring"),
      " rad/s",
    ),
    note: "Speed of its own shaft: ring speed × reduction.",
  }),
};

/** Power out of the battery. */
export const benchBattery: Reading<BenchStage> = {
  of: ({ point }) => point.flows.battery,
  working: ({ point }) => ({
    symbol: symbol("P", "battery"),
    formula: row(symbol("P", "o"), " − ", symbol("P", "electrical")),
    live: row(kw(point.flows.outputMachine, "ring"), " kW − ", kw(point.flows.sun, "sun"), " kW"),
    note: "At the DC link everything adds up: the battery gives what the two machines do not settle between them.",
  }),
};

/** Road speed of the ring. */
export const benchRoad: Reading<BenchStage> = {
  of: ({ vehicle, point }) => roadOfRing(vehicle, point.speeds.ring),
  working: ({ vehicle, point }) => ({
    symbol: symbol("v"),
    formula: row(ofShaft("ω", "ring"), " ", symbol("r", "w"), " / ", symbol("i", "f")),
    live: row(
      live(readable(point.speeds.ring, 1), "ring"),
      " rad/s × ",
      ratio(vehicle.body.wheelRadius),
      " m / ",
      ratio(vehicle.finalDrive.ratio),
    ),
    note: "Wheel radius and final drive ratio of the vehicle; the result is in m/s first.",
  }),
};

/** Ring speed over carrier speed. */
export const benchSpeedRatio: Reading<BenchStage> = {
  of: ({ point }) => point.speeds.ring / point.speeds.carrier,
  working: ({ point }) => ({
    symbol: symbol("ratio"),
    formula: row(ofShaft("N", "ring"), " / ", ofShaft("N", "carrier")),
    live: row(rpm(point.speeds.ring, "ring"), " / ", rpm(point.speeds.carrier, "carrier")),
    note: "Output speed for one turn of the engine.",
  }),
};

/** What follows from the teeth alone. */
export const basicRatioReading: Reading<BenchStage> = {
  of: ({ point }) => point.k,
  working: ({ vehicle }) => ({
    symbol: k,
    formula: row(ofShaft("z", "ring"), " / ", ofShaft("z", "sun")),
    live: row(
      live(String(vehicle.gearSet.ringTeeth), "ring"),
      " / ",
      live(String(vehicle.gearSet.sunTeeth), "sun"),
    ),
    note: "z counts teeth.",
  }),
};

/** Share of the engine's torque at the sun, 1/(1 + k), and at the ring, k/(1 + k). */
export const torqueShare = (shaft: "sun" | "ring"): Reading<BenchStage> => ({
  of: ({ point }) => (shaft === "sun" ? 1 : point.k) / (1 + point.k),
  working: ({ point }) => ({
    symbol: symbol("share"),
    formula: shaft === "sun" ? row("1 / (1 + ", k, ")") : row(k, " / (1 + ", k, ")"),
    live: shaft === "sun" ? row("1 / ", ratio(1 + point.k)) : row(ratio(point.k), " / ", ratio(1 + point.k)),
    note: "Only teeth stand in it: no speed, no power.",
  }),
});

/** Ring speed over carrier speed at which the sun rests. */
export const restRatio: Reading<BenchStage> = {
  of: ({ point }) => mechanicalPoint(point.k),
  working: ({ point }) => ({
    symbol: symbol("ratio"),
    formula: row("(1 + ", k, ") / ", k),
    live: row(ratio(1 + point.k), " / ", ratio(point.k)),
    note: "The gear equation with the sun at 0.",
  }),
};

/** Full-load torque of the engine at its speed; 0 where it does not fire. */
export const benchFullLoad: Reading<BenchStage> = {
  of: ({ point }) => point.engine.most,
  working: ({ point }) => ({
    symbol: symbol("T", "full"),
    formula: row("read off the full-load curve at ", ofShaft("N", "carrier")),
    live: row(rpm(point.speeds.carrier, "carrier"), " rev/min"),
    note: "The curve of the vehicle's engine, linear between its points.",
  }),
};

/** Greatest speed that a shaft bears. */
export const benchSpeedLimit = (shaft: Shaft): Reading<BenchStage> => ({
  of: ({ vehicle }) => speedLimits(vehicle)[shaft].most,
  working: ({ vehicle }) => ({
    symbol: ofShaft("N", shaft),
    formula: row("greatest speed of what turns with the shaft"),
    live: row(rpm(speedLimits(vehicle)[shaft].most, shaft), " rev/min"),
    note: "A parameter of the vehicle.",
  }),
});

/** Teeth of a wheel. */
export const teeth = (wheel: "sunTeeth" | "planetTeeth" | "ringTeeth"): Reading<BenchStage> => ({
  of: ({ vehicle }) => vehicle.gearSet[wheel],
  working: ({ vehicle }) => ({
    symbol: symbol("z"),
    formula: row("counted"),
    live: row(live(String(vehicle.gearSet[wheel]))),
    note: "A parameter of the gear set.",
  }),
});
