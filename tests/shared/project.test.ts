import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { InputFault } from "../../shared/errors.ts";
import {
  MIGRATIONS,
  type Migration,
  migrate,
  newProject,
  type Project,
  readProject,
  SCHEMA_VERSION,
  writeProject,
} from "../../shared/project.ts";
import { faultsOf } from "../cycles/faults-of.ts";

const WHERE = "lesson.trishaft.json";
const minimal = {
  schemaVersion: 1,
  vehicle: { kind: "preset", id: "compact" },
  cycle: { kind: "catalogue", line: "cruise:speed=100km/h" },
};
const table = {
  kind: "table",
  id: "way-to-work",
  title: "Way to work",
  source: "ride.csv",
  time: [0, 1, 2.5],
  speed: [0, 0.1 + 0.2, 1e-7],
  grade: [0, -0.01, 0],
};

const read = (data: unknown): Project => readProject(JSON.stringify(data), WHERE);
const refused = (data: unknown): readonly InputFault[] => faultsOf(() => read(data));
const refusedText = (text: string): InputFault | undefined => faultsOf(() => readProject(text, WHERE))[0];

describe("a project file", () => {
  it("needs version, vehicle and cycle, the rest has defaults", () => {
    const project = read(minimal);
    expect(project).toEqual(
      newProject({ kind: "preset", id: "compact" }, { kind: "catalogue", line: "cruise:speed=100km/h" }),
    );
    expect(project.bench.carrier).toEqual({ mode: "drive", speed: 0 });
    expect(project.view.units).toEqual({ speed: "km/h", consumption: "L/100 km", rotation: "rev/min" });
  });

  it("comes back to the last bit", () => {
    const full = {
      ...minimal,
      title: "Sun at rest [1,\n 2]",
      vehicle: { kind: "own", title: "Mine", parameters: { body: { mass: 1234.5 }, list: [1, 2, 3] } },
      cycle: { ...table, phases: [{ id: "one", title: "One", start: 0, end: 2.5 }] },
      strategies: [
        { kind: "built-in", id: "rules" },
        { kind: "own", title: "Try", text: "export const decide = (now) => ({ engineOn: true });\n" },
      ],
      runOptions: { payload: 120, coldStart: true },
      bench: { sun: { mode: "hold", speed: 0 }, ring: { mode: "follow", speed: 1 / 3 }, engineTorque: 80 },
      lesson: { id: "torque-split", step: 3, answers: { "q-1": 3.5, "q-2": "because" }, seed: 7 },
      view: { place: "road", theme: "dark", projector: true, plots: ["soc"], cursor: 12.3 },
    };
    const project = read(full);
    const text = writeProject(project);
    expect(readProject(text, WHERE)).toEqual(project);
    expect(writeProject(readProject(text, WHERE))).toBe(text);
    expect(text).toContain('"time": [0, 1, 2.5],\n');
    expect(text).toContain(JSON.stringify(full.title));
  });

  it("may begin with a byte-order mark", () => {
    expect(readProject(`\uFEFF${JSON.stringify(minimal)}`, WHERE)).toEqual(read(minimal));
  });

  it("keeps any numbers of a table", () => {
    const number = fc.double({ noNaN: true, noDefaultInfinity: true }).map((x) => x + 0);
    fc.assert(
      fc.property(fc.array(number, { minLength: 3, maxLength: 3 }), (speed) => {
        const project = read({ ...minimal, cycle: { ...table, speed } });
        expect(readProject(writeProject(project), WHERE)).toEqual(project);
      }),
      { seed: 4711 },
    );
  });

  it("is not written with what could not be read", () => {
    const project = { ...read(minimal), title: "x".repeat(201) };
    expect(() => writeProject(project)).toThrow();
  });
});

describe("a wrong field is refused with its path", () => {
  it.each<[string, unknown, Partial<InputFault>]>([
    ["vehicle", { ...minimal, vehicle: undefined }, { what: "missing", accepted: "an object" }],
    [
      "vehicle.kind",
      { ...minimal, vehicle: { kind: "bought" } },
      { value: '"bought"', accepted: "preset or own" },
    ],
    ["vehicle.id", { ...minimal, vehicle: { kind: "preset", id: 3 } }, { what: "not a text", value: "3" }],
    ["vehicle.id", { ...minimal, vehicle: { kind: "preset", id: "A b" } }, { value: '"A b"' }],
    [
      "view.units.speed",
      { ...minimal, view: { units: { speed: "knots" } } },
      { accepted: "km/h or mph", value: '"knots"' },
    ],
    [
      "view.slowdown",
      { ...minimal, view: { slowdown: 0 } },
      { what: "too small", accepted: "1 or more", value: "0" },
    ],
    [
      "bench.engineTorque",
      { ...minimal, bench: { engineTorque: 1e9 } },
      { what: "too large", accepted: "2000 or less" },
    ],
    [
      "bench",
      { ...minimal, bench: { carrier: { mode: "follow", speed: 0 } } },
      { what: "2 shafts follow", value: "an object" },
    ],
    [
      "bench.sun.turns",
      { ...minimal, bench: { sun: { mode: "follow", speed: 0, turns: 4 } } },
      { what: "unknown field", value: "4", accepted: "mode, speed" },
    ],
    ["lesson.step", { ...minimal, lesson: { id: "a", step: 1.5 } }, { accepted: "a whole number" }],
    ["strategies[0].id", { ...minimal, strategies: [{ kind: "built-in", id: "" }] }, { what: "too short" }],
    [
      "strategies[1].colour",
      { ...minimal, strategies: [minimal.vehicle, { kind: "own", title: "t", text: "", colour: 1 }] },
      { accepted: "kind, title, text" },
    ],
    ["cycle.grade", { ...minimal, cycle: { ...table, grade: [0, 0] } }, { accepted: "3 numbers" }],
    ["cycle.time[0]", { ...minimal, cycle: { ...table, time: [1, 2, 3] } }, { accepted: "0", value: "1" }],
    [
      "cycle.time[2]",
      { ...minimal, cycle: { ...table, time: [0, 2, 2] } },
      { what: "time does not go on", value: "2", accepted: "more than 2" },
    ],
    ["cycle.speed[1]", { ...minimal, cycle: { ...table, speed: [0, "5", 0] } }, { what: "not a number" }],
    ["maker", { ...minimal, maker: "me" }, { what: "unknown field", value: '"me"' }],
  ])("%s", (path, data, expected) => {
    const fault = refused(data).find((one) => one.where === `${WHERE}: ${path}`);
    expect(fault).toMatchObject(expected);
    expect(fault?.accepted).not.toBe("");
  });

  it("tells several at once, ten at most", () => {
    const strategies = Array.from({ length: 30 }, () => ({ kind: "built-in", id: 1 }));
    expect(refused({ ...minimal, title: 3, view: { place: "garage" } })).toHaveLength(2);
    expect(refused({ ...minimal, strategies })).toHaveLength(10);
  });

  it("names a number too large for any file", () => {
    expect(refusedText(JSON.stringify(minimal).replace("1,", '1,"view":{"cursor":1e999},'))).toMatchObject({
      where: `${WHERE}: view.cursor`,
    });
  });

  it("treats the name of a prototype as any other", () => {
    expect(refusedText(JSON.stringify(minimal).replace("1,", '1,"__proto__":{"x":1},'))).toMatchObject({
      where: `${WHERE}: __proto__`,
    });
  });
});

describe("text that is not JSON is refused with line and column", () => {
  it.each([
    ["", "line 1, column 1", "", "a value"],
    ["{", "line 1, column 2", "", "a field's name in quotation marks or }"],
    ['{\n  "a": x\n}', "line 2, column 8", "x", "a value"],
    ['{"a": 1,}', "line 1, column 9", "}", "a field's name in quotation marks"],
    ["[1,\r\n 2,\r\n]", "line 3, column 1", "]", "a value"],
    ["[1 2]", "line 1, column 4", "2", "a comma or the closing bracket"],
    ['{"a" 1}', "line 1, column 6", "1", "a colon"],
    ["{} {}", "line 1, column 4", "{", "nothing more"],
    ["[1}", "line 1, column 3", "}", "a comma or the closing bracket"],
    ['["open', "line 1, column 2", '"open', "a value or ]"],
    ['["tab\there"]', "line 1, column 2", '"tab\there"]', "a value or ]"],
    ["{a: 1}", "line 1, column 2", "a", "a field's name in quotation marks or }"],
    ["01", "line 1, column 2", "1", "nothing more"],
  ])("%j", (text, place, value, accepted) => {
    expect(refusedText(text)).toMatchObject({ where: `${WHERE}, ${place}`, value, accepted });
  });

  it("at any place where a good file is cut off", () => {
    const whole = JSON.stringify({ ...minimal, title: 'é \u007f \u{1F600} \\ " \u2028', cycle: table });
    for (let length = 0; length < whole.length; length += 1) {
      expect(refusedText(whole.slice(0, length))?.where).toMatch(/line 1, column \d+$/);
    }
  });

  it("at any place where a sign is put in, if the runtime refuses it", () => {
    const whole = JSON.stringify(minimal);
    fc.assert(
      fc.property(
        fc.nat(whole.length),
        fc.constantFrom("{", "}", "[", ",", ":", '"', "x", "-"),
        (at, sign) => {
          const text = whole.slice(0, at) + sign + whole.slice(at);
          try {
            JSON.parse(text);
          } catch {
            expect(refusedText(text)?.where).toMatch(/, line 1, column \d+$/);
          }
        },
      ),
      { seed: 12, numRuns: 500 },
    );
  });

  it("however deep it is", () => {
    expect(refusedText("[".repeat(200_000))).toMatchObject({ where: `${WHERE}, line 1, column 200001` });
  });
});

describe("versions", () => {
  it.each([
    ["a newer one", { ...minimal, schemaVersion: 2 }, { value: "2", accepted: "1" }],
    ["none", { ...minimal, schemaVersion: undefined }, { value: "" }],
    ["a word", { ...minimal, schemaVersion: "1" }, { value: '"1"' }],
    ["a part", { ...minimal, schemaVersion: 0.5 }, { value: "0.5" }],
  ])("%s is refused", (_, data, expected) => {
    expect(refused(data)[0]).toMatchObject({ where: `${WHERE}: schemaVersion`, ...expected });
  });

  it("say when the file is newer than the program", () => {
    expect(refused({ schemaVersion: 9 })[0]?.what).toContain("newer version");
  });

  it.each([
    ["a list", []],
    ["null", null],
    ["a number", 3],
  ])("%s is no project", (value, data) => {
    expect(refused(data)[0]).toMatchObject({ where: WHERE, value });
  });

  it("go up one by one", () => {
    const steps: Migration[] = [
      { from: 1, about: "name became title", change: ({ name, ...rest }) => ({ ...rest, title: name }) },
      { from: 2, about: "title with a mark", change: (old) => ({ ...old, title: `${String(old.title)}!` }) },
    ];
    expect(migrate({ schemaVersion: 1, name: "a" }, WHERE, steps, 3)).toEqual({
      schemaVersion: 3,
      title: "a!",
    });
    expect(migrate({ schemaVersion: 2, title: "b" }, WHERE, steps, 3)).toEqual({
      schemaVersion: 3,
      title: "b!",
    });
    expect(faultsOf(() => migrate({ schemaVersion: 4 }, WHERE, steps, 3))[0]?.accepted).toBe("1 to 3");
  });

  it("have a migration for each step", () => {
    expect(MIGRATIONS.map((step) => step.from)).toEqual(
      Array.from({ length: SCHEMA_VERSION - 1 }, (_, i) => i + 1),
    );
  });
});
