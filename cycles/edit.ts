import type { CycleTrace, Phase, Span } from "../shared/cycle.ts";
import { InputError } from "../shared/errors.ts";
import { cut, overlap, samplesAt, wholeSpan } from "./cut.ts";
import { MAX_SAMPLES } from "./limits.ts";

/**
 * Cuts a span out and starts its clock at 0. Phases and soaks are cut with it.
 * @param trace stays as it is
 * @param span s, within the trace, start < end; ends between samples are found on the straight line
 * @returns a trace of the same id, with a sentence added to its treatment
 * @throws InputError when the span is empty or reaches outside
 */
export function crop(trace: CycleTrace, span: Span): CycleTrace {
  const whole = wholeSpan(trace);
  if (!(span.start >= whole.start && span.end <= whole.end && span.start < span.end)) {
    throw new InputError({
      what: "The span to keep does not lie in the cycle.",
      where: `cycle "${trace.id}", span`,
      value: `${span.start} to ${span.end} s`,
      accepted: `start < end, both from ${whole.start} to ${whole.end} s`,
    });
  }
  const samples = cut(trace, span);
  return {
    ...trace,
    time: samples.time.map((t) => t - span.start),
    speed: samples.speed,
    grade: samples.grade,
    phases: clip(trace.phases, span),
    soaks: clip(trace.soaks, span),
    treatment: [...trace.treatment, `Cut to ${span.start} to ${span.end} s; time counted from the cut.`],
  };
}

function clip<T extends Span | Phase>(parts: readonly T[], span: Span): T[] {
  const kept: T[] = [];
  for (const part of parts) {
    const rest = overlap(part, span);
    if (rest) kept.push({ ...part, start: rest.start - span.start, end: rest.end - span.start });
  }
  return kept;
}

/**
 * Makes even samples by straight lines; the last sample stays where it is, so the last step may be shorter.
 * Peaks between the new samples are lost: a step longer than the old one flattens the trace.
 * @param trace stays as it is
 * @param step s, above 0, and giving at most 1,000,000 samples
 * @returns a trace of the same id, with a sentence added to its treatment
 * @throws InputError when the step is out of range
 */
export function resample(trace: CycleTrace, step: number): CycleTrace {
  const { start, end } = wholeSpan(trace);
  const smallest = (end - start) / (MAX_SAMPLES - 1);
  if (!(step >= smallest && Number.isFinite(step))) {
    throw new InputError({
      what: "The time step to sample with is out of range.",
      where: `cycle "${trace.id}", time step`,
      value: `${step} s`,
      accepted: `a time step of ${smallest} s or longer`,
    });
  }
  // A sample within a billionth of a step of the end is the end: rounding must not leave two of them.
  const count = Math.max(1, Math.ceil((end - start) / step - 1e-9));
  const times = Float64Array.from({ length: count + 1 }, (_, k) => (k === count ? end : start + k * step));
  return {
    ...trace,
    ...samplesAt(trace, times),
    treatment: [...trace.treatment, `Sampled anew every ${step} s by straight lines.`],
  };
}
