import type { Shaft } from "../../sim/bench/shafts.ts";
import type { WorkingId } from "../state/working.ts";
import { t } from "../texts/catalogue.ts";

type OfShaft = "speed" | "torque" | "power" | "turns" | "limit" | "per";

const OF_SHAFT: Readonly<Record<OfShaft, (shaft: string) => string>> = {
  speed: t.working.speed,
  torque: t.working.torque,
  power: t.working.power,
  turns: t.working.turns,
  limit: t.working.limit,
  per: t.bench.working.per,
};

const SINGLE: Readonly<Record<Exclude<WorkingId, `${string}:${string}`>, string>> = {
  "full-load": t.working.fullLoad,
  electrical: t.working.electrical,
  output: t.working.output,
  "output-power": t.bench.working.outputPower,
  "output-most": t.bench.working.outputMost,
  battery: t.working.battery,
  ratio: t.working.ratio,
  road: t.working.road,
  balance: t.bench.working.balance,
};

/** What the number of a working is called. */
export function workingTitle(id: WorkingId): string {
  if (id in SINGLE) return SINGLE[id as keyof typeof SINGLE];
  const [kind, shaft] = id.split(":") as [OfShaft, Shaft];
  return OF_SHAFT[kind](t.shafts[shaft]);
}
