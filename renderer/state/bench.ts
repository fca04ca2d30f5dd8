import {
  following,
  otherThan,
  type Reach,
  reachAbout,
  reachOfShift,
  SHAFTS,
  type Shaft,
  type ShaftValues,
  type SpeedLimits,
  speedLimits,
} from "../../sim/bench/shafts.ts";
import { basicRatio } from "../../sim/drivetrain/gear-set.ts";
import type { Vehicle } from "../../sim/parameters/schema.ts";
import { givenSpeeds, SITUATIONS, type Situation, situationById } from "./situations.ts";

/** Driven at a speed, held still, or left to follow the other two. */
export type Role = "drive" | "hold" | "follow";

/** What is set on the bench: everything that undo, autosave and a project keep of it. */
export interface BenchState {
  /** id of a preset */
  readonly vehicle: string;
  /** rad/s; they satisfy Willis' equation */
  readonly speeds: ShaftValues;
  /** exactly one follows */
  readonly roles: Readonly<Record<Shaft, Role>>;
  /** shafts in the order they were last touched, the latest last */
  readonly touched: readonly Shaft[];
  /** N·m */
  readonly engineTorque: number;
  /** N·m of the output machine; null: the battery rests */
  readonly outputTorque: number | null;
}

/** The shaft whose limit stopped a move, and at which end. */
export interface Stop {
  readonly shaft: Shaft;
  readonly end: "least" | "most";
}

/** A new state, and what stopped short of what was asked. */
export interface Moved {
  readonly state: BenchState;
  readonly stop: Stop | null;
}

/** Speed differences below this are rounding, rad/s. */
const TINY = 1e-7;

const touch = (state: BenchState, shaft: Shaft): readonly Shaft[] => [
  ...state.touched.filter((other) => other !== shaft),
  shaft,
];

const lastTouched = (state: BenchState, shaft: Shaft): number => state.touched.indexOf(shaft);

/** The given shaft that keeps its speed while another is moved: the held one, else the one touched longest ago. */
export function pivotFor(state: BenchState, moved: Shaft): Shaft {
  const given = SHAFTS.filter((shaft) => shaft !== moved && state.roles[shaft] !== "follow");
  const held = given.filter((shaft) => state.roles[shaft] === "hold");
  const from = held.length > 0 ? held : given;
  return (
    [...from].sort((a, b) => lastTouched(state, a) - lastTouched(state, b))[0] ?? otherThan(moved, "sun")
  );
}

function within(value: number, reach: Reach): { value: number; stop: Stop | null } {
  if (value > reach.most + TINY) return { value: reach.most, stop: endOf(reach, "most") };
  if (value < reach.least - TINY) return { value: reach.least, stop: endOf(reach, "least") };
  return { value, stop: null };
}

const endOf = (reach: Reach, end: "least" | "most"): Stop => ({
  shaft: end === "most" ? reach.mostBy : reach.leastBy,
  end,
});

/** Which end of its own range a stopped shaft stands at: the third one may stop at the other end. */
const truly = (stop: Stop, limits: SpeedLimits, speeds: ShaftValues): Stop => {
  const { least, most } = limits[stop.shaft];
  const at = speeds[stop.shaft];
  return { shaft: stop.shaft, end: Math.abs(at - most) < Math.abs(at - least) ? "most" : "least" };
};

/** Moves one shaft about the pivot; the third follows. It stops where any of the three meets its limit. */
export function moveShaft(state: BenchState, v: Vehicle, shaft: Shaft, asked: number): Moved {
  const k = basicRatio(v.gearSet);
  const limits = speedLimits(v);
  const pivot = pivotFor(state, shaft);
  const follower = otherThan(shaft, pivot);
  const { value, stop } = within(asked, reachAbout(k, limits, shaft, pivot, state.speeds[pivot]));
  const speeds = following(k, { ...state.speeds, [shaft]: value }, follower);
  const roles = { ...state.roles, [shaft]: "drive", [follower]: "follow" } as const;
  return {
    state: { ...state, speeds, roles, touched: touch(state, shaft) },
    stop: stop && truly(stop, limits, speeds),
  };
}

/** Shifts the whole line by a speed; nothing is held any more. */
export function shiftLine(state: BenchState, v: Vehicle, by: number): Moved {
  const limits = speedLimits(v);
  const { value, stop } = within(by, reachOfShift(limits, state.speeds));
  const { sun, carrier, ring } = state.speeds;
  const speeds = { sun: sun + value, carrier: carrier + value, ring: ring + value };
  const free = (role: Role): Role => (role === "hold" && value !== 0 ? "drive" : role);
  const roles = {
    sun: free(state.roles.sun),
    carrier: free(state.roles.carrier),
    ring: free(state.roles.ring),
  };
  return { state: { ...state, speeds, roles }, stop };
}

/** Gives a shaft another role. To hold brings it to rest; the shaft that follows is always exactly one. */
export function giveRole(state: BenchState, v: Vehicle, shaft: Shaft, role: Role): Moved {
  if (state.roles[shaft] === role) return { state, stop: null };
  if (role === "follow") {
    const old = SHAFTS.find((other) => state.roles[other] === "follow") ?? otherThan(shaft, "sun");
    const roles = { ...state.roles, [shaft]: "follow", [old]: "drive" } as const;
    return { state: { ...state, roles }, stop: null };
  }
  const moved = moveShaft(state, v, shaft, role === "hold" ? 0 : state.speeds[shaft]);
  if (role === "drive") return moved;
  // A shaft that another's limit keeps from coming to rest is not half held: nothing moves.
  if (Math.abs(moved.state.speeds[shaft]) >= TINY) return { state, stop: moved.stop };
  return { ...moved, state: { ...moved.state, roles: { ...moved.state.roles, [shaft]: "hold" } } };
}

/** Puts a situation on the bench, held shafts at rest. */
export function loadSituation(state: BenchState, v: Vehicle, situation: Situation): BenchState {
  const { speeds, follower } = givenSpeeds(situation);
  const role = (shaft: Shaft): Role =>
    shaft === follower ? "follow" : speeds[shaft] === 0 ? "hold" : "drive";
  return {
    ...state,
    speeds: following(basicRatio(v.gearSet), speeds, follower),
    roles: { sun: role("sun"), carrier: role("carrier"), ring: role("ring") },
    touched: [follower, ...situation.given.map((given) => given.shaft)],
    engineTorque: situation.engineTorque,
    outputTorque: situation.outputTorque,
  };
}

/** The situation that the bench stands in, if it is exactly one. */
export function situationOf(state: BenchState, v: Vehicle): Situation | null {
  const same = (situation: Situation): boolean => {
    const there = loadSituation(state, v, situation);
    return (
      SHAFTS.every((shaft) => Math.abs(there.speeds[shaft] - state.speeds[shaft]) < 0.01) &&
      Math.abs(there.engineTorque - state.engineTorque) < 0.01 &&
      there.outputTorque === state.outputTorque
    );
  };
  return SITUATIONS.find(same) ?? null;
}

/** Another vehicle under the same settings; where its limits do not allow the speeds, its pull-away. */
export function changeVehicle(state: BenchState, id: string, v: Vehicle): BenchState {
  const follower = SHAFTS.find((shaft) => state.roles[shaft] === "follow") ?? "sun";
  const speeds = following(basicRatio(v.gearSet), state.speeds, follower);
  const limits = speedLimits(v);
  const fits = SHAFTS.every((s) => speeds[s] >= limits[s].least - TINY && speeds[s] <= limits[s].most + TINY);
  const next = { ...state, vehicle: id, speeds };
  return fits ? next : loadSituation(next, v, START);
}

const START = situationById("engine-pull-away");

/** The bench as it is first seen: the engine pulling away. */
export function firstBench(id: string, v: Vehicle): BenchState {
  const bare: BenchState = {
    vehicle: id,
    speeds: { sun: 0, carrier: 0, ring: 0 },
    roles: { sun: "follow", carrier: "drive", ring: "drive" },
    touched: SHAFTS,
    engineTorque: 0,
    outputTorque: null,
  };
  return loadSituation(bare, v, START);
}
