import { computed } from "@preact/signals";
import type { PartId } from "../scene/contract.ts";
import { reducedMotion } from "../state/settings.ts";
import { bench, point, vehicle } from "../state/store.ts";
import { angles, playing, runFor, turnByHand } from "../state/turning.ts";
import type { GearSource } from "./gear-source.ts";
import { partSpeed, SHAFT_OF } from "./parts.ts";

/** Turns the dragged part's shaft; a part that is no shaft turns the ring or carrier that moves it. */
function turnPart(part: PartId, by: number): void {
  const shaft = SHAFT_OF[part];
  if (shaft) {
    turnByHand(shaft, by);
    return;
  }
  const speed = partSpeed(part, vehicle.value, bench.value.speeds);
  const { ring, carrier } = bench.value.speeds;
  if (Math.abs(speed) < 1e-6) return;
  if (Math.abs(ring) > 1e-6) turnByHand("ring", (by * ring) / speed);
  else turnByHand("carrier", (by * carrier) / speed);
}

/** The gear set as the bench turns it. */
export const benchGear: GearSource = {
  vehicle,
  angles,
  torques: computed(() => point.value.torques),
  words: "gear-words",
  turning: { on: computed(() => playing.value && !reducedMotion.value), runFor },
  turn: turnPart,
};
