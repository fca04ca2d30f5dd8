import { bestPoint } from "../../sim/vehicle/engine-best.ts";
import { withEngineMap } from "../../sim/vehicle/engine-map/fit.ts";
import { readEngineMap } from "../../sim/vehicle/engine-map/read.ts";
import type { MapWorker } from "./map-contract.ts";

/** What the worker does, apart from being one. */
export const mapWork: MapWorker = {
  read: ({ text, name, choices, vehicle }) => {
    const { map, ...reading } = readEngineMap(text, name, vehicle.fuel.lowerHeat, choices);
    const fitted = withEngineMap(vehicle, { ...reading, map }, name);
    return { reading, fitted, best: fitted.vehicle ? bestPoint(fitted.vehicle.engine).efficiency : 0 };
  },
};
