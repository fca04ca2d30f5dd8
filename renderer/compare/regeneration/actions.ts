import { batch } from "@preact/signals";
import { kmhToMps, mphToMps, mpsToKmh, mpsToMph } from "../../../shared/units.ts";
import type { RegenerationMap } from "../../../sim/study/regeneration/study.ts";
import { regenerationCsv, regenerationJson } from "../../../sim/study/regeneration/table.ts";
import { ownStrategies, strategyOf } from "../../state/own-strategies.ts";
import { runOptions } from "../../state/road.ts";
import { units } from "../../state/settings.ts";
import { ownVehicles } from "../../state/store.ts";
import { findVehicle } from "../../state/vehicles.ts";
import { t } from "../../texts/catalogue.ts";
import { Crew, type Piece } from "../../workers/crew.ts";
import { saveStudyAs, workThrough } from "../under-way.ts";
import { cellKey, faultsIn, planOf, type Ranges } from "./plan.ts";
import {
  readPlace,
  type Study,
  study,
  studyCells,
  studyForm,
  studyStrategy,
  studyUnder,
  studyVehicle,
} from "./state.ts";

const c = t.compare.regeneration;

const isMetric = (): boolean => units.value.road === "kmh";

/** A road speed in the person's unit, and back. */
export const toRoad = (speed: number): number => (isMetric() ? mpsToKmh(speed) : mpsToMph(speed));
const fromRoad = (value: number): number => (isMetric() ? kmhToMps(value) : mphToMps(value));

/** What the fields may hold, in the units typed: within what the engine takes and the chosen vehicle's battery. */
export function rangesNow(): Ranges {
  const { socFloor, socCeiling } = findVehicle(ownVehicles.value, studyVehicle.value).battery;
  const inPercent = (share: number): number => Math.round(share * 1000) / 10;
  return {
    speeds: isMetric() ? [5, 250] : [4, 155],
    rates: [0.2, 10],
    charge: [inPercent(socFloor) + 1, inPercent(socCeiling) - 1],
  };
}

/** What is chosen; null while a field is wrong. @throws InputError for what is gone */
export function studyNow(): Study | null {
  if (faultsIn(studyForm.value, rangesNow()).size > 0) return null;
  const vehicle = findVehicle(ownVehicles.value, studyVehicle.value);
  return {
    plan: planOf(studyForm.value, vehicle, withoutCharge(), fromRoad),
    strategy: strategyOf(ownStrategies.value, studyStrategy.value),
  };
}

/** The charge is a side of the study, so the run's own says nothing here. */
function withoutCharge() {
  const { startSoc: _, ...others } = runOptions.value;
  return others;
}

const crew = new Crew();

function* piecesOf({ plan, strategy }: Study): Generator<Piece> {
  for (const charge of plan.charges)
    for (const speed of plan.speeds)
      for (const rate of plan.rates)
        yield async (runner) => {
          const cell = await runner.ask((worker) => worker.brake({ plan, strategy, speed, rate, charge }));
          studyCells.value = new Map(studyCells.value).set(cellKey(cell), cell);
        };
}

/** Drives every stop over all cores; finished ones show at once, also when it is cancelled. */
export const brakeNow = (): Promise<void> =>
  workThrough(crew, studyUnder, c, () => {
    const one = studyNow();
    if (!one) return null;
    batch(() => {
      study.value = one;
      studyCells.value = new Map();
      readPlace.value = { column: 0, row: 0 };
    });
    return { pieces: piecesOf(one), all: one.plan.speeds.length * one.plan.rates.length };
  });

export const cancelBraking = (): void => crew.cancel();

/** What is done so far, in the order of the plan. */
function mapNow({ plan, strategy }: Study): RegenerationMap {
  const cells = plan.speeds.flatMap((speed) =>
    plan.rates.flatMap((rate) => studyCells.value.get(cellKey({ speed, rate })) ?? []),
  );
  const complete = cells.length === plan.speeds.length * plan.rates.length;
  return { plan, strategy: strategy.kind === "own" ? strategy.title : strategy.id, cells, complete };
}

/** Saves what is done so far: the table, or everything that is needed to repeat it. */
export async function saveStudy(kind: "csv" | "json"): Promise<void> {
  const one = study.value;
  if (!one) return;
  const map = mapNow(one);
  await saveStudyAs("regeneration", kind, c.saved, (version) =>
    kind === "csv" ? regenerationCsv(map) : regenerationJson(map, one.strategy, version),
  );
}
