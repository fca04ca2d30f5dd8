import { at } from "../../shared/at.ts";
import type { CycleTrace, Span } from "../../shared/cycle.ts";
import { InputError } from "../../shared/errors.ts";
import { faultsOf } from "../../shared/project-faults.ts";
import type { RawDrive, RecordedLog } from "../../shared/recorded.ts";
import { type Treatment, treatmentsSchema } from "../../shared/treatments.ts";
import { mpsToKmh } from "../../shared/units.ts";
import type { Samples } from "../cut.ts";
import { MAX_SPEED } from "../limits.ts";
import { cropWork, resampleWork } from "./cut-work.ts";
import { type DriveFigures, figuresOf, rawFigures } from "./figures.ts";
import { fillGaps } from "./fill-gaps.ts";
import { level, limitAcceleration, limitGrade, setToRest, startAndEndAtRest } from "./limit.ts";
import { moveLog, moveTimes } from "./move-log.ts";
import { smoothPlaces } from "./smooth-places.ts";
import { smoothSpeeds } from "./smooth-speeds.ts";
import { type ClockPart, type Done, startWork, type Work } from "./work.ts";

/** What one treatment did. */
export interface TreatmentStep {
  readonly treatment: Treatment;
  /** For a person to read. */
  readonly sentence: string;
  /** Figures behind the sentence, by name, SI. */
  readonly facts: Readonly<Record<string, number>>;
  /** s, on the clock after this step: where the vehicle was found standing, or where something was changed. */
  readonly spans: readonly Span[];
  /** The drive after this step. */
  readonly figures: DriveFigures;
}

/** A drive before and after its treatments. */
export interface TreatedDrive {
  /** As recorded; of places the speed from each to the next. To be shown, not driven. */
  readonly before: CycleTrace;
  /** To be driven; its `treatment` holds how it was read and one sentence a step. */
  readonly after: CycleTrace;
  /** The drive as recorded on the clock of `after`, to be drawn over it; what was cut away is left out. */
  readonly beforeMoved: Samples;
  /** What was recorded beside the drive, on the clock of `after`; null when nothing was. */
  readonly overlay: RecordedLog | null;
  readonly figuresBefore: DriveFigures;
  readonly figuresAfter: DriveFigures;
  readonly steps: readonly TreatmentStep[];
  /** s, on the clock of `after`: gaps that no step has filled. */
  readonly openGaps: readonly Span[];
}

/**
 * Reads a list of treatments as it stands in a file; what has a usual value may be left out.
 * @param where the file's name, for messages
 * @throws InputError with one fault for each wrong field, its path, value and what is accepted
 */
export function readTreatments(data: unknown, where: string): Treatment[] {
  const parsed = treatmentsSchema.safeParse(data);
  if (parsed.success) return parsed.data;
  throw new InputError(faultsOf(parsed.error.issues, treatmentsSchema, data, where));
}

/**
 * Does treatments to a recorded drive, in their order. Pure: the same drive and list give the same result.
 * @throws InputError when a treatment does not fit the drive (a crop outside it, say), or when what is left cannot be
 *   driven (faster than 400 km/h)
 */
export function treat(raw: RawDrive, treatments: readonly Treatment[]): TreatedDrive {
  const start = startWork(raw);
  let work = start;
  const steps = treatments.map((treatment, i): TreatmentStep => {
    const where = `${raw.source}: treatments[${i}] (${treatment.kind})`;
    const { sentence, facts, spans, work: next } = apply(work, treatment, where);
    work = next;
    return { treatment, sentence, facts, spans, figures: figuresOf(next.samples) };
  });
  const sentences = steps.map((step) => step.sentence);
  const after = traceOf(raw, work, [...raw.reading, ...sentences]);
  checkSpeed(after);
  return {
    before: traceOf(raw, start, raw.reading),
    after,
    beforeMoved: movedSamples(start.samples, work.clock),
    overlay: raw.overlay && moveLog(raw.overlay, work.clock),
    figuresBefore: rawFigures(raw, start.samples),
    figuresAfter: figuresOf(work.samples),
    steps,
    openGaps: work.gaps.map(({ start: from, end }) => ({ start: from, end })),
  };
}

function apply(work: Work, treatment: Treatment, where: string): Done {
  switch (treatment.kind) {
    case "crop":
      return cropWork(work, treatment, where);
    case "smooth":
      return work.places ? smoothPlaces(work, work.places, treatment) : smoothSpeeds(work, treatment);
    case "fillGaps":
      return fillGaps(work, treatment.longest);
    case "resample":
      return resampleWork(work, treatment.step);
    case "limitAcceleration":
      return limitAcceleration(work, treatment.acceleration, treatment.deceleration);
    case "setToRest":
      return setToRest(work, treatment.below, treatment.atLeast, treatment);
    case "startAndEndAtRest":
      return startAndEndAtRest(work, treatment.acceleration);
    case "limitGrade":
      return limitGrade(work, treatment.steepest);
    case "level":
      return level(work);
  }
}

function movedSamples(samples: Samples, clock: readonly ClockPart[]): Samples {
  const { rows, time } = moveTimes(samples.time, clock);
  const pick = (values: Float64Array): Float64Array => Float64Array.from(rows, (i) => at(values, i));
  return { time, speed: pick(samples.speed), grade: pick(samples.grade) };
}

function traceOf(raw: RawDrive, work: Work, treatment: readonly string[]): CycleTrace {
  const { id, title, source } = raw;
  return { id, title, source, ...work.samples, phases: [], soaks: [], treatment };
}

function checkSpeed({ time, speed, source }: CycleTrace): void {
  const wrong = speed.findIndex((v) => !(Math.abs(v) <= MAX_SPEED));
  if (wrong < 0) return;
  throw new InputError({
    what: "After these treatments the drive is faster than any road vehicle.",
    where: `${source}, at ${at(time, wrong).toFixed(1)} s`,
    value: `${mpsToKmh(at(speed, wrong)).toFixed(0)} km/h`,
    accepted: `up to ${Math.round(mpsToKmh(MAX_SPEED))} km/h; smoothing sets impossible places aside`,
  });
}

export { usualTreatments } from "./usual.ts";
