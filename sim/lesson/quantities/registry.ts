import { SHAFTS, type Shaft } from "../../bench/shafts.ts";
import { LEDGER_LINES } from "../../run/ledger.ts";
import { REGIMES } from "../../run/regimes.ts";
import { unitById } from "../units.ts";
import { ofShaft, symbol } from "../working.ts";
import * as bench from "./bench.ts";
import * as moment from "./moment.ts";
import { type Quantity, quantity } from "./quantity.ts";
import * as run from "./run.ts";

const RPM = unitById("rev/min");
const NM = unitById("N·m");
const KW = unitById("kW");
const KJ = unitById("kJ");
const KMH = unitById("km/h");
const PERCENT = unitById("%");
const NUMBER = unitById("");
const SECOND = unitById("s");

const TORQUE_CHANNEL = { sun: "sunTorque", carrier: "carrierTorque", ring: "ringTorque" } as const;

const ofShafts = (make: (shaft: Shaft) => Quantity[]): Quantity[] => SHAFTS.flatMap(make);

const SHAFT_QUANTITIES = ofShafts((shaft) => [
  quantity(`${shaft} speed`, `speed of the ${shaft}, positive forward`, RPM, {
    bench: bench.benchSpeed(shaft),
    moment: moment.momentSpeed(shaft),
    at: `speed:${shaft}`,
  }),
  quantity(`${shaft} torque`, `torque of the ${shaft} on the gear set, positive forward`, NM, {
    bench: bench.benchTorque(shaft),
    moment: moment.channel(TORQUE_CHANNEL[shaft], NM, ofShaft("T", shaft)),
    at: `torque:${shaft}`,
  }),
  quantity(`${shaft} power`, `power that the ${shaft} puts into the gear set`, KW, {
    bench: bench.benchPower(shaft),
    ...(shaft === "carrier"
      ? { moment: moment.flowing("engine", ofShaft("P", shaft)) }
      : { moment: moment.flowing(shaft, ofShaft("P", shaft), -1) }),
    at: `power:${shaft}`,
  }),
  quantity(`${shaft} speed limit`, `greatest speed that the ${shaft} bears`, RPM, {
    bench: bench.benchSpeedLimit(shaft),
    at: `limit:${shaft}`,
  }),
]);

const TEETH_QUANTITIES: Quantity[] = [
  quantity("basic ratio", "k, ring teeth over sun teeth", NUMBER, {
    bench: bench.basicRatioReading,
    at: "ratio",
  }),
  quantity("sun teeth", "teeth of the sun", NUMBER, { bench: bench.teeth("sunTeeth") }),
  quantity("planet teeth", "teeth of one planet", NUMBER, { bench: bench.teeth("planetTeeth") }),
  quantity("ring teeth", "teeth of the ring", NUMBER, { bench: bench.teeth("ringTeeth") }),
  quantity("sun torque share", "share of the engine's torque that the sun bears, 1/(1 + k)", PERCENT, {
    bench: bench.torqueShare("sun"),
  }),
  quantity("ring torque share", "share of the engine's torque at the ring, k/(1 + k)", PERCENT, {
    bench: bench.torqueShare("ring"),
  }),
  quantity("rest ratio", "ring speed over carrier speed with the sun at rest, (1 + k)/k", NUMBER, {
    bench: bench.restRatio,
  }),
  quantity("speed ratio", "ring speed over carrier speed", NUMBER, {
    bench: bench.benchSpeedRatio,
    moment: moment.momentSpeedRatio,
  }),
];

const POWER_QUANTITIES: Quantity[] = [
  quantity("engine torque", "torque of the engine on the carrier", NM, {
    bench: bench.benchTorque("carrier"),
    moment: moment.channel("engineTorque", NM, ofShaft("T", "carrier")),
    at: "torque:carrier",
  }),
  quantity("engine power", "power of the engine into the gear set", KW, {
    bench: bench.benchPower("carrier"),
    moment: moment.flowing("engine", ofShaft("P", "carrier")),
    at: "power:carrier",
  }),
  quantity("full load torque", "greatest torque of the engine at its speed", NM, {
    bench: bench.benchFullLoad,
    at: "full-load",
  }),
  quantity("mechanical power", "power through the gear set straight to the ring", KW, {
    bench: bench.benchMechanical,
    moment: moment.flowing("ring", symbol("P", "mechanical")),
  }),
  quantity("electrical power", "power from the sun to the DC link, negative when it runs back", KW, {
    bench: bench.benchElectrical,
    moment: moment.flowing("sunElectric", symbol("P", "electrical")),
    at: "electrical",
  }),
  quantity("circulating power", "power that runs round both paths and never reaches the road", KW, {
    bench: bench.benchCirculating,
  }),
  quantity("mechanical share", "share of the engine's power straight to the ring", PERCENT, {
    bench: bench.benchMechanicalShare,
    moment: moment.flowShare("ring", "engine", ["mechanical", "engine"]),
    run: run.runMechanicalShare,
  }),
  quantity("electrical share", "share of the engine's power by way of the sun machine", PERCENT, {
    bench: bench.benchElectricalShare,
    moment: moment.flowShare("sun", "engine", ["electrical", "engine"]),
    run: run.runElectricalShare,
  }),
  quantity("circulating share", "circulating energy over the engine's work", PERCENT, {
    run: run.runCirculatingShare,
  }),
  quantity("output machine torque", "torque of the output machine on its own shaft", NM, {
    bench: bench.benchOutputTorque,
    moment: moment.channel("outputMachineTorque", NM, symbol("T", "o")),
    at: "output",
  }),
  quantity("output machine power", "shaft power of the output machine, positive when it drives", KW, {
    bench: bench.benchOutputPower,
    moment: moment.flowing("outputShaft", symbol("P", "o")),
    at: "output",
  }),
  quantity("battery power", "power out of the battery, negative when it is charged", KW, {
    bench: bench.benchBattery,
    moment: moment.flowing("battery", symbol("P", "battery")),
    at: "battery",
  }),
  quantity("road speed", "speed on the road", KMH, {
    bench: bench.benchRoad,
    moment: moment.channel("speed", KMH, symbol("v")),
    at: "road",
  }),
];

const MOMENT_QUANTITIES: Quantity[] = [
  quantity("fuel power", "energy of the fuel burnt each second", KW, {
    moment: moment.flowing("fuel", symbol("P", "fuel")),
  }),
  quantity("charge", "state of charge", PERCENT, {
    moment: moment.channel("soc", PERCENT, symbol("charge")),
  }),
  quantity("time", "time since the start", SECOND, { moment: moment.channel("time", SECOND, symbol("t")) }),
];

const RUN_QUANTITIES: Quantity[] = [
  quantity("fuel raw", "fuel over distance as burnt", unitById("L/100 km"), { run: run.rawFuel }),
  quantity("fuel balanced", "fuel over distance, corrected to equal charge", unitById("L/100 km"), {
    run: run.balancedFuel,
  }),
  quantity("balance slope", "fuel energy that stands for one unit of battery energy", NUMBER, {
    run: run.balanceSlope,
  }),
  quantity("fuel energy", "energy of all fuel burnt", KJ, {
    run: run.counted((s) => s.fuel.energy_j, KJ, "summed over every step"),
  }),
  quantity("charge at start", "state of charge at the start", PERCENT, {
    run: run.counted((s) => s.battery.soc_start, PERCENT, "read at the start"),
  }),
  quantity("charge at end", "state of charge at the end", PERCENT, {
    run: run.counted((s) => s.battery.soc_end, PERCENT, "read at the end"),
  }),
  quantity("charge change", "state of charge at the end less that at the start", PERCENT, {
    run: run.chargeChange,
  }),
  quantity("battery net energy", "energy that the battery gave in all, negative when it was charged", KJ, {
    run: run.counted((s) => s.battery.net_j, KJ, "summed over every step"),
  }),
  quantity("recovery share", "energy into the battery from braking over energy asked by braking", PERCENT, {
    run: run.energyShare(
      (s) => s.recovered.into_battery_j,
      (s) => s.recovered.asked_at_wheels_j,
      ["battery", "asked"],
      "Only charge that came from braking counts, none that the engine made.",
    ),
  }),
  quantity("braking energy", "energy asked at the wheels by braking", KJ, {
    run: run.counted((s) => s.recovered.asked_at_wheels_j, KJ, "braking force × way, summed"),
  }),
  quantity("recovered energy", "energy into the battery from braking", KJ, {
    run: run.counted((s) => s.recovered.into_battery_j, KJ, "summed over every step of braking"),
  }),
  quantity("friction brake energy", "heat of the friction brakes while braking", KJ, {
    run: run.counted((s) => s.recovered.friction_brakes_j, KJ, "brake force × way, summed"),
  }),
  quantity("engine starts", "starts of the engine", NUMBER, {
    run: run.counted((s) => s.engine.starts, NUMBER, "counted"),
  }),
  quantity("engine time", "time with the engine running", SECOND, {
    run: run.counted((s) => s.engine.seconds_on, SECOND, "counted"),
  }),
  quantity("engine work", "work of the engine on the carrier", KJ, {
    run: run.counted((s) => s.engine.work_j, KJ, "torque × angle, summed"),
  }),
  quantity("mean efficiency", "work of the engine over the energy of all fuel", PERCENT, {
    run: run.energyShare(
      (s) => s.engine.work_j,
      (s) => s.fuel.energy_j,
      ["work", "fuel"],
      "Starting fuel and idling count against it.",
    ),
  }),
  quantity("distance", "distance driven", unitById("km"), {
    run: run.counted((s) => s.distance_m, unitById("km"), "speed × time, summed"),
  }),
  quantity("duration", "time from start to end", SECOND, {
    run: run.counted((s) => s.duration_s, SECOND, "read at the end"),
  }),
  quantity("mean speed", "distance over time, stops included", KMH, { run: run.meanSpeed }),
  ...REGIMES.map(({ id, title }) =>
    quantity(`time in ${id}`, `time in the regime "${title.toLowerCase()}"`, SECOND, {
      run: run.regimeTime(id),
    }),
  ),
  ...LEDGER_LINES.map(({ id, title }) =>
    quantity(`ledger ${id.replaceAll("_", "-")}`, `energy ledger: ${title}`, KJ, {
      run: run.ledgerReading(id),
    }),
  ),
];

/** Every number that a lesson can show or ask for, of the bench, of an instant and of a run. */
export const QUANTITIES: readonly Quantity[] = [
  ...SHAFT_QUANTITIES,
  ...TEETH_QUANTITIES,
  ...POWER_QUANTITIES,
  ...MOMENT_QUANTITIES,
  ...RUN_QUANTITIES,
];

const byName = new Map(QUANTITIES.map((entry) => [entry.name, entry]));

/** The quantity of a name, or undefined. */
export const quantityByName = (name: string): Quantity | undefined => byName.get(name);
