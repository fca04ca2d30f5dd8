import { batch, effect } from "@preact/signals";
import { CycleKeeper, type ObjectStore } from "../state/own-store.ts";
import { cycleId, ownCycles } from "../state/road.ts";
import { t } from "../texts/catalogue.ts";
import { tell } from "./window.ts";

/** Time after the last change at which own cycles are kept, ms. */
const KEEP_AFTER = 250;

const chosenOwn = (): string | null =>
  ownCycles.value.some(({ id }) => id === cycleId.value) ? cycleId.value : null;

/** Brings the kept own cycles back, beside those that are there already. */
async function restore(keeper: CycleKeeper): Promise<void> {
  const kept = await keeper.restore();
  if (kept.broken) tell(t.cycles.notRestored, true);
  if (kept.own.length === 0) return;
  batch(() => {
    const fresh = kept.own.filter((one) => !ownCycles.value.some(({ id }) => id === one.id));
    ownCycles.value = [...ownCycles.value, ...fresh];
    if (fresh.some(({ id }) => id === kept.chosen) && kept.chosen) cycleId.value = kept.chosen;
  });
}

/** A key that no window gives out twice. */
const newKey = (): string =>
  Array.from(crypto.getRandomValues(new Uint32Array(4)), (part) => part.toString(36)).join("-");

/** Brings own cycles back from the device's store, and keeps them there from then on; what cannot be kept is told. */
export async function keepOwnCycles(store: ObjectStore): Promise<void> {
  const keeper = new CycleKeeper(store, newKey);
  await restore(keeper);
  let timer = 0;
  let written: unknown = ownCycles.value;
  let told = false;
  const write = async (): Promise<void> => {
    window.clearTimeout(timer);
    timer = 0;
    const own = ownCycles.value;
    written = own;
    if (await keeper.keep({ own, chosen: chosenOwn() })) told = false;
    else if (!told && own.length > 0) {
      told = true;
      tell(t.cycles.notKept, true);
    }
  };
  let first = true;
  effect(() => {
    chosenOwn();
    if (!first) {
      window.clearTimeout(timer);
      timer = window.setTimeout(() => void write(), KEEP_AFTER);
    }
    first = false;
  });
  window.addEventListener("pagehide", () => {
    if (timer !== 0 || written !== ownCycles.value) void write();
  });
}
