import { signal } from "@preact/signals";
import { ViewHead } from "../bench/ViewHead.tsx";
import { t } from "../texts/catalogue.ts";
import { Choice } from "./Choice.tsx";
import { CompareTable } from "./CompareTable.tsx";
import { EngineCloud } from "./EngineCloud.tsx";
import { Overlays } from "./Overlays.tsx";
import { planned } from "./planned.ts";
import { Reasons } from "./Reasons.tsx";
import { against, boundOf, jobs, laid, pickedResult, reference } from "./state.ts";

const c = t.compare;

const LOOKS = ["time", "engine"] as const;

/** How the lines are laid over each other: over time, or on the engine's map. */
const look = signal<(typeof LOOKS)[number]>("time");

/** What the picked line is held against: another line, or the least fuel possible. */
function ReferenceChoice() {
  const one = pickedResult.value;
  const over = against.value;
  return (
    <label class="reference">
      {c.reference}{" "}
      <select
        value={over ? (over.result?.row.index ?? "bound") : ""}
        onChange={(event) => {
          const { value } = event.currentTarget;
          reference.value = value === "bound" ? "bound" : Number(value);
        }}
      >
        {one && boundOf(one)?.feasible && look.value === "time" && <option value="bound">{c.bound}</option>}
        {laid.value.map(({ row }) => (
          <option key={row.index} value={row.index}>
            {row.strategy.title}
          </option>
        ))}
      </select>
    </label>
  );
}

const LookChoice = () => (
  <fieldset class="segments" aria-label={c.looks}>
    {LOOKS.map((one) => (
      <button
        key={one}
        type="button"
        aria-pressed={look.value === one}
        onClick={() => {
          look.value = one;
        }}
      >
        {c.look[one]}
      </button>
    ))}
  </fieldset>
);

/** Several strategies, vehicles or cycles in one table, over each other, and why they differ. */
export function StrategiesView() {
  const one = pickedResult.value;
  const sub = look.value === "time" ? c.overlaysSub : c.cloud.sub;
  return (
    <div class="strategies-view">
      <section class="view c-table" aria-labelledby="view-a">
        <ViewHead id="view-a" tag="A" title={c.table} sub={c.tableSub} />
        {jobs.value.length === 0 && <p class="empty">{c.empty}</p>}
        {jobs.value.length + planned.value.length > 0 && <CompareTable />}
      </section>
      <section class="view c-over" aria-labelledby="view-b">
        <div class="view-head">
          <h2 id="view-b">
            <span class="tag">B</span> {c.overlays}{" "}
            <small>{one ? sub(one.row.cycle.title) : (planned.value[0]?.cycle.title ?? "")}</small>
          </h2>
          <span class="grow" />
          {one && <LookChoice />}
          {one && <ReferenceChoice />}
        </div>
        {look.value === "time" ? <Overlays /> : <EngineCloud />}
        {look.value === "time" && <Reasons />}
      </section>
      <Choice />
    </div>
  );
}
