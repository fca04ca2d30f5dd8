import type { ReadonlySignal } from "@preact/signals";
import type { ShaftValues } from "../../sim/bench/shafts.ts";
import type { Vehicle } from "../../sim/parameters/schema.ts";
import type { PartId, SceneAngles } from "../scene/contract.ts";

/** What the gear set in 3D shows: the bench, or an instant of a drive. */
export interface GearSource {
  readonly vehicle: ReadonlySignal<Vehicle>;
  /** integrated shaft angles, rad */
  readonly angles: ReadonlySignal<SceneAngles>;
  /** on the gear set, N·m */
  readonly torques: ReadonlySignal<ShaftValues>;
  /** id of the text with the present values */
  readonly words: string;
  /** a part that is pointed at: outlined and named, whatever the view is set to */
  readonly pointed?: ReadonlySignal<PartId | null>;
  /** turns by itself while `on`, called with seconds of the person's time; none where another clock moves the angles */
  readonly turning?: { readonly on: ReadonlySignal<boolean>; readonly runFor: (seconds: number) => void };
  /** turns a part by hand, rad; none where nothing can be turned by hand */
  readonly turn?: (part: PartId, by: number) => void;
}
