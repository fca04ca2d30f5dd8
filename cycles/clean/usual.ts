import type { RawDrive } from "../../shared/recorded.ts";
import { type Treatment, type TreatmentInput, treatmentsSchema } from "../../shared/treatments.ts";

/** What is done to a drive when nobody says otherwise: places are made into speeds, gaps filled, the ends put at rest. */
export function usualTreatments(raw: RawDrive): Treatment[] {
  const list: TreatmentInput[] =
    raw.kind === "positions"
      ? [{ kind: "smooth" }, { kind: "fillGaps" }, { kind: "startAndEndAtRest" }]
      : [{ kind: "fillGaps" }];
  return treatmentsSchema.parse(list);
}
