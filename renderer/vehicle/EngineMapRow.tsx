import { useEffect, useRef } from "preact/hooks";
import { radPerSToRpm } from "../../shared/units.ts";
import { MOST_MAP_BYTES } from "../../sim/vehicle/engine-map/sheet.ts";
import { num } from "../state/format.ts";
import { vehicle } from "../state/store.ts";
import { t } from "../texts/catalogue.ts";
import { FilePick } from "../ui/FilePick.tsx";
import { Icon } from "../ui/icons.tsx";
import { dropMap, mapLeft, openMap } from "./map-draft.ts";
import { refuseLarge } from "./open.ts";
import { saveMap } from "./save-map.ts";

const words = t.vehicle.map;

/** What the engine's fuel goes by. */
function present(): string {
  const { map } = vehicle.value.engine;
  if (!map) return words.formula;
  const [least = 0, most = 0] = [map.speed[0], map.speed.at(-1)];
  return words.table(
    map.speed.length,
    map.torque.length,
    `${num(radPerSToRpm(least))} … ${num(radPerSToRpm(most))}`,
  );
}

/** The engine's map: what it is, another from a file, out to a file. */
export function EngineMapRow() {
  const actions = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (!mapLeft.value) return;
    mapLeft.value = false;
    actions.current?.querySelector("button")?.focus();
  });
  return (
    <section class="map-row" aria-label={words.name}>
      <p>
        <b>{words.name}:</b> {present()}
      </p>
      <div class="map-actions" ref={actions}>
        <FilePick
          name={words.open}
          accept=".csv,.txt,.tsv,text/csv"
          most={MOST_MAP_BYTES}
          onText={openMap}
          onTooLarge={refuseLarge}
        />
        <button type="button" class="btn quiet" onClick={() => void saveMap()}>
          <Icon name="save" /> {words.save}
        </button>
        {vehicle.value.engine.map && (
          <button type="button" class="btn quiet" onClick={dropMap}>
            <Icon name="close" /> {words.drop}
          </button>
        )}
      </div>
      <p class="range">{words.help}</p>
    </section>
  );
}
