import { describe, expect, it } from "vitest";
import {
  fieldsOf,
  fieldValue,
  freshTreatment,
  rangeWords,
  readField,
  shownNumber,
  type TreatmentField,
  withField,
} from "../../../renderer/cycles/treatment-fields.ts";
import { en } from "../../../renderer/texts/en.ts";
import { type TreatmentKind, treatmentSchema } from "../../../shared/treatments.ts";

const KINDS = Object.keys(en.cycles.treatments) as TreatmentKind[];
const UNITS = [
  { shaft: "rpm", road: "kmh" },
  { shaft: "rpm", road: "mph" },
] as const;

const each: [TreatmentKind, "positions" | "speeds", TreatmentField][] = KINDS.flatMap((kind) =>
  (["positions", "speeds"] as const).flatMap((raw) =>
    fieldsOf(kind, raw).map((field): [TreatmentKind, "positions" | "speeds", TreatmentField] => [
      kind,
      raw,
      field,
    ]),
  ),
);

describe("the numbers of the treatments", () => {
  it("can be added with what the schema takes", () => {
    expect(KINDS.length).toBe(9);
    for (const kind of KINDS)
      expect(treatmentSchema.safeParse(freshTreatment(kind, 60)).success, kind).toBe(true);
  });

  it.each(each)("%s (%s): %o has a range that the schema takes to its ends", (kind, _, field) => {
    const fresh = freshTreatment(kind, 60);
    for (const end of [field.least, field.most])
      expect(fieldValue(withField(fresh, field.key, end), field.key)).toBe(end);
  });

  it("are refused by the schema beyond the range, for those whose range is the schema's own", () => {
    for (const [kind, raw, field] of each) {
      // Smoothing of speeds is held narrower than the schema, which must do for positions too.
      if (kind === "smooth") continue;
      const beyond = { ...freshTreatment(kind, 60), [field.key]: field.most * 1.01 };
      expect(treatmentSchema.safeParse(beyond).success, `${kind} ${raw} ${field.key}`).toBe(false);
    }
  });

  it("read back what is shown, in either unit of road speed", () => {
    for (const units of UNITS)
      for (const [kind, , field] of each) {
        const value = fieldValue(freshTreatment(kind, 60), field.key);
        if (value === "auto") continue;
        const read = readField(field, shownNumber(field.measure, units, value), units);
        expect(read, `${kind} ${field.key}`).toBeCloseTo(value, 3);
      }
  });

  it("take the unit as it is shown, and refuse another, a range left, and words", () => {
    const [below] = fieldsOf("setToRest", "speeds");
    const [kmh, mph] = UNITS;
    if (!below) throw new Error("no field");
    expect(readField(below, "3.6", kmh)).toBeCloseTo(1, 12);
    expect(readField(below, "3.6 km/h", kmh)).toBeCloseTo(1, 12);
    expect(readField(below, "2.2369362920544 mph", mph)).toBeCloseTo(1, 12);
    expect(readField(below, "3.6 kg", kmh)).toBeNull();
    expect(readField(below, "19", kmh)).toBeNull();
    expect(readField(below, "slow", kmh)).toBeNull();
    expect(readField(below, "", kmh)).toBeNull();
    expect(rangeWords(below, kmh)).toBe("0 … 18 km/h");
  });

  it("may be left to be found, where that is possible", () => {
    const [jitter] = fieldsOf("smooth", "positions");
    if (!jitter) throw new Error("no field");
    expect(readField(jitter, " ", UNITS[0])).toBe("auto");
    expect(fieldValue(withField(freshTreatment("smooth", 60), "jitter", "auto"), "jitter")).toBe("auto");
  });
});
