import { describe, expect, it } from "vitest";
import { percentile } from "../../../cycles/statistics/percentile.ts";
import { InputError } from "../../../shared/errors.ts";
import { readArguments } from "../../../sim/cli/arguments.ts";
import { timesOf } from "../../../sim/cli/bench/measure.ts";
import { tell } from "../../../sim/cli/errors.ts";
import { looksLikeFile } from "../../../sim/cli/files.ts";
import { firstJsonFault } from "../../../sim/cli/json-place.ts";
import { progressLine } from "../../../sim/cli/progress.ts";
import { OPTION_UNITS, readQuantity } from "../../../sim/cli/quantity.ts";
import { clock, columns, digits, fixed, grouped, labelled, wrap } from "../../../sim/cli/report/text.ts";

describe("percentiles of measured times", () => {
  it("sort as numbers, not as text", () => {
    expect(percentile([0.5, 10, 100, 2, 9], 0.5)).toBe(9);
    expect(timesOf([100, 2, 9, 10, 0.5])).toEqual({ median: 9, min: 0.5, p90: 64, runs: 5 });
  });
});

describe("the place where a text stops being JSON", () => {
  const cases: readonly (readonly [text: string, line: number, column: number, found: string])[] = [
    ["", 1, 1, "the end of the file"],
    ["{", 1, 2, "the end of the file"],
    ['{"a": 1,}', 1, 9, "}"],
    ['{"a": 1\n "b": 2}', 2, 2, '"b": 2}'],
    ["[1, 2,\n  nought]", 2, 3, "nought]"],
    ["[1 2]", 1, 4, "2]"],
    ["{'a': 1}", 1, 2, "'a': 1}"],
    ['{"a": 01}', 1, 7, "01}"],
    ['["no end\n"]', 1, 2, '"no end'],
    ['{"a": NaN}', 1, 7, "NaN}"],
    ["[] []", 1, 4, "[]"],
    ['{"a": {"b": [1, {"c": "\\x"}]}}', 1, 23, '"\\x"}]}}'],
    ["[1]]", 1, 4, "]"],
  ];
  it.each(cases)("%j", (text, line, column, found) => {
    expect(() => JSON.parse(text)).toThrow();
    expect(firstJsonFault(text)).toEqual({ line, column, found });
  });

  it("is the end of the text for every text that is JSON", () => {
    const text = JSON.stringify(
      { a: [1, -2.5e-3, 'x\\"ü\u2028', null, true, {}, []], b: { c: "" } },
      null,
      1,
    );
    expect(firstJsonFault(text).found).toBe("the end of the file");
  });
});

describe("arguments", () => {
  const declared = [
    { name: "wind", value: "SPEED", about: "" },
    { name: "set", value: "X", about: "", many: true },
    { name: "cold", value: "", about: "" },
  ];

  it("take values that start with a minus, behind a blank or an equals sign", () => {
    expect(readArguments("run", ["--wind", "-5"], declared).text("wind")).toBe("-5");
    expect(readArguments("run", ["--wind=-5", "--cold"], declared).has("cold")).toBe(true);
    expect(readArguments("run", ["--set", "a=1", "--set", "b=2"], declared).texts("set")).toEqual([
      "a=1",
      "b=2",
    ]);
  });

  it("tell all that is wrong at once", () => {
    const read = (): unknown => readArguments("run", ["--wnd", "1", "--cold=2", "--wind"], declared);
    expect(read).toThrow(/--wnd[\s\S]*--cold[\s\S]*--wind/);
  });
});

describe("quantities", () => {
  it("take the units of their option", () => {
    expect(readQuantity("--soc", "60%", OPTION_UNITS.soc)).toBe(0.6);
    expect(readQuantity("--wind", "36 km/h", OPTION_UNITS.wind)).toBe(10);
    expect(readQuantity("--air-temperature", "-7C", OPTION_UNITS["air-temperature"])).toBeCloseTo(266.15, 9);
    expect(readQuantity("--step", "1e-2", OPTION_UNITS.step)).toBe(0.01);
    for (const bad of ["", "x", "1,5", "0x10", "Infinity", "5 kg", "5 constructor"]) {
      expect(() => readQuantity("--soc", bad, OPTION_UNITS.soc)).toThrow(InputError);
    }
  });

  it("tell a file from an id", () => {
    for (const path of ["a.json", "./a", "a\\b", "/x/y"]) expect(looksLikeFile(path)).toBe(true);
    for (const id of ["udds", "wltc-class3b", "cruise:speed=10m/s", "cruise:grade=0.5%"]) {
      expect(looksLikeFile(id)).toBe(false);
    }
  });
});

describe("text of reports", () => {
  it("writes numbers", () => {
    expect(fixed(-0.001, 2)).toBe("0.00");
    expect(fixed(Number.NaN, 2)).toBe("–");
    expect(grouped(-1234567.891, 1)).toBe("-1,234,567.9");
    expect(grouped(999, 3)).toBe("999.000");
    expect(digits(0.00012345, 3)).toBe("0.000123");
    expect(clock(59.6)).toBe("01:00");
    expect(clock(3661)).toBe("1:01:01");
  });

  it("breaks and aligns lines", () => {
    expect(wrap("aa bb cc", " ", 6)).toEqual([" aa bb", " cc"]);
    expect(labelled("what", "it is", 8)).toEqual(["what    it is"]);
    expect(
      columns(
        [
          ["a", "1"],
          ["bbb", "22"],
        ],
        "lr",
      ),
    ).toEqual(["a     1", "bbb  22"]);
  });
});

describe("errors", () => {
  it("of the program are told as such, with exit code 1", () => {
    expect(tell(new Error("odd"))).toMatchObject({
      code: 1,
      text: expect.stringContaining("fault of the program"),
    });
    expect(tell(new RangeError("Array buffer allocation failed")).code).toBe(2);
  });
});

describe("progress", () => {
  function shown(isTTY: boolean, times: readonly number[]): string {
    let text = "";
    let i = 0;
    const write = (piece: string): boolean => {
      text += piece;
      return true;
    };
    const line = progressLine({ isTTY, write }, () => times[i++] ?? 0);
    for (let call = 1; call < times.length; call += 1) line.show("driving", call / 10);
    line.clear();
    return text;
  }

  it("is silent in the first second, then rare where lines stay", () => {
    expect(shown(false, [0, 500, 900])).toBe("");
    expect(shown(false, [0, 500, 1100, 1200, 12_000])).toBe("driving … 20 %\ndriving … 40 %\n");
  });

  it("writes over one line of a terminal and takes it away", () => {
    expect(shown(true, [0, 1100])).toBe(`\rdriving … 10 %\r${" ".repeat(14)}\r`);
  });
});
