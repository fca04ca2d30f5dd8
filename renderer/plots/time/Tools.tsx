import { useEffect, useRef, useState } from "preact/hooks";
import { cursor, run, shown } from "../../state/road.ts";
import { t } from "../../texts/catalogue.ts";
import { SignButton } from "../../ui/SignButton.tsx";
import { PLOTS } from "../registry.ts";
import { chosenPlots, togglePlot, wantedPlots } from "./chosen-plots.ts";
import type { TimeLayout } from "./layout.ts";
import { setEnd, zoom } from "./view.ts";

interface ToolsProps {
  readonly layout: TimeLayout;
}

const { zoom: zoomWords, stretch: stretchWords, ...words } = t.plots;

/** What makes the window of time shorter, longer, or the whole drive. */
export const ZoomTools = ({ layout }: ToolsProps) => (
  <fieldset
    class="time-tools"
    aria-label={zoomWords.name}
    style={{ left: `${layout.right - 4}px`, bottom: `calc(100% - ${layout.marks + 10}px)` }}
  >
    <SignButton
      sign="+"
      name={zoomWords.closer}
      disabled={!run.value}
      onClick={() => zoom(0.5, cursor.value)}
    />
    <SignButton
      sign="−"
      name={zoomWords.wider}
      disabled={!shown.value}
      onClick={() => zoom(2, cursor.value)}
    />
    <SignButton
      sign={zoomWords.whole}
      name={zoomWords.wholeName}
      disabled={!shown.value}
      onClick={() => {
        shown.value = null;
      }}
    />
  </fieldset>
);

/** Puts the ends of a stretch at the cursor. */
export const StretchTools = ({ layout }: ToolsProps) => (
  <fieldset class="time-tools at-foot" aria-label={stretchWords.name} style={{ left: `${layout.right}px` }}>
    <span class="word" aria-hidden="true">
      {stretchWords.name}
    </span>
    <SignButton
      sign={stretchWords.start}
      name={stretchWords.startName}
      disabled={!run.value}
      onClick={() => setEnd("from", cursor.value)}
    />
    <SignButton
      sign={stretchWords.end}
      name={stretchWords.endName}
      disabled={!run.value}
      onClick={() => setEnd("to", cursor.value)}
    />
  </fieldset>
);

function Choice({ fits }: { fits: number }) {
  const shownNow = new Set(
    wantedPlots()
      .slice(0, fits)
      .map(({ id }) => id),
  );
  const full = shownNow.size >= fits;
  return (
    <fieldset class="plot-choice" aria-label={words.chooseTitle}>
      <p>{words.fits(fits)}</p>
      <div class="boxes">
        {PLOTS.map(({ id }) => (
          <label key={id} class="check">
            <input
              type="checkbox"
              checked={shownNow.has(id)}
              disabled={full && !shownNow.has(id)}
              onChange={() => togglePlot(id, fits)}
            />
            {words.names[id]}
          </label>
        ))}
      </div>
      <button
        type="button"
        class="btn"
        disabled={chosenPlots.value === null}
        onClick={() => {
          chosenPlots.value = null;
        }}
      >
        {words.usual}
      </button>
    </fieldset>
  );
}

/** Opens the choice of plots; Esc or a press elsewhere closes it. */
export function PlotMenu({ layout }: ToolsProps) {
  const [open, setOpen] = useState(false);
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (!open) return;
    const press = (event: PointerEvent): void => {
      if (!(event.target instanceof Node && box.current?.contains(event.target))) setOpen(false);
    };
    document.addEventListener("pointerdown", press);
    return () => document.removeEventListener("pointerdown", press);
  }, [open]);
  return (
    <div
      ref={box}
      class="plot-menu at-foot"
      onKeyDown={(event) => {
        if (event.key !== "Escape" || !open) return;
        event.stopPropagation();
        event.preventDefault();
        setOpen(false);
        box.current?.querySelector("button")?.focus();
      }}
    >
      <button type="button" class="btn quiet" aria-expanded={open} onClick={() => setOpen(!open)}>
        {words.choose}
      </button>
      {open && <Choice fits={layout.fits} />}
    </div>
  );
}
