import { describe, expect, it } from "vitest";
import { cycleById } from "../../../../cycles/catalogue.ts";
import { InputError } from "../../../../shared/errors.ts";
import { OWN_LIMITS } from "../../../../sim/control/own/contract.ts";
import { OwnStrategyError } from "../../../../sim/control/own/fault.ts";
import { loadOwnStrategies } from "../../../../sim/control/own/load.ts";
import { rules } from "../../../../sim/control/strategies/rules.ts";
import { simulate } from "../../../../sim/run/simulate.ts";
import { vehicleById } from "../../../../sim/vehicle/presets/registry.ts";

const compact = vehicleById("compact");
const drive = cycleById("launch");

/** The error that a strategy ends with; its text is told from its first line on. */
async function failure(text: string): Promise<OwnStrategyError> {
  const own = await loadOwnStrategies();
  const strategy = own.strategy({ name: "mine", text, seed: 1 });
  try {
    simulate(compact, drive, strategy);
  } catch (error) {
    if (error instanceof OwnStrategyError) return error;
    throw error;
  } finally {
    strategy.close();
  }
  throw new Error("the strategy did not fail");
}

const decide = (...lines: string[]): string =>
  ["export function decide(now, memory) {", ...lines, "}"].join("\n");

// What a strategy may try, from the list in the task: each gets a message of its own.
type Attempt = readonly [what: string, text: string, kind: string, message: RegExp];
const ATTEMPTS: readonly Attempt[] = [
  ["an endless loop", decide("while (true) {}"), "steps", /does not come to an end.*100,000 loops/],
  [
    "an endless loop that catches",
    decide("for (;;) { try { while (true) {} } catch {} }"),
    "steps",
    /does not come/,
  ],
  ["an endless loop while it is read", "while (true) {}", "steps", /line 1.*does not come to an end/],
  [
    "a slow regular expression",
    decide("return /(a+)+$/.test('a'.repeat(60) + 'b')"),
    "steps",
    /does not come/,
  ],
  [
    "an endless loop of heavy calls",
    decide("const all = Array.from({ length: 1000 }, (_, i) => i);", "for (;;) all.slice().sort();"),
    "error",
    /line 3.*goes through too much in one decision/,
  ],
  [
    "an endless loop of heavy calls that catches",
    decide("for (;;) try { JSON.parse(JSON.stringify(new Array(1000).fill(0.1))); } catch {}"),
    "steps",
    /does not come to an end/,
  ],
  ["one huge text", decide("return 'x'.repeat(1e9)"), "memory", /line 2.*memory.*32 MB/],
  ["one huge list", decide("return new Float64Array(1e8)"), "memory", /memory/],
  [
    "many lists",
    decide("const all = [];", "while (true) all.push(new Uint8Array(100000));"),
    "memory",
    /memory/,
  ],
  [
    "a memory that grows from call to call",
    decide("memory.all ??= [];", "memory.all.push(new Uint8Array(1e6));", "return { engineOn: false };"),
    "memory",
    /at \d+\.\d+ s.*memory/,
  ],
  ...(
    [
      ["numbers", "", "new Float64Array(2e6)"],
      ["bytes", "", "new Uint8Array(1.5e7)"],
      ["a kind of its own", "class Mine extends Float64Array {}", "new Mine(1e6)"],
      ["bare memory", "", "new ArrayBuffer(1.5e7)"],
      ["a list from another", "const list = new Uint8Array(9e5);", "new Uint8Array(list)"],
      ["a list from a length", "", "Float64Array.from({ length: 1e5 })"],
      ["a copy", "const list = new Uint8Array(9e5);", "list.slice()"],
      ["a copy the other way round", "const list = new Uint8Array(9e5);", "list.toReversed()"],
      ["a copy of bare memory", "const bare = new ArrayBuffer(9e5);", "bare.slice(0)"],
    ] as const
  ).map(
    ([what, first, made]): Attempt => [
      `an endless loop that makes ${what}`,
      decide(first, "for (;;)", `${made};`),
      "error",
      /line [24].*goes through too much/,
    ],
  ),
  [
    "a huge power",
    decide("return { engineOn: 3n ** 3000000n > 5n };"),
    "text",
    /line 2, column 20.*any size.*3n/,
  ],
  ["a huge number made", decide("let x = BigInt(7);"), "error", /line 2.*BigInt is not there/],
  ["lists of huge numbers", decide("new BigInt64Array(2);"), "error", /BigInt64Array is not there/],
  ["a text made into code", decide("return eval('3n ** 2000000n');"), "error", /line 2.*eval is not there/],
  [
    "a text made into code by a constructor",
    decide("return (() => 1).constructor('return 3n ** 2000000n')();"),
    "error",
    /line 2.*makes no code/,
  ],
  [
    "recursion",
    decide("return deeper();", "}", "function deeper() {", "return deeper() + 1;"),
    "depth",
    /line 5.*too deeply/,
  ],
  ["deep JSON", decide("return JSON.parse('['.repeat(9999))"), "depth", /too deeply/],
  ["a list without end", decide("return new Array(4e9).indexOf(1)"), "error", /too long for indexOf/],
  [
    "something like a list without end",
    decide("return [].indexOf.call({ length: 1e15 }, 1)"),
    "error",
    /lists only/,
  ],
  [
    "a prototype made over",
    decide("Object.prototype.engineOn = true;", "return {};"),
    "error",
    /line 2.*not extensible/,
  ],
  ["a prototype's function made over", decide("Array.prototype.push = null;"), "error", /line 2.*read-only/],
  [
    "the way out by constructors",
    decide("return [].constructor.constructor('return process')();"),
    "error",
    /makes no code/,
  ],
  ["the global object", decide("globalThis.JSON.parse = 1;"), "error", /read-only/],
  [
    "import",
    "import fs from 'node:fs';\nexport function decide() {}",
    "text",
    /line 1.*imports nothing.*node:fs/,
  ],
  ["import()", decide("import('node:fs');", "return { engineOn: false };"), "later", /until later/],
  [
    "a promise",
    decide("Promise.resolve().then(() => 1);", "return { engineOn: false };"),
    "later",
    /until later/,
  ],
  ["async", `export async function decide() { return { engineOn: false }; }`, "answer", /answers later/],
  ["fetch", decide("fetch('http://localhost');"), "error", /line 2.*fetch is not there.*network/],
  ["Date", decide("return { engineOn: Date.now() > 0 };"), "error", /line 2, column \d+, at 0 s.*no clock/],
  ["performance", decide("performance.now();"), "error", /no clock/],
  ["timers", decide("setTimeout(() => 1, 1);"), "error", /no timers/],
  ["require", decide("require('fs');"), "error", /no files/],
  ["console", decide("console.log(1);"), "error", /no screen/],
  [
    "a getter that throws",
    decide("return { get engineOn() { throw new Error('not today'); } };"),
    "error",
    /line 2.*not today/,
  ],
  [
    "not a number",
    decide("return { engineOn: true, enginePower_kW: NaN };"),
    "answer",
    /enginePower_kW is not a number.*NaN/,
  ],
  ["an infinite power", decide("return { engineOn: true, enginePower_kW: 1 / 0 };"), "answer", /Infinity/],
  [
    "text for a number",
    decide("return { engineOn: true, enginePower_kW: '12' };"),
    "answer",
    /not a number.*"12"/,
  ],
  [
    "text for a speed",
    decide("return { engineOn: false, engineSpeed_rpm: 'fast' };"),
    "answer",
    /engineSpeed_rpm.*"fast"/,
  ],
  ["a missing power", decide("return { engineOn: true };"), "answer", /enginePower_kW.*undefined/],
  ["a number for yes", decide("return { engineOn: 1 };"), "answer", /neither true nor false.*1/],
  [
    "a field misspelt",
    decide("return { engineOn: false, engineSpeed_rmp: 2000 };"),
    "answer",
    /unknown field.*engineSpeed_rmp/,
  ],
  ["no answer", decide(""), "answer", /line 1.*gives no answer.*undefined/],
  ["a text that cannot be read", decide("let x = ;"), "text", /line 2, column \d+: SyntaxError/],
  ["a name that is not known", decide("return tru;"), "error", /line 2.*'tru' is not defined/],
  ["no decide", "export const other = 1;", "text", /no function decide/],
  ["decide that is no function", "export const decide = 3;", "text", /no function decide/],
  ["something thrown that is no error", decide("throw { odd: 1 };"), "error", /odd/],
  ["nothing thrown", decide("throw undefined;"), "error", /throws nothing/],
];

describe("the sandbox of own strategies", () => {
  it.each(ATTEMPTS)("ends %s with a clear message, and nothing else", async (_, text, kind, message) => {
    const error = await failure(text);
    expect(error.message).toMatch(message);
    expect(error.fault.kind).toBe(kind);
    expect(error).toBeInstanceOf(InputError);
  });

  it("tells the simulated second of a failure on the way", async () => {
    const error = await failure(decide("if (now.time_s > 4.05) return null;", "return { engineOn: false };"));
    expect(error.fault).toEqual({ kind: "answer", line: 1, column: null, second: expect.closeTo(4.15, 9) });
    expect(error.message).toContain("at 4.15 s");
  });

  it("works after all of them as before, and the engine's own strategies too", async () => {
    const own = await loadOwnStrategies();
    const strategy = own.strategy({ name: "mine", text: decide("return { engineOn: false };"), seed: 1 });
    expect(simulate(compact, drive, strategy).b.runningFuel).toBe(0);
    expect(simulate(compact, drive, rules).b.travelled).toBeGreaterThan(0);
    strategy.close();
  });

  it("refuses an empty text and one that is too long", async () => {
    const own = await loadOwnStrategies();
    expect(() => own.strategy({ name: "mine", text: " ", seed: 1 })).toThrow(/empty/);
    const text = " ".repeat(OWN_LIMITS.source) + decide("");
    expect(() => own.strategy({ name: "mine", text, seed: 1 })).toThrow(/too long/);
  });

  it("keeps memory between the calls of one run, and nothing between two runs", async () => {
    const text = decide(
      "memory.n = (memory.n ?? 0) + 1;",
      // biome-ignore lint/suspicious/noTemplateCurlyInString: a text of the sandbox, not of this file
      "if (memory.n > 30) throw new Error(`n ${memory.n}`);",
      "return { engineOn: false };",
    );
    expect((await failure(text)).message).toContain("n 31");
    expect((await failure(text)).message).toContain("n 31");
  });
});

describe("an own strategy", () => {
  const random = decide("return { engineOn: true, enginePower_kW: 5 + 20 * Math.random() };");
  const fuel = async (seed: number): Promise<number> => {
    const own = await loadOwnStrategies();
    const strategy = own.strategy({ name: "mine", text: random, seed });
    const used = simulate(compact, drive, strategy).b.runningFuel;
    strategy.close();
    return used;
  };

  it("gives the same run from the same seed, and another from another", async () => {
    expect(await fuel(7)).toBe(await fuel(7));
    expect(await fuel(7)).not.toBe(await fuel(8));
  });

  it("is told what the engine's own strategies are told", async () => {
    const own = await loadOwnStrategies();
    const copy = decide(
      "const r = { start: 7, stop: 3.5, delay: 1.5, gain: 60, low: 0.08, high: 0.08, least: 5 };",
      "const lack = now.vehicle.socTarget - now.soc;",
      "if (lack > r.low) memory.charging = true;",
      "if (lack < r.low - 0.02) memory.charging = false;",
      "if (now.demand_kW > (memory.on ? r.stop : r.start)) memory.needed = now.time_s;",
      "const patience = now.wheelPower_kW < -r.start ? 0 : r.delay;",
      "const needed = memory.needed === now.time_s || (memory.on && now.time_s - memory.needed < patience);",
      "memory.on = !!memory.charging || needed;",
      "if (!memory.on) return { engineOn: false };",
      "const most = r.gain * r.high;",
      "const correction = Math.min(most, Math.max(-most, lack * r.gain));",
      "const top = lack < -r.high ? Math.min(now.vehicle.enginePower_kW, now.demand_kW) : now.vehicle.enginePower_kW;",
      "const least = now.wheelPower_kW > 0 ? r.least : 0;",
      "return { engineOn: true, enginePower_kW: Math.min(top, Math.max(least, now.demand_kW + correction)) };",
    );
    const strategy = own.strategy({ name: "rules again", text: copy, seed: 1 });
    const nycc = cycleById("nycc");
    const [mine, built] = [simulate(compact, nycc, strategy), simulate(compact, nycc, rules)];
    expect(mine.b.runningFuel / built.b.runningFuel).toBeCloseTo(1, 6);
    expect(mine.c.starts).toBe(built.c.starts);
    strategy.close();
  });

  it("may have a few runs under way at once", async () => {
    const own = await loadOwnStrategies();
    const strategy = own.strategy({ name: "mine", text: random, seed: 3 });
    const machines = [1, 2, 3, 4, 5, 6].map(() => strategy.create(simulate(compact, drive, rules).p));
    expect(machines.length).toBe(6);
    strategy.close();
    expect(simulate(compact, drive, strategy).b.runningFuel).toBe(await fuel(3));
    strategy.close();
  });
});
