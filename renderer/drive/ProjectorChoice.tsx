import { projected } from "../state/road.ts";
import { t } from "../texts/catalogue.ts";

/** In projector mode: power or time beside the lever line. */
export const ProjectorChoice = () => (
  <fieldset class="segments" aria-label={t.road.projectorViewsName}>
    {(["flow", "plots"] as const).map((view) => (
      <button
        key={view}
        type="button"
        aria-pressed={projected.value === view}
        onClick={() => {
          projected.value = view;
        }}
      >
        {t.road.projectorViews[view]}
      </button>
    ))}
  </fieldset>
);
