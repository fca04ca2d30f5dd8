import type { ComponentType } from "preact";
import { Bench } from "../bench/Bench.tsx";
import { BenchStrip } from "../bench/BenchStrip.tsx";
import { BenchTop } from "../bench/BenchTop.tsx";
import { benchKey } from "../bench/keys.ts";
import { ComparePlace, CompareStrip, CompareTop } from "../compare/ComparePlace.tsx";
import { roadKey } from "../drive/keys.ts";
import { Road } from "../drive/Road.tsx";
import { RoadStrip } from "../drive/RoadStrip.tsx";
import { RoadTop } from "../drive/RoadTop.tsx";
import type { PlaceId } from "../state/place.ts";
import type { IconName } from "../ui/icons.tsx";
import { VehicleSheet } from "../vehicle/VehicleSheet.tsx";
import { VehicleStrip } from "../vehicle/VehicleStrip.tsx";
import { VehicleTop } from "../vehicle/VehicleTop.tsx";

/** What the frame needs of a place. A new place is one entry here, one in state/place.ts, and a name in the texts. */
export interface Place {
  readonly icon: IconName;
  readonly Top: ComponentType;
  readonly Sheet: ComponentType;
  readonly Strip: ComponentType;
  /** A single key without Ctrl, nothing in focus that takes it; true when it did something. */
  readonly key: (event: KeyboardEvent) => boolean;
}

export const PLACE: Readonly<Record<PlaceId, Place>> = {
  bench: { icon: "bench", Top: BenchTop, Sheet: Bench, Strip: BenchStrip, key: benchKey },
  compare: { icon: "compare", Top: CompareTop, Sheet: ComparePlace, Strip: CompareStrip, key: () => false },
  vehicle: { icon: "vehicle", Top: VehicleTop, Sheet: VehicleSheet, Strip: VehicleStrip, key: () => false },
  road: { icon: "road", Top: RoadTop, Sheet: Road, Strip: RoadStrip, key: roadKey },
};
