import type { BenchLimit } from "../../sim/bench/limits.ts";
import { idleShown, kilowatts, num, shaftSpeed, shaftUnitName } from "../state/format.ts";
import { units } from "../state/settings.ts";
import { limits, point, stopped } from "../state/store.ts";
import { t } from "../texts/catalogue.ts";

interface Sentence {
  readonly title: string;
  readonly why: string;
}

const IN_KW: ReadonlySet<string> = new Set(["battery-discharge", "battery-charge"]);

function limitSentence({ id, limit, value }: BenchLimit): Sentence {
  if (id === "below-idle") return t.limits[id](num(idleShown(units.value, limit)), "");
  const say = (n: number): string => (IN_KW.has(id) ? kilowatts(n) : num(n, 1));
  return t.limits[id](say(limit), say(value));
}

function regimeSentence(): Sentence {
  const { flows, shares, regime, speeds } = point.value;
  const text = t.regimes[regime];
  if (!text) return { title: regime, why: "" };
  const why = text.say({
    electrical: num((shares?.electrical ?? 0) * 100),
    circulating: kilowatts(Math.abs(flows.sun)),
    battery: kilowatts(Math.abs(flows.battery)),
    sun: shaftSpeed(units.value, speeds.sun),
  });
  return { title: text.title, why };
}

/** What there is to say: why a move stopped, what limit a torque meets, else the regime. */
function sentenceNow(): Sentence & { readonly limit: boolean } {
  const stop = stopped.value;
  if (stop) {
    const end = limits.value[stop.shaft][stop.end];
    const at = `${shaftSpeed(units.value, Math.abs(end))} ${shaftUnitName(units.value)}`;
    return { ...t.stops[stop.shaft][stop.end](at), limit: true };
  }
  const met = point.value.limits.find((limit) => limit.id !== "below-idle");
  return met ? { ...limitSentence(met), limit: true } : { ...regimeSentence(), limit: false };
}

/** The regime in a sentence; a limit that is met takes its place and says why. */
export function Say() {
  const { title, why, limit } = sentenceNow();
  return (
    <div class={`say ${limit ? "met" : ""}`} aria-live="polite">
      <h3>{title}</h3>
      <p>{why}</p>
    </div>
  );
}
