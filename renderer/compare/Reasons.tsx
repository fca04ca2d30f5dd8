import { type Difference, whereTheyDiffer } from "../../sim/study/compare/differ.ts";
import type { ComparisonResult } from "../../sim/study/compare/run-job.ts";
import { runNow } from "../drive/actions.ts";
import { num } from "../state/format.ts";
import { ownId } from "../state/own-strategies.ts";
import { goTo } from "../state/place.ts";
import { cycleId, moveTo, runOptions, strategyId } from "../state/road.ts";
import { setVehicle } from "../state/store.ts";
import { t } from "../texts/catalogue.ts";
import { clockTime } from "../ui/time.ts";
import { against, compareCursor, lowerHeatOf, pickedResult } from "./state.ts";

const c = t.compare;

const title = (id: string): string => t.roadRegimes[id]?.title.toLowerCase() ?? id;

/** Drives the picked line on Road, from the charge that balanced it, and goes to the stretch. */
async function openOnRoad({ row }: ComparisonResult, at: number): Promise<void> {
  setVehicle(row.vehicle.id);
  cycleId.value = row.cycle.id;
  strategyId.value = row.strategy.id === "own" ? ownId(row.strategy.title) : row.strategy.id;
  runOptions.value = { ...runOptions.value, startSoc: row.start_soc };
  goTo("road");
  await runNow();
  moveTo(at);
}

function Reason({ one, place, of }: { one: Difference; place: number; of: ComparisonResult }) {
  const grams = (one.energy * 1000) / lowerHeatOf(of);
  const [a, b] = one.charge;
  return (
    <li>
      <button
        type="button"
        class="reason"
        onClick={() => {
          compareCursor.value = one.from;
        }}
      >
        <span class="reason-head">
          <b class="square">{place}</b>
          <b>{c.span(clockTime(one.from, 0), clockTime(one.to, 0))}</b>
          <span class="grow" />
          <b class="ink fuel">+{num(grams, 1)} g</b>
        </span>
        <span>
          {c.why(
            title(one.regimes[0]),
            title(one.regimes[1]),
            c.chargeMoved(num(a * 100, 1), num(b * 100, 1)),
          )}
        </span>
      </button>
      <button type="button" class="btn quiet" onClick={() => void openOnRoad(of, one.from)}>
        {c.open}
      </button>
    </li>
  );
}

/** The stretches in which the picked line loses most against the reference. */
export function Reasons() {
  const one = pickedResult.value;
  const other = against.value?.result ?? null;
  if (!one || !other || one === other) return null;
  const found = whereTheyDiffer(one.series, other.series, other.row.slope);
  return (
    <section class="reasons" aria-label={c.differ}>
      <p>
        <b>{c.differ}</b>{" "}
        <span class="unit">{c.differSub(one.row.strategy.title, other.row.strategy.title)}</span>
      </p>
      {found.length === 0 && <p>{c.none}</p>}
      <ol>
        {found.map((difference, i) => (
          <Reason key={difference.from} one={difference} place={i + 1} of={one} />
        ))}
      </ol>
    </section>
  );
}
