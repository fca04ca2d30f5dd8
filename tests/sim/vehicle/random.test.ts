import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { InputError } from "../../../shared/errors.ts";
import { isQuantity } from "../../../sim/parameters/quantity.ts";
import { DECLARATIONS, type Declaration } from "../../../sim/vehicle/declarations.ts";
import { derivedFigures } from "../../../sim/vehicle/figures.ts";
import { readVehicle } from "../../../sim/vehicle/read.ts";
import { vehicleWarnings } from "../../../sim/vehicle/warnings.ts";

const SEED = 20240611;

/** A value that the declaration accepts. */
function inRange({ meta }: Declaration): fc.Arbitrary<unknown> {
  if (meta.kind === "flag") return fc.boolean();
  if (!isQuantity(meta)) return fc.constantFrom(...(meta.options.length > 0 ? meta.options : ["abc"]));
  if (meta.kind === "whole") return fc.integer({ min: meta.min, max: meta.max });
  const number = fc.double({ min: meta.min, max: meta.max, noNaN: true });
  if (meta.kind === "number") return number;
  const column = fc.array(number, { minLength: 2, maxLength: 6 });
  return meta.kind === "column" ? column : fc.array(column, { minLength: 2, maxLength: 6 });
}

/** Some parameters changed, the others left out. */
const changes = (value: (declaration: Declaration) => fc.Arbitrary<unknown>, most: number) =>
  fc.uniqueArray(fc.nat(DECLARATIONS.length - 1), { minLength: 1, maxLength: most }).chain((places) =>
    fc.tuple(
      ...places.map((place) => {
        const declaration = DECLARATIONS[place];
        if (!declaration) throw new Error(`no declaration ${place}`);
        return value(declaration).map((v) => [declaration.path, v] as const);
      }),
    ),
  );

function build(pairs: readonly (readonly [string, unknown])[]): unknown {
  const root: Record<string, unknown> = {};
  for (const [path, value] of pairs) {
    const names = path.split(".");
    const last = names.pop() ?? "";
    let group = root;
    for (const name of names) {
      group[name] ??= {};
      group = group[name] as Record<string, unknown>;
    }
    group[last] = value;
  }
  return root;
}

const known = new Set(DECLARATIONS.map((declaration) => declaration.path));

/** Reads; a refusal must name known parameters and say what is accepted. Undefined when refused. */
function readOrRefuse(input: unknown) {
  try {
    return readVehicle(input, "");
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    expect(error.faults.length).toBeGreaterThan(0);
    for (const fault of error.faults) {
      expect(known, fault.where).toContain(fault.where.replace(/\[\d+\]/g, ""));
      expect(fault.what).not.toBe("");
      expect(fault.accepted).not.toBe("");
      expect(`${fault.what} ${fault.accepted}`).not.toMatch(/NaN|undefined/);
    }
    return undefined;
  }
}

describe(`random vehicles, seed ${SEED}`, () => {
  it.each([1, 4, 40])("up to %d parameters in range: read, or refused with paths", (most) => {
    let read = 0;
    fc.assert(
      fc.property(changes(inRange, most), (pairs) => {
        const vehicle = readOrRefuse(build(pairs));
        if (!vehicle) return;
        read += 1;
        for (const figure of derivedFigures(vehicle)) expect(figure.value, figure.id).not.toBeNaN();
        expect(vehicleWarnings(vehicle).join(" ")).not.toMatch(/NaN|undefined/);
      }),
      { numRuns: 100, seed: SEED },
    );
    if (most === 1) expect(read).toBeGreaterThan(50);
  });

  it("anything at all in one place: read, or refused at that path", () => {
    fc.assert(
      fc.property(
        changes(() => fc.anything(), 1),
        (pairs) => {
          readOrRefuse(build(pairs.filter(([path]) => !path.startsWith("engine.map"))));
        },
      ),
      { numRuns: 500, seed: SEED },
    );
  });

  it("anything at all as a vehicle: read, or refused", () => {
    fc.assert(
      fc.property(fc.anything(), (input) => {
        try {
          readVehicle(input, "file");
        } catch (error) {
          expect(error).toBeInstanceOf(InputError);
        }
      }),
      { numRuns: 500, seed: SEED },
    );
  });
});
