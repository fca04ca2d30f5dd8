import type { OwnCycle } from "../../shared/own-cycles.ts";
import { type ProjectParts, projectWork } from "../workers/project-work.ts";

/** Samples of all own cycles up to which writing takes less time than starting a worker. */
const FEW_SAMPLES = 5_000;

const samplesOf = ({ trace, recording }: OwnCycle): number =>
  trace.time.length + (recording ? recording.raw.time.length : 0);

/** Writes in a worker of its own, which goes with the work. @throws what the worker throws, or why there is none */
async function elsewhere(parts: ProjectParts): Promise<string> {
  const { projectRunner } = await import("./project-runner.ts");
  const runner = projectRunner();
  try {
    return await runner.ask(async (worker) => await worker.write(parts));
  } finally {
    runner.end();
  }
}

/**
 * The text of a project's file. A day's recording is written in a worker, so that the page
 * stays at hand; where there is none, here.
 */
export async function projectText(
  parts: ProjectParts,
  write: (parts: ProjectParts) => Promise<string> = elsewhere,
): Promise<string> {
  const samples = parts.own.reduce((sum, one) => sum + samplesOf(one), 0);
  if (samples <= FEW_SAMPLES) return projectWork.write(parts);
  try {
    return await write(parts);
  } catch {
    // Saving may not fail for want of a worker; what is wrong with the project itself fails here again.
    return projectWork.write(parts);
  }
}
