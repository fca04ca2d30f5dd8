import { cycleById } from "../../cycles/catalogue.ts";
import type { LimitsResult } from "../../sim/run/limits-run.ts";
import { faultWords } from "../app/fault-words.ts";
import { tell } from "../app/window.ts";
import {
  balances,
  chosenCycle,
  cycleId,
  fits,
  mode,
  playing,
  progress,
  requestNow,
  takeRun,
} from "../state/road.ts";
import type { BalanceState, Run } from "../state/run.ts";
import { t } from "../texts/catalogue.ts";
import type { RunRequest } from "../workers/contract.ts";
import { Cancelled, Runner } from "../workers/runner.ts";

/** One worker runs, the other balances afterwards, so that a run never waits for figures of an older one. */
const runner = new Runner();
const balancer = new Runner();

/** Makes ready what the first run needs: the worker and the cycle's table. */
export function warmUp(): void {
  runner.warm();
  cycleById("udds");
}

/** Name of a run in lists. */
export const runName = ({ vehicle, cycle, strategy, own }: RunRequest): string =>
  t.road.runName(vehicle.name, cycle.title, own?.title ?? strategy);

/** Runs what is chosen, looks at it, and plays it. The window stays alive; the run can be cancelled.
 * @param plays false: it stands at its start */
export async function runNow(plays = true): Promise<void> {
  if (progress.value !== null) return;
  let request: RunRequest;
  try {
    request = requestNow();
  } catch (error) {
    tell(t.road.failed(faultWords(error)), true);
    return;
  }
  progress.value = 0;
  playing.value = false;
  try {
    const reply = await runner.ask(
      (worker, report) => worker.run(request, report),
      (share) => {
        // A report may come after the reply: they go by different ways.
        if (progress.value !== null) progress.value = share;
      },
    );
    const run = takeRun(request, reply, runName(request));
    playing.value = plays;
    void balanceOf(run);
  } catch (error) {
    if (error instanceof Cancelled) tell(t.road.cancelled);
    else tell(t.road.stopped(faultWords(error)), true);
  } finally {
    progress.value = null;
  }
}

/** Longest drive that is driven without being asked for, s: about a second's work. */
const UNASKED_MOST = 3600;

/** Drives what is chosen, so that there is something to look at; a long drive waits for Run. */
export function driveUnasked(plays: boolean): void {
  if (fits.value || mode.value === "pedals") return;
  try {
    if ((chosenCycle(cycleId.value).time.at(-1) ?? 0) <= UNASKED_MOST) void runNow(plays);
  } catch {
    // A cycle that is not there any more is told when Run is pressed.
  }
}

export const cancelRun = (): void => runner.cancel();

const setBalance = (id: number, state: BalanceState): void => {
  balances.value = new Map(balances.value).set(id, state);
};

/** What the vehicle can do at most, with the chosen strategy and options; null when it could not be found. */
export async function findLimits(): Promise<LimitsResult | null> {
  const { cycle: _, ...request } = requestNow();
  try {
    return await runner.ask((worker) => worker.limits(request));
  } catch (error) {
    if (!(error instanceof Cancelled)) tell(t.road.stopped(faultWords(error)), true);
    return null;
  }
}

/** Finds the charge-balanced fuel of a run, if nobody has yet; an older search gives way. */
export async function balanceOf(run: Run): Promise<void> {
  const known = balances.value.get(run.id);
  if (known) return;
  balancer.cancel();
  setBalance(run.id, "under way");
  try {
    setBalance(run.id, await balancer.ask((worker, report) => worker.balance(run.request, report)));
  } catch (error) {
    setBalance(run.id, null);
    if (!(error instanceof Cancelled)) tell(t.road.stopped(faultWords(error)), true);
  }
}
