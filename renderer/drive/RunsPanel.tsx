import { num } from "../state/format.ts";
import { balances, lookAt, run, runs } from "../state/road.ts";
import type { Run } from "../state/run.ts";
import { t } from "../texts/catalogue.ts";
import { openPanel } from "./panel.ts";

const litres = (one: Run): string => {
  const found = balances.value.get(one.id) ?? null;
  if (found !== null && found !== "under way" && found.balanced)
    return `${num(found.litresPer100Km, 2)} ${t.road.balanced}`;
  return one.summary ? `${num(one.summary.fuel.l_per_100km, 2)} ${t.road.raw}` : "";
};

/** The last runs: a click looks at one. */
export const RunsPanel = () => (
  <ol class="runs">
    {[...runs.value].reverse().map((one) => (
      <li key={one.id}>
        <button
          type="button"
          aria-current={one === run.value ? "true" : undefined}
          onClick={() => {
            lookAt(one);
            openPanel.value = null;
          }}
        >
          <span>{one.name}</span>
          <b>{litres(one)}</b>
        </button>
      </li>
    ))}
  </ol>
);
