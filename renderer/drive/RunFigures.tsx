import { useEffect } from "preact/hooks";
import { limitMeaning } from "../../sim/limits.ts";
import type { RunSummary } from "../../sim/run/summary.ts";
import { balances, run } from "../state/road.ts";
import { type RoadWorkingId, roadWorking, showRoadWorking } from "../state/road-working.ts";
import { units } from "../state/settings.ts";
import { t } from "../texts/catalogue.ts";
import { clockTime } from "../ui/time.ts";
import { WorkingLines } from "../ui/WorkingLines.tsx";
import { type FigureGroup, type RunFigure, runFigures } from "./figures.ts";
import { figuresShown } from "./figures-shown.ts";
import { openWorking } from "./RoadWorking.tsx";

/** The working of a figure, under its own line. */
function OwnWorking({ id }: { id: RoadWorkingId }) {
  const shown = openWorking(id);
  if (!shown) return null;
  return (
    <tr class="own-working">
      <td colSpan={3}>
        <WorkingLines shown={shown} />
        <p>{shown.note}</p>
      </td>
    </tr>
  );
}

function Figure({ figure }: { figure: RunFigure }) {
  const id = `figure:${figure.id}` as const;
  const open = roadWorking.value === id;
  return (
    <>
      <tr>
        <th scope="row">{t.roadWorking.titles.figures[figure.id]}</th>
        <td class="beside">{figure.beside}</td>
        <td>
          <button
            type="button"
            class="number"
            data-point={id}
            aria-expanded={open}
            onClick={() => showRoadWorking(id)}
          >
            {figure.value}
          </button>
        </td>
      </tr>
      {open && <OwnWorking id={id} />}
    </>
  );
}

const Group = ({ group }: { group: FigureGroup }) => (
  <tbody>
    <tr class="group">
      <th scope="rowgroup" colSpan={3}>
        {t.roadWorking.sheet.groups[group.id]}
      </th>
    </tr>
    {group.figures.map((figure) => (
      <Figure key={figure.id} figure={figure} />
    ))}
  </tbody>
);

/** Stretches outside the tolerance, and the limits that bound there. */
function Misses({ trace }: { trace: RunSummary["trace"] }) {
  if (trace.misses.length === 0) return null;
  return (
    <ul class="misses">
      {trace.misses.map((miss) => (
        <li key={miss.start}>
          <b>
            {clockTime(miss.start)}–{clockTime(miss.end)}
          </b>{" "}
          {miss.limits.length > 0
            ? `${t.roadWorking.sheet.bound}: ${miss.limits.map(limitMeaning).join("; ")}.`
            : t.roadWorking.sheet.nothingBound}
        </li>
      ))}
    </ul>
  );
}

/** The figures of the run that is looked at, each with its working. */
export function RunFigures() {
  useEffect(() => {
    figuresShown.value = true;
    return () => {
      figuresShown.value = false;
      if (roadWorking.value?.startsWith("figure:")) roadWorking.value = null;
    };
  }, []);
  // Esc closes the working first, then the window that the sheet stands in.
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key !== "Escape" || !roadWorking.value) return;
    event.preventDefault();
    event.stopPropagation();
    roadWorking.value = null;
  };
  const one = run.value;
  if (!one?.summary) return <p>{t.roadWorking.sheet.none}</p>;
  const groups = runFigures(one.summary, balances.value.get(one.id) ?? null, units.value);
  return (
    <div class="run-figures" onKeyDown={onKeyDown}>
      <p class="hint">
        <b>{one.name}</b> {t.roadWorking.sheet.hint}
      </p>
      <div class="figure-columns">
        {[groups.slice(0, 2), groups.slice(2)].map((part, i) => (
          <table key={i} aria-label={t.roadWorking.sheet.name}>
            {part.map((group) => (
              <Group key={group.id} group={group} />
            ))}
          </table>
        ))}
      </div>
      <Misses trace={one.summary.trace} />
    </div>
  );
}
