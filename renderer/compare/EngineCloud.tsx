import { signal } from "@preact/signals";
import { useMemo } from "preact/hooks";
import { runSettings } from "../../sim/options.ts";
import {
  type EngineCloud as Cloud,
  type CloudWeight,
  engineCloud,
} from "../../sim/study/compare/engine-cloud.ts";
import type { ComparisonResult } from "../../sim/study/compare/run-job.ts";
import { mapLayout } from "../plots/map/layout.ts";
import { MapDrawing } from "../plots/map/MapDrawing.tsx";
import { num, shaftSpeed, shaftUnitName } from "../state/format.ts";
import { units } from "../state/settings.ts";
import { ownVehicles } from "../state/store.ts";
import { findVehicle } from "../state/vehicles.ts";
import { t } from "../texts/catalogue.ts";
import { fontsReady, measure } from "../ui/measure.ts";
import { metrics } from "../ui/metrics.ts";
import { useSize } from "../ui/use-size.ts";
import { lowerHeatOf, pickedResult, referenceResult } from "./state.ts";

const c = t.compare.cloud;

const weigh = signal<CloudWeight>("time");

/** One of the two lines whose clouds are drawn. */
interface Drawn {
  readonly result: ComparisonResult;
  readonly cloud: Cloud;
}

/** Radius of the largest mark, in sizes of text. */
const LARGEST = 0.85;

const mark = (picked: boolean, x: number, y: number, radius: number) =>
  picked ? (
    <path d={`M${x} ${y - radius}L${x + radius} ${y}L${x} ${y + radius}L${x - radius} ${y}Z`} />
  ) : (
    <circle cx={x} cy={y} r={radius} />
  );

interface PictureProps {
  readonly drawn: readonly Drawn[];
  readonly most: number;
  readonly width: number;
  readonly height: number;
}

/** Both clouds over the efficiency contours: the picked line filled, the other as rings; area is weight. */
function Picture({ drawn, most, width, height }: PictureProps) {
  const { text } = metrics.value;
  const first = drawn[0]?.result;
  const fonts = fontsReady.value;
  const vehicle = useMemo(
    () => first && findVehicle(ownVehicles.value, first.row.vehicle.id),
    [first?.row.vehicle.id, ownVehicles.value],
  );
  const layout = useMemo(() => {
    if (!vehicle) return null;
    const usual = { startSoc: vehicle.battery.socStart, auxiliaryPower: vehicle.auxiliary.power };
    return mapLayout({
      map: "engine",
      vehicle,
      settings: runSettings({}, usual),
      extent: { back: 0, least: 0, most: 0 },
      width,
      height,
      text,
      units: units.value,
      measure,
      names: t.map.lines,
    });
  }, [vehicle, width, height, text, units.value, fonts]);
  if (!layout) return null;
  const { frame } = layout;
  return (
    <>
      <MapDrawing layout={layout} width={width} height={height} text={text} />
      <svg class="engine-cloud" width={width} height={height} aria-hidden="true">
        {drawn.map(({ result, cloud }, place) => (
          <g key={result.row.index} class={place === 0 ? "one" : "other"}>
            {cloud.spots.map(({ speed, torque, weight }) => (
              <g key={`${speed} ${torque}`}>
                {mark(
                  place === 0,
                  frame.x(speed),
                  frame.y(torque),
                  Math.max(1.2, LARGEST * text * Math.sqrt(weight / most)),
                )}
              </g>
            ))}
          </g>
        ))}
      </svg>
    </>
  );
}

const Figures = ({ drawn }: { drawn: readonly Drawn[] }) => (
  <table class="cloud-figures" aria-label={c.table}>
    <thead>
      <tr>
        <th scope="col">{c.columns.line}</th>
        {drawn.map(({ result }) => (
          <th key={result.row.index} scope="col">
            {result.row.strategy.title}
          </th>
        ))}
      </tr>
    </thead>
    <tbody>
      {(
        [
          [c.columns.on, ({ cloud }: Drawn) => num(cloud.seconds)],
          [
            `${c.columns.speed}, ${shaftUnitName(units.value)}`,
            ({ cloud }: Drawn) => shaftSpeed(units.value, cloud.speed),
          ],
          [c.columns.torque, ({ cloud }: Drawn) => num(cloud.torque, 1)],
          [c.columns.efficiency, ({ cloud }: Drawn) => num(cloud.efficiency * 100, 1)],
          [c.columns.near, ({ cloud }: Drawn) => num(cloud.near * 100)],
        ] as const
      ).map(([name, of]) => (
        <tr key={name}>
          <th scope="row">{name}</th>
          {drawn.map((one) => (
            <td key={one.result.row.index}>{one.cloud.seconds > 0 ? of(one) : "–"}</td>
          ))}
        </tr>
      ))}
    </tbody>
  </table>
);

/** Where the engine worked in the picked line and in the one that it is held against. */
export function EngineCloud() {
  const { ref, width, height } = useSize<HTMLDivElement>();
  const one = pickedResult.value;
  const other = referenceResult.value;
  const by = weigh.value;
  const drawn = useMemo(() => {
    const lines = one && other && one !== other ? [one, other] : one ? [one] : [];
    return lines.map((result): Drawn => {
      const { engine } = findVehicle(ownVehicles.value, result.row.vehicle.id);
      return { result, cloud: engineCloud(result.series, engine, by) };
    });
  }, [one, other, by, ownVehicles.value]);
  const most = Math.max(0, ...drawn.flatMap(({ cloud }) => cloud.spots.map(({ weight }) => weight)));
  if (!one || !drawn[0]) return null;
  const largest = by === "time" ? c.seconds(num(most)) : c.grams(num((most * 1000) / lowerHeatOf(one), 1));
  const key = drawn[1]
    ? c.key(drawn[0].result.row.strategy.title, drawn[1].result.row.strategy.title)
    : c.keyOne(drawn[0].result.row.strategy.title);
  return (
    <div class="cloud-view">
      <div class="drawing" ref={ref} role="img" aria-label={c.name}>
        {width > 0 && height > 40 && <Picture drawn={drawn} most={most} width={width} height={height} />}
      </div>
      <div class="cloud-side">
        <fieldset class="segments" aria-label={c.weigh}>
          {(["time", "fuel"] as const).map((id) => (
            <button
              key={id}
              type="button"
              aria-pressed={by === id}
              onClick={() => {
                weigh.value = id;
              }}
            >
              {c.by[id]}
            </button>
          ))}
        </fieldset>
        <p>
          {key} {most > 0 ? c.largest(largest) : c.never}
        </p>
        <Figures drawn={drawn} />
      </div>
    </div>
  );
}
