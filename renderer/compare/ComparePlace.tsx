import { TeachingCell } from "../app/strip-parts.tsx";
import { ActionButton, ProjectorButton } from "../app/top-parts.tsx";
import { ViewHead } from "../bench/ViewHead.tsx";
import { num } from "../state/format.ts";
import { t } from "../texts/catalogue.ts";
import { saveTable } from "./actions.ts";
import { Choice } from "./Choice.tsx";
import { CompareTable } from "./CompareTable.tsx";
import { Overlays } from "./Overlays.tsx";
import { Reasons } from "./Reasons.tsx";
import { laid, pickedResult, reference, referenceResult, results } from "./state.ts";

const c = t.compare;

/** What the picked line is held against. */
const ReferenceChoice = () => (
  <label class="reference">
    {c.reference}{" "}
    <select
      value={referenceResult.value?.row.index ?? ""}
      onChange={(event) => {
        reference.value = Number(event.currentTarget.value);
      }}
    >
      {laid.value.map(({ row }) => (
        <option key={row.index} value={row.index}>
          {row.strategy.title}
        </option>
      ))}
    </select>
  </label>
);

/** Several strategies, vehicles or cycles in one table, over each other, and why they differ. */
export const ComparePlace = () => (
  <main class="compare-place" id="place">
    <section class="view c-table" aria-labelledby="view-a">
      <ViewHead id="view-a" tag="A" title={c.table} sub={c.tableSub} />
      {results.value.length === 0 ? <p class="empty">{c.empty}</p> : <CompareTable />}
    </section>
    <section class="view c-over" aria-labelledby="view-b">
      <h2 class="view-head" id="view-b">
        <span class="tag">B</span> {c.overlays}{" "}
        <small>{pickedResult.value ? c.overlaysSub(pickedResult.value.row.cycle.title) : ""}</small>
        <span class="grow" />
        {laid.value.length > 0 && <ReferenceChoice />}
      </h2>
      <Overlays />
      <Reasons />
    </section>
    <Choice />
  </main>
);

/** Top bar of Compare. */
export const CompareTop = () => (
  <header class="top">
    <h1>{c.name}</h1>
    <span class="fact">{results.value.length > 0 ? c.count(num(results.value.length)) : ""}</span>
    <span class="grow" />
    <ActionButton
      icon="save"
      text={c.csv}
      disabled={results.value.length === 0}
      onClick={() => void saveTable()}
    />
    <ProjectorButton />
  </header>
);

/** Title block of Compare. */
export const CompareStrip = () => (
  <footer class="strip" aria-label={t.strip.name}>
    <div>
      {c.slopeCell}{" "}
      <b>
        {num(referenceResult.value?.row.slope ?? Number.NaN, 2)} {c.slopeUnit}
      </b>
    </div>
    <TeachingCell />
  </footer>
);
