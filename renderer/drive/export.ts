import { runCsv } from "../../sim/run/export.ts";
import { take } from "../app/project.ts";
import { tell } from "../app/window.ts";
import { bridge } from "../bridge/chooser.ts";
import { run } from "../state/road.ts";
import { t } from "../texts/catalogue.ts";

/** Saves the run that is looked at as CSV, in the columns of the command line's `run --out`. */
export async function saveCsv(): Promise<void> {
  const one = run.value;
  if (!one) return;
  const name = `${one.request.vehicle.id}-${one.request.cycle.id}-${one.request.strategy}.csv`;
  const result = await bridge.exportFile({
    suggestedName: name.replaceAll(/[^a-z0-9.-]+/gi, "-"),
    kinds: [{ title: "CSV", mime: "text/csv", extensions: ["csv"] }],
    content: [...runCsv(one.log, one.regime)].join(""),
  });
  take(result, (saved) => tell(t.road.transport.saved(saved.name)), t.notice.notSaved);
}
