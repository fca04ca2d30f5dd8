import { type Signal, useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { ViewHead } from "../bench/ViewHead.tsx";
import { projector } from "../state/settings.ts";
import { undoesItself } from "../state/undoing.ts";
import { t } from "../texts/catalogue.ts";
import { metrics } from "../ui/metrics.ts";
import { Beside } from "./Beside.tsx";
import { Changed } from "./Changed.tsx";
import { CycleList } from "./CycleList.tsx";
import { Details } from "./Details.tsx";
import { followFigures } from "./figures-state.ts";
import { CyclePlot } from "./plot/CyclePlot.tsx";
import { StandMap } from "./StandMap.tsx";
import { cycleShown, recordingShown, redoCycles, undoCycles } from "./state.ts";

const words = t.cycles;

undoesItself("cycles", { undo: undoCycles, redo: redoCycles });

type FigureView = "changed" | "beside" | "map";

const NAMES: Readonly<Record<FigureView, string>> = {
  changed: words.changed,
  beside: words.beside,
  map: words.map,
};

interface WhichProps {
  readonly views: readonly FigureView[];
  readonly now: FigureView;
  readonly wanted: Signal<FigureView>;
}

const Which = ({ views, now, wanted }: WhichProps) => (
  <fieldset class="segments" aria-label={words.figureViews}>
    {views.map((view) => (
      <button
        key={view}
        type="button"
        aria-pressed={now === view}
        onClick={() => {
          wanted.value = view;
        }}
      >
        {NAMES[view]}
      </button>
    ))}
  </fieldset>
);

/** View C: figures; of a recording also before and after its treatments, in a narrow window also where it stands. */
function Figures({ narrow }: { narrow: boolean }) {
  const wanted = useSignal<FigureView>("changed");
  const recorded = recordingShown.value !== null;
  const views: readonly FigureView[] = [
    ...(recorded ? (["changed"] as const) : []),
    "beside",
    ...(narrow ? (["map"] as const) : []),
  ];
  const now = views.includes(wanted.value) ? wanted.value : "beside";
  return (
    <section class="view cy-c" aria-labelledby="view-c">
      <div class="cy-head">
        <ViewHead id="view-c" tag="C" title={NAMES[now]} sub="" />
        {views.length > 1 && <Which views={views} now={now} wanted={wanted} />}
      </div>
      {now === "changed" ? <Changed /> : now === "beside" ? <Beside /> : <StandMap />}
    </section>
  );
}

const holdsFile = (event: DragEvent): boolean => event.dataTransfer?.types.includes("Files") ?? false;

/** All cycles, the one looked at drawn, its figures, and what it is. */
export function CyclesSheet() {
  const over = useSignal(false);
  const narrow = metrics.value.compact || projector.value;
  useEffect(followFigures, []);
  return (
    <main
      class={`cycles ${over.value ? "drop" : ""}`}
      id="place"
      onDragOver={(event) => {
        if (!holdsFile(event)) return;
        event.preventDefault();
        over.value = true;
      }}
      onDragLeave={(event) => {
        if (event.target === event.currentTarget) over.value = false;
      }}
      onDrop={() => {
        over.value = false;
      }}
    >
      {!projector.value && (
        <section class="view cy-a" aria-labelledby="view-a">
          <ViewHead id="view-a" tag="A" title={words.list} sub="" />
          <CycleList />
        </section>
      )}
      <section class="view cy-b" aria-labelledby="view-b">
        <ViewHead id="view-b" tag="B" title={words.plot} sub={cycleShown.value?.title ?? ""} />
        <CyclePlot />
      </section>
      <Figures narrow={narrow} />
      {!projector.value && (
        <section class="view cy-d" aria-labelledby="view-d">
          <ViewHead id="view-d" tag="D" title={words.about} sub="" />
          <Details />
        </section>
      )}
      {!narrow && (
        <section class="view cy-e" aria-labelledby="view-e">
          <ViewHead id="view-e" tag="E" title={words.map} sub="" />
          <StandMap />
        </section>
      )}
      {over.value && (
        <p class="cy-drop" role="status">
          {words.dropNow}
        </p>
      )}
    </main>
  );
}
