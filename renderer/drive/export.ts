import { listCycles } from "../../cycles/catalogue.ts";
import { runCsv } from "../../sim/run/export.ts";
import { take } from "../app/project.ts";
import { tell } from "../app/window.ts";
import { bridge } from "../bridge/chooser.ts";
import { balances, run } from "../state/road.ts";
import type { BalanceState, Run } from "../state/run.ts";
import { t } from "../texts/catalogue.ts";

const fileName = ({ request }: Run, ending: string): string =>
  `${request.vehicle.id}-${request.cycle.id}-${request.strategy}.${ending}`.replaceAll(/[^a-z0-9.-]+/gi, "-");

/** Saves the run that is looked at as CSV, in the columns of the command line's `run --out`. */
export async function saveCsv(): Promise<void> {
  const one = run.value;
  if (!one) return;
  const result = await bridge.exportFile({
    suggestedName: fileName(one, "csv"),
    kinds: [{ title: "CSV", mime: "text/csv", extensions: ["csv"] }],
    content: [...runCsv(one.log, one.regime)].join(""),
  });
  take(result, (saved) => tell(t.road.transport.saved(saved.name)), t.notice.notSaved);
}

/** What the command line calls the cycle: its id, or the file that Cycles saves it as. */
const cycleLine = ({ request: { cycle } }: Run): string =>
  listCycles().some(({ id }) => cycle.id === id || cycle.id.startsWith(`${id}:`))
    ? cycle.id
    : `${cycle.id}.csv`;

function balanceTold(state: BalanceState | undefined) {
  if (!state || state === "under way") return null;
  const { litresPer100Km, mpg, co2PerKm, slope, runs, reason } = state;
  return {
    l_per_100km: litresPer100Km,
    mpg_us: mpg,
    co2_g_per_km: co2PerKm,
    slope,
    runs,
    reason,
    ofThisRun: false,
  };
}

/** A finished run as one HTML file; the balanced figure stands in it if it is known by now. */
async function reportOf(one: Run): Promise<string | null> {
  const { summary, log, regime, request } = one;
  if (!summary) return null;
  const { runReport } = await import("../../sim/report/report.ts");
  const info = await bridge.windowInfo();
  return runReport({
    vehicle: request.vehicle,
    summary,
    log,
    regime: regime.subarray(0, log.rows),
    balance: balanceTold(balances.value.get(one.id)),
    cycleLine: cycleLine(one),
    notes: [],
    version: info.status === "ok" ? info.value.version : "",
    made: "",
  });
}

/** Saves the run that is looked at as a report, the same that the command line's `report` makes. */
export async function saveReport(): Promise<void> {
  const one = run.value;
  const content = one && (await reportOf(one));
  if (!content) return;
  const result = await bridge.exportFile({
    suggestedName: fileName(one, "html"),
    kinds: [{ title: "HTML", mime: "text/html", extensions: ["html"] }],
    content,
  });
  take(result, (saved) => tell(t.road.transport.saved(saved.name)), t.notice.notSaved);
}
