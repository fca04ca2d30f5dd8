import { at } from "../../../shared/at.ts";
import { FLOWS, type FlowId, type Flows } from "../../../sim/run/flows.ts";
import { BARS } from "./bars.ts";
import { type Places, ROOMS, type RoomId } from "./places.ts";

/** Most power that passes through each room, W. */
export type Demands = Readonly<Record<RoomId, number>>;

/** What passes through a room: half of all that meets its bar, for it comes in and goes out; or one flow alone. */
const COUNTED: readonly (readonly [RoomId, readonly FlowId[], number])[] = [
  ["heat", ["engineLoss"], 1],
  ["engine", ["engine"], 1],
  ["path", ["ring"], 1],
  ...BARS.filter(({ id }) => id !== "engine").map(
    ({ id, left, right, free }) => [id as RoomId, [...left, ...right, ...free], 0.5] as const,
  ),
];

const PLACED = COUNTED.map(
  ([room, ids, times]) => [ROOMS.indexOf(room), ids.map((id) => FLOWS.indexOf(id)), times] as const,
);

const ROAD_FREE = BARS[7].free.map((id) => FLOWS.indexOf(id));
const WHEELS = FLOWS.indexOf("wheels");
const TURN = ROOMS.indexOf("turn");

/** What turns round the wheels' bar: all that the road takes but what comes to the wheels, W. */
function turnsAtWheels(flows: Float32Array, from: number): number {
  let taken = -Math.max(0, at(flows, from + WHEELS));
  for (const id of ROAD_FREE) taken += Math.max(0, at(flows, from + id));
  return taken;
}

/** Raises the peaks by rows of a log. @param peaks W, in the order of ROOMS; changed */
function raise(peaks: Float64Array, flows: Float32Array, fromRow: number, toRow: number): void {
  for (const [room, ids, times] of PLACED) {
    let most = at(peaks, room);
    for (let row = fromRow; row < toRow; row += 1) {
      const from = row * FLOWS.length;
      let sum = 0;
      for (const id of ids) sum += Math.abs(at(flows, from + id));
      if (sum * times > most) most = sum * times;
    }
    peaks[room] = most;
  }
  let most = at(peaks, TURN);
  for (let row = fromRow; row < toRow; row += 1) {
    most = Math.max(most, turnsAtWheels(flows, row * FLOWS.length));
  }
  peaks[TURN] = most;
}

const named = (peaks: Float64Array): Demands =>
  Object.fromEntries(ROOMS.map((id, index) => [id, at(peaks, index)])) as Record<RoomId, number>;

/** Demands of one instant. */
export function demandsOf(flows: Flows): Demands {
  const peaks = new Float64Array(ROOMS.length);
  raise(
    peaks,
    Float32Array.from(FLOWS, (id) => flows[id]),
    0,
    1,
  );
  return named(peaks);
}

interface Known {
  rows: number;
  readonly peaks: Float64Array;
  demands: Demands;
}

const known = new WeakMap<object, Known>();

/**
 * Greatest demands of a run. A log that has grown since is only read from where it was left.
 * @param owner what the peaks belong to: they are kept as long as it lives
 */
export function peaksOf(
  owner: object,
  log: { readonly flows: Float32Array; readonly rows: number },
): Demands {
  const found = known.get(owner);
  if (found?.rows === log.rows) return found.demands;
  const peaks = found?.peaks ?? new Float64Array(ROOMS.length);
  raise(peaks, log.flows, found?.rows ?? 0, log.rows);
  const demands = named(peaks);
  known.set(owner, { rows: log.rows, peaks, demands });
  return demands;
}

/** A sheet is never scaled up beyond this power for its fullest bar, W: at rest, little shall look little. */
const LEAST_FULL = 4000;

/** px a watt so that everything has its room. */
export function scaleFor({ rooms }: Places, demands: Demands): number {
  const most = rooms.dcLink / LEAST_FULL;
  return ROOMS.reduce((least, id) => Math.min(least, rooms[id] / Math.max(1, demands[id])), most);
}

/** The ratio between two steps of the moment's scale. */
const STEP = 1.25;

/** The same in steps, so that the scale holds still while little changes. */
export function steppedScale(places: Places, demands: Demands): number {
  const exact = scaleFor(places, demands);
  return STEP ** Math.floor(Math.log(exact) / Math.log(STEP) + 1e-9);
}
