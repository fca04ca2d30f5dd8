import { at } from "../../../shared/at.ts";
import type { Flows } from "../../../sim/run/flows.ts";
import { wheelForceReader } from "../../../sim/run/row-detail.ts";
import type { HideableId } from "../../state/predict.ts";
import { preparedRun } from "../../state/prepared.ts";
import type { Run } from "../../state/run.ts";

/** The maps, in the order of their tabs. */
export const MAPS = ["engine", "sunMachine", "outputMachine", "wheels"] as const;

export type MapId = (typeof MAPS)[number];

/** Whose colour a map's point has. */
export const MAP_COLOUR = {
  engine: "carrier",
  sunMachine: "sun",
  outputMachine: "ring",
  wheels: "ring",
} as const satisfies Record<MapId, string>;

/** Asked quantities that would tell one of the point's coordinates. */
const HIDES: Readonly<Record<MapId, readonly HideableId[]>> = {
  engine: ["carrier-speed", "engine-power"],
  sunMachine: ["sun-speed", "sun-machine-power"],
  outputMachine: ["ring-speed", "road-speed", "output-machine-power"],
  wheels: ["road-speed", "ring-speed"],
};

/** Whether the point of a map may not be shown just now. */
export const hidesPoint = (map: MapId, hidden: ReadonlySet<HideableId>): boolean =>
  HIDES[map].some((id) => hidden.has(id));

/** Reads a map's point of a row: speed, rad/s or m/s, and torque, N·m, or force at the tyres, N. */
export type PointReader = (row: number) => readonly [x: number, y: number];

const SPEED = {
  engine: "engineSpeed",
  sunMachine: "sunMachineSpeed",
  outputMachine: "outputMachineSpeed",
  wheels: "speed",
} as const;
const TORQUE = {
  engine: "engineTorque",
  sunMachine: "sunMachineTorque",
  outputMachine: "outputMachineTorque",
} as const;

/** The reader of a map over a run's rows as they are now. */
export function pointReader(map: MapId, { log, request }: Pick<Run, "log" | "request">): PointReader {
  const x = log.view(SPEED[map]);
  if (map === "wheels") {
    const force = wheelForceReader(preparedRun(request).p, log);
    return (row) => [at(x, row), force(row)];
  }
  const y = log.view(TORQUE[map]);
  return (row) => [at(x, row), at(y, row)];
}

/** Power at the point, W: of the engine, at a machine's shaft as it drives, or at the tyres. */
export function powerAt(map: MapId, flows: Flows): number {
  if (map === "engine") return flows.engine;
  if (map === "sunMachine") return -flows.sun;
  if (map === "outputMachine") return flows.outputShaft;
  return flows.wheels - flows.brake;
}

/**
 * Efficiency at the point (0–1): brake work over fuel, or the useful side of a machine over the other. Null where
 * nothing useful comes out, and at the wheels.
 */
export function efficiencyAt(map: MapId, flows: Flows): number | null {
  if (map === "wheels") return null;
  if (map === "engine") return flows.fuel > 0 && flows.engine > 0 ? flows.engine / flows.fuel : null;
  const shaft = map === "sunMachine" ? -flows.sun : flows.outputShaft;
  const electric = map === "sunMachine" ? -flows.sunElectric : flows.outputElectric;
  if (shaft > 0 && electric > 0) return shaft / electric;
  return shaft < 0 && electric < 0 ? electric / shaft : null;
}
