import { limitMeaning, limitsIn } from "../../sim/limits.ts";
import { instant } from "../state/instant.ts";
import { hidden } from "../state/predict.ts";
import { t } from "../texts/catalogue.ts";

/** Ordinary braking sets these all the time: no news. */
const ORDINARY: ReadonlySet<string> = new Set(["axle-share", "low-speed-fade", "regeneration-off"]);

/** The regime of the instant in a sentence, and what binds. */
export function RoadSay() {
  const at = instant.figures.value;
  if (!at) {
    return (
      <div class="say">
        <h3>{t.road.name}</h3>
        <p>{t.road.noRun}</p>
      </div>
    );
  }
  const asks = hidden.value.has("regime");
  const text = t.roadRegimes[at.regime];
  const binding = limitsIn(at.limits).filter((id) => !ORDINARY.has(id));
  return (
    <div class={`say ${binding.length > 0 ? "met" : ""}`}>
      <h3>{asks ? "?" : (text?.title ?? at.regime)}</h3>
      <p>
        {asks ? "" : text?.say}{" "}
        {binding.length > 0 && (
          <span>
            {t.road.say.limits}: {binding.map(limitMeaning).join("; ")}.
          </span>
        )}
      </p>
    </div>
  );
}
