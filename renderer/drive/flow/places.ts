import type { BarId } from "./bars.ts";

/** Size of the sheet and of its text, px. */
export interface SheetSize {
  readonly width: number;
  readonly height: number;
  readonly text: number;
}

/** What takes room up or down, each with as much power as can pass there at a time. */
export const ROOMS = [
  "heat",
  "engine",
  "gearSet",
  "path",
  "sunMachine",
  "battery",
  "dcLink",
  "outputMachine",
  "ring",
  "wheels",
  "turn",
] as const;

/** Name of a room. */
export type RoomId = (typeof ROOMS)[number];

const ACROSS: Readonly<Record<BarId, number>> = {
  engine: 0.1,
  gearSet: 0.222,
  battery: 0.25,
  sunMachine: 0.335,
  dcLink: 0.475,
  outputMachine: 0.63,
  ring: 0.735,
  wheels: 0.826,
};

/**
 * Where everything stands: a matter of the sheet's size alone, so that two moments can be compared by eye.
 * `upper` and `lower` are the feet of the two lanes, `cells` the foot of the battery's ribbon, px.
 */
export function placesOf({ width, height, text }: SheetSize) {
  const cells = 0.172 * height;
  const upper = 0.405 * height;
  const lower = 0.695 * height;
  const foot = height - text * 1.55;
  // Two lines of names stand under the upper lane.
  const path = lower - upper - text * 2.75;
  const lane = lower - upper - text * 0.8;
  const above = upper - cells - text * 1.9;
  const rooms: Readonly<Record<RoomId, number>> = {
    heat: foot - lower - text * 1.15,
    engine: lane - text * 1.6,
    gearSet: lane,
    path,
    sunMachine: above,
    battery: cells - text * 1.55,
    dcLink: upper - cells,
    outputMachine: upper - cells,
    ring: lane,
    wheels: lane,
    turn: lane * 0.32,
  };
  return {
    at: (id: BarId): number => Math.round(width * ACROSS[id]),
    fuel: 2,
    tip: Math.round(width * 0.165),
    heat: Math.round(width * 0.147),
    road: width - text * 7,
    cells,
    upper,
    lower,
    foot,
    rooms,
    width,
    height,
    text,
  };
}

/** The sheet's places. */
export type Places = ReturnType<typeof placesOf>;
