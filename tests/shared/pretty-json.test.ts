import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { prettyJson } from "../../shared/pretty-json.ts";

describe("JSON for people", () => {
  it("is read back as what the language's own writer makes of it, whatever it holds", () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        expect(JSON.parse(prettyJson(value))).toEqual(JSON.parse(JSON.stringify(value)));
      }),
    );
  });

  it("is laid out as the language's own writer does it, lists of numbers apart", () => {
    const value = { a: { b: ["x", { c: true }], d: [], e: {} }, 'q"u': null, n: -0 };
    expect(prettyJson(value)).toBe(JSON.stringify(value, null, 2));
    expect(prettyJson({ list: [1, 2.5e-7, null, -3], left: undefined })).toBe(
      '{\n  "list": [1, 2.5e-7, null, -3]\n}',
    );
  });
});
