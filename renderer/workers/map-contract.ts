import type { Vehicle } from "../../sim/parameters/schema.ts";
import type { FittedMap } from "../../sim/vehicle/engine-map/fit.ts";
import type { MapChoices, MapReading } from "../../sim/vehicle/engine-map/reading.ts";

/** A table of an engine map that is to be read for a vehicle. */
export interface MapRequest {
  /** of the file, for messages */
  readonly name: string;
  readonly text: string;
  readonly choices: MapChoices;
  readonly vehicle: Vehicle;
}

/** How it was understood, and the vehicle with it. */
export interface MapReply {
  /** its map is the fitted vehicle's */
  readonly reading: Omit<MapReading, "map">;
  readonly fitted: FittedMap;
  /** greatest brake efficiency of the fitted vehicle's engine, 0–1; 0 where there is none */
  readonly best: number;
}

/** Reading of engine maps, which may have 250,000 points. */
export interface MapWorker {
  read(request: MapRequest): MapReply;
}
