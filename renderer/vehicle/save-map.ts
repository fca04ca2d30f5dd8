import { engineMapCsv, presentEngineMap } from "../../sim/vehicle/engine-map/write.ts";
import { take } from "../app/project.ts";
import { tell } from "../app/window.ts";
import { bridge } from "../bridge/chooser.ts";
import { vehicle } from "../state/store.ts";
import { t } from "../texts/catalogue.ts";

/** Saves the map in force as a table that `openMap` takes; the formula's where there is none. */
export async function saveMap(): Promise<void> {
  const { id, engine, fuel } = vehicle.value;
  const result = await bridge.exportFile({
    suggestedName: `${id}-engine-map.csv`,
    kinds: [{ title: t.vehicle.map.csv, mime: "text/csv", extensions: ["csv"] }],
    content: engineMapCsv(presentEngineMap(engine), fuel.lowerHeat),
  });
  take(result, (saved) => tell(t.vehicle.saved(saved.name)), t.notice.notSaved);
}
