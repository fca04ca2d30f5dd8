import { signal } from "@preact/signals";
import { TeachingCell } from "../app/strip-parts.tsx";
import { ProjectorButton } from "../app/top-parts.tsx";
import { PicturePanel } from "../picture/PicturePanel.tsx";
import { num } from "../state/format.ts";
import { t } from "../texts/catalogue.ts";
import { Dialog } from "../ui/Dialog.tsx";
import { Tabs, tabIdOf } from "../ui/Tabs.tsx";
import { saveCurves, saveTable } from "./actions.ts";
import { OwnView } from "./own/OwnView.tsx";
import { saveStudy } from "./regeneration/actions.ts";
import { RegenerationView } from "./regeneration/RegenerationView.tsx";
import { studyCells } from "./regeneration/state.ts";
import { StrategiesView } from "./StrategiesView.tsx";
import { COMPARE_VIEWS, compareView, referenceResult, results } from "./state.ts";
import { saveSweep } from "./sweep/actions.ts";
import { SweepView } from "./sweep/SweepView.tsx";
import { sweepRows } from "./sweep/state.ts";

const c = t.compare;
const PANEL = "compare-panel";

const VIEWS = { strategies: StrategiesView, own: OwnView, sweep: SweepView, regeneration: RegenerationView };

const picturing = signal(false);

/** Several strategies, vehicles or cycles side by side; a person's own; sweeps; what braking gives back. */
export function ComparePlace() {
  const View = VIEWS[compareView.value];
  return (
    <main class="compare-place" id="place">
      <div role="tabpanel" id={PANEL} aria-labelledby={tabIdOf(PANEL, compareView.value)}>
        <View />
      </div>
      {picturing.value && (
        <Dialog
          title={t.picture.title}
          onClose={() => {
            picturing.value = false;
          }}
        >
          <PicturePanel />
        </Dialog>
      )}
    </main>
  );
}

const FILES = {
  table: () => void saveTable(),
  curves: () => void saveCurves(),
  csv: () => void (compareView.value === "sweep" ? saveSweep("csv") : saveStudy("csv")),
  json: () => void (compareView.value === "sweep" ? saveSweep("json") : saveStudy("json")),
  picture: () => {
    picturing.value = true;
  },
} as const;

/** What can be taken along from the view that is shown now. */
function filesNow(): readonly (keyof typeof FILES)[] {
  const found = {
    strategies: results.value.length > 0 ? (["table", "curves"] as const) : [],
    own: [],
    sweep: sweepRows.value.size > 0 ? (["csv", "json"] as const) : [],
    regeneration: studyCells.value.size > 0 ? (["csv", "json"] as const) : [],
  };
  return [...found[compareView.value], "picture"];
}

function Files() {
  const kinds = filesNow();
  return (
    <select
      aria-label={c.files}
      value=""
      onChange={(event) => {
        const kind = kinds.find((one) => one === event.currentTarget.value);
        event.currentTarget.value = "";
        if (kind) FILES[kind]();
      }}
    >
      <option value="">{c.files}</option>
      {kinds.map((kind) => (
        <option key={kind} value={kind}>
          {c.kinds[kind]}
        </option>
      ))}
    </select>
  );
}

/** Top bar of Compare. */
export const CompareTop = () => (
  <header class="top">
    <h1>{c.name}</h1>
    <Tabs
      name={c.viewsName}
      tabs={COMPARE_VIEWS.map((id) => ({ id, title: c.views[id] }))}
      chosen={compareView.value}
      onChoose={(id) => {
        compareView.value = id;
      }}
      panel={PANEL}
    />
    <span class="grow" />
    <Files />
    <ProjectorButton />
  </header>
);

/** Title block of Compare. */
export function CompareStrip() {
  const one = referenceResult.value;
  return (
    <footer class="strip" aria-label={t.strip.name}>
      {one && (
        <div>
          {c.slopeCell}{" "}
          <b>
            {num(one.row.slope, 2)} {c.slopeUnit}
          </b>
        </div>
      )}
      <TeachingCell />
    </footer>
  );
}
