import { useMemo, useRef } from "preact/hooks";
import { runSettings } from "../../../sim/options.ts";
import { ViewHead } from "../../bench/ViewHead.tsx";
import { roadUnitName, shaftUnitName } from "../../state/format.ts";
import { instant } from "../../state/instant.ts";
import { hidden } from "../../state/predict.ts";
import { preparedRun } from "../../state/prepared.ts";
import { run } from "../../state/road.ts";
import { roadWorking, showRoadWorking } from "../../state/road-working.ts";
import type { Run } from "../../state/run.ts";
import { units } from "../../state/settings.ts";
import { vehicle } from "../../state/store.ts";
import { t } from "../../texts/catalogue.ts";
import { fontsReady, measure } from "../../ui/measure.ts";
import { metrics } from "../../ui/metrics.ts";
import { useSize } from "../../ui/use-size.ts";
import { CloudCanvas } from "./CloudCanvas.tsx";
import { chosenMap } from "./chosen.ts";
import { type Cloud, cloudOf } from "./cloud.ts";
import { MAP_COLOUR, MAPS, type MapId } from "./kinds.ts";
import { LivePoint } from "./LivePoint.tsx";
import { mapLayout } from "./layout.ts";
import { MapDrawing } from "./MapDrawing.tsx";
import { mapWords, pointWords } from "./words.ts";

const NO_ROWS = { back: 0, least: 0, most: 0 };

/** Rows by which a drive that is under way grows before its cloud is drawn anew. */
const GROWN = 50;

interface ChartProps {
  readonly map: MapId;
  readonly one: Run | null;
  readonly width: number;
  readonly height: number;
}

/** The cloud of the run that is looked at; none for the other maps. */
function useCloud(map: MapId, one: Run | null): Cloud | null {
  const grown = one && !one.summary ? Math.floor(one.log.rows / GROWN) : -1;
  return useMemo(() => (map === "wheels" && one ? cloudOf(one) : null), [map, one?.request, one?.id, grown]);
}

/** What a map is drawn for: the run's vehicle and options, or those that would be driven next. */
function useSubject(one: Run | null) {
  const v = one?.request.vehicle ?? vehicle.value;
  return useMemo(() => {
    if (one) return { vehicle: v, settings: preparedRun(one.request).settings };
    const defaults = { startSoc: v.battery.socStart, auxiliaryPower: v.auxiliary.power };
    return { vehicle: v, settings: runSettings({}, defaults) };
  }, [v, one?.request]);
}

function Chart({ map, one, width, height }: ChartProps) {
  const { text } = metrics.value;
  const cloud = useCloud(map, one);
  const extent = cloud?.extent ?? NO_ROWS;
  const subject = useSubject(one);
  const fonts = fontsReady.value;
  const fixed = [map, subject, width, height, text, units.value, fonts];
  const layout = useMemo(
    () =>
      mapLayout({
        map,
        ...subject,
        extent,
        width,
        height,
        text,
        units: units.value,
        measure,
        names: t.map.lines,
        families: t.map.families,
      }),
    [...fixed, extent.back, extent.least, extent.most],
  );
  const drawing = useMemo(
    () => <MapDrawing layout={layout} width={width} height={height} text={text} />,
    [layout],
  );
  return (
    <>
      {cloud && (
        <CloudCanvas
          cloud={cloud}
          frame={layout.frame}
          width={width}
          height={height}
          radius={text * (cloud.marks.engine.length > 4000 ? 0.1 : 0.13)}
        />
      )}
      {drawing}
      {one && <LivePoint run={one} layout={layout} width={width} height={height} text={text} />}
    </>
  );
}

const tabId = (map: MapId): string => `map-tab-${map}`;

const STEP: Readonly<Record<string, number>> = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 };

function Tabs() {
  const list = useRef<HTMLDivElement>(null);
  const names = metrics.value.text >= 18 || metrics.value.compact ? t.map.short : t.map.names;
  const choose = (map: MapId): void => {
    chosenMap.value = map;
    list.current?.querySelector<HTMLElement>(`#${tabId(map)}`)?.focus();
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    const index = MAPS.indexOf(chosenMap.value);
    const step = STEP[event.key];
    const next =
      step !== undefined
        ? MAPS[(index + step + MAPS.length) % MAPS.length]
        : event.key === "Home"
          ? MAPS[0]
          : event.key === "End"
            ? MAPS.at(-1)
            : undefined;
    if (!next) return;
    event.preventDefault();
    event.stopPropagation();
    choose(next);
  };
  return (
    <div class="map-tabs" role="tablist" aria-label={t.map.tabs} ref={list} onKeyDown={onKeyDown}>
      {MAPS.map((map) => {
        const on = chosenMap.value === map;
        return (
          <button
            key={map}
            id={tabId(map)}
            type="button"
            role="tab"
            class={MAP_COLOUR[map]}
            aria-selected={on}
            aria-controls="map-panel"
            aria-label={
              t.map.names[map].startsWith(names[map])
                ? t.map.names[map]
                : `${names[map]}, ${t.map.names[map]}`
            }
            tabIndex={on ? 0 : -1}
            onClick={() => choose(map)}
          >
            {names[map]}
          </button>
        );
      })}
    </div>
  );
}

/** The number that belongs to the point: efficiency, or force at the wheels; it answers. */
function Reading() {
  const map = chosenMap.value;
  const one = run.value;
  const at = instant.stage.value;
  if (!one || !at || at.row >= one.log.rows) return null;
  const words = pointWords(map, one, at, units.value, hidden.value);
  const said = words ? (map === "wheels" ? words.effort : words.efficiency) : "?";
  if (!said) return null;
  const id = `map:${map}` as const;
  return (
    <button
      type="button"
      class="number map-reading"
      data-point={id}
      aria-expanded={roadWorking.value === id}
      title={map === "wheels" ? t.map.reading.force : t.map.reading.efficiency}
      onClick={() => showRoadWorking(id)}
    >
      {said}
    </button>
  );
}

const Words = () => (
  <p id="map-words" class="unseen">
    {mapWords(chosenMap.value, run.value, instant.stage.value, units.value, hidden.value)}{" "}
    {t.map.about[chosenMap.value]}
  </p>
);

/** View E: where engine, machines or wheels work just now on the map of what they can do. */
export function OperatingMap() {
  const { ref, width, height } = useSize<HTMLDivElement>();
  const map = chosenMap.value;
  const kind = map === "wheels" ? "force" : "torque";
  const over =
    map === "wheels"
      ? t.map.forceOver(roadUnitName(units.value))
      : t.map.torqueOver(shaftUnitName(units.value));
  return (
    <section class="view r-map" aria-labelledby="view-e">
      <div class="map-head">
        <ViewHead
          id="view-e"
          tag="E"
          title={t.map.title}
          sub={metrics.value.compact ? t.map.units[kind] : over}
        />
        <Reading />
      </div>
      <Tabs />
      <div class="drawing" ref={ref} role="tabpanel" id="map-panel" aria-labelledby={tabId(map)}>
        <div role="img" class="map-picture" aria-label={t.map.title} aria-describedby="map-words">
          {width > 0 && height > 40 && (
            <Chart key={map} map={map} one={run.value} width={width} height={height} />
          )}
        </div>
        <Words />
      </div>
    </section>
  );
}
