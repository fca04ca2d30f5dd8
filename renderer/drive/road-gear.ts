import { computed } from "@preact/signals";
import type { GearSource } from "../bench/gear-source.ts";
import { angles, now, run } from "../state/road.ts";
import { vehicle } from "../state/store.ts";

const REST = { sun: 0, carrier: 0, ring: 0 };

/** The gear set as the drive turns it: by the run's integrated angles alone. */
export const roadGear: GearSource = {
  vehicle: computed(() => run.value?.request.vehicle ?? vehicle.value),
  angles,
  torques: computed(() => now.value?.torques ?? REST),
  words: "road-gear-words",
};
