import fc from "fast-check";
import { expect, it } from "vitest";
import { slug } from "../../cycles/slug.ts";

it.each([
  ["My Ride (1).csv", "my-ride-1-csv"],
  ["Größe é", "gro-e-e"],
  ["  ", "imported"],
  ["???", "imported"],
])("turns %j into %s", (text, id) => {
  expect(slug(text, "imported")).toBe(id);
});

it("gives lower case, digits and single hyphens for any text", () => {
  fc.assert(
    fc.property(fc.string({ unit: "binary" }), (text) => {
      expect(slug(text, "x")).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
    }),
  );
});
