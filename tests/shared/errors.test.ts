import { describe, expect, it } from "vitest";
import { at, realAt } from "../../shared/at.ts";
import { faultText, InputError } from "../../shared/errors.ts";

const fault = { what: "too small", where: "body.mass", value: "12", accepted: "300 … 12000 kg" };

describe("input errors", () => {
  it("say what, where, the value and what is accepted, in one line", () => {
    expect(faultText(fault)).toBe("body.mass: too small. Found: 12. Accepted: 300 … 12000 kg.");
    expect(faultText({ ...fault, what: "Is this right?", value: "" })).toBe(
      "body.mass: Is this right? Accepted: 300 … 12000 kg.",
    );
  });

  it("carry every fault", () => {
    const error = new InputError([fault, { ...fault, where: "engine" }]);
    expect(error).toBeInstanceOf(Error);
    expect(error.name).toBe("InputError");
    expect(error.faults.map((f) => f.where)).toEqual(["body.mass", "engine"]);
    expect(error.message.split("\n")).toHaveLength(2);
    expect(new InputError(fault).faults).toEqual([fault]);
  });
});

describe("reads by index", () => {
  it("give the element, or throw with the place and the range", () => {
    const numbers = Float64Array.from([1, 0, Number.NaN]);
    expect(at(["a", "b"], 1)).toBe("b");
    expect(realAt(numbers, 1)).toBe(0);
    expect(realAt(numbers, 2)).toBeNaN();
    for (const index of [-1, 3, 0.5, Number.NaN]) {
      expect(() => at(numbers, index)).toThrow(RangeError);
      expect(() => realAt(numbers, index)).toThrow(`index ${index} outside 0 … 2`);
    }
  });
});
