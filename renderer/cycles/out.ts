import { traceCsv } from "../../cycles/export.ts";
import { CYCLE_KIND } from "../../shared/cycle-file.ts";
import { take } from "../app/project.ts";
import { tell } from "../app/window.ts";
import { bridge } from "../bridge/chooser.ts";
import { withRecording } from "../state/recordings.ts";
import { t } from "../texts/catalogue.ts";
import { cycleShown } from "./state.ts";
import { cycleWorker } from "./worker.ts";

/** Saves what is looked at: its table as CSV, or all of it with recording and treatments as a file of its own. */
export async function saveShown(as: "csv" | "file"): Promise<void> {
  const trace = cycleShown.value;
  if (!trace) return;
  const csv = as === "csv";
  const content = csv ? [...traceCsv(trace)].join("") : await cycleWorker().file(withRecording(trace));
  const result = await bridge.exportFile({
    suggestedName: `${trace.id}.${csv ? "csv" : CYCLE_KIND.extensions[0]}`,
    kinds: [csv ? { title: t.cycles.outCsv, mime: "text/csv", extensions: ["csv"] } : CYCLE_KIND],
    content,
  });
  take(result, (saved) => tell(t.cycles.saved(saved.name)), t.cycles.notSaved);
}
