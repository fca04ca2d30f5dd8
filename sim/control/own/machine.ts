/// <reference path="./raw.d.ts" />
import type {
  QuickJSContext,
  QuickJSHandle,
  QuickJSRuntime,
  QuickJSWASMModule,
} from "quickjs-emscripten-core";
import { realAt } from "../../../shared/at.ts";
import { rpmToRadPerS } from "../../../shared/units.ts";
import type { Prepared } from "../../drivetrain/prepared.ts";
import type { StrategyAnswer, StrategyInput } from "../strategy.ts";
import { OWN_INPUTS, OWN_LIMITS, OWN_VEHICLE } from "./contract.ts";
import { type OwnFault, type OwnFaultKind, OwnStrategyError } from "./fault.ts";
import {
  hugeNumberIn,
  NOWHERE,
  OWN_FILE,
  type Place,
  placeIn,
  placeOfDecide,
  placeOfImport,
} from "./place.ts";
import prelude from "./prelude.js?raw";

/** Loops and calls between two looks of the interpreter at whether to go on: its own fixed count. */
const STEPS_PER_LOOK = 10_000;

/** Cells behind the inputs: what is wrong with the answer (0: nothing), engine on, power in kW, speed in rpm. */
const ANSWER_CELLS = 4;

const COUNT = OWN_INPUTS.length;

/** Share of the memory in use from which an exception without any words means that there is none left. */
const NEARLY_ALL = 0.7;

/** Numbers that the cells are found by: no computation gives them but by chance, and then they are tried. */
const MARK = 6.283950617e-211;
const PROBE = 4.179365821e-207;

/** The prelude with the inputs written out as one object literal, which the interpreter makes quickest. */
const PRELUDE = prelude
  .replace("/* mark */ 0", String(MARK))
  .replace(
    "/* inputs */",
    OWN_INPUTS.map(({ name, kind }, i) => `${name}: cells[${i}]${kind === "flag" ? " === 1" : ""},`).join(
      " ",
    ),
  );

/** What is wrong with an answer, by the prelude's numbers, and what would be right. */
const ANSWER_FAULTS: readonly (readonly [what: string, accepted: string])[] = [
  ["", ""],
  ["decide gives no answer", "an object such as { engineOn: true, enginePower_kW: 12 }"],
  ["engineOn is neither true nor false", "engineOn: true or engineOn: false"],
  ["enginePower_kW is not a number", "a finite number of kW, needed with the engine on"],
  ["engineSpeed_rpm is not a number", "a finite number of rpm, or nothing"],
  ["the answer has an unknown field", "engineOn, enginePower_kW, engineSpeed_rpm"],
  ["decide answers later", "an answer at once: no async, no promise"],
];

/** What a strategy is made of. */
export interface OwnSource {
  readonly name: string;
  /** text of one ES module that exports `decide(now, memory)` */
  readonly text: string;
  /** whole number: start of the random numbers */
  readonly seed: number;
}

/** What a machine is given by its sandbox. */
export interface Host {
  readonly module: QuickJSWASMModule;
  /** the interpreter's whole memory as it is now */
  readonly bytes: () => ArrayBuffer;
  /** told when the interpreter cannot be used any more */
  readonly broken: () => void;
}

/** One own strategy at work on one run, in an interpreter of its own. */
export class OwnMachine {
  private readonly runtime: QuickJSRuntime;
  private readonly context: QuickJSContext;
  /** everything of the interpreter's that must be given back before it can be closed */
  private readonly held: QuickJSHandle[] = [];
  private found: QuickJSHandle | null = null;
  private step: QuickJSHandle | null = null;
  private cells: Float64Array = new Float64Array(0);
  private place = 0;
  private looks = 0;
  private imported = "";
  private stopped = false;

  /**
   * Reads the text and finds `decide`.
   * @throws OwnStrategyError for a text that cannot be read, or that fails while it is read
   */
  constructor(
    private readonly host: Host,
    private readonly source: OwnSource,
    p: Prepared,
  ) {
    this.runtime = host.module.newRuntime();
    this.runtime.setMaxStackSize(OWN_LIMITS.stack);
    this.runtime.setMemoryLimit(OWN_LIMITS.memory);
    this.runtime.setInterruptHandler(() => {
      this.looks += 1;
      this.stopped = this.looks * STEPS_PER_LOOK >= OWN_LIMITS.steps;
      return this.stopped;
    });
    this.runtime.setModuleLoader((name) => {
      this.imported = name;
      return { error: new Error("no modules") };
    });
    this.context = this.runtime.newContext();
    try {
      this.guarded(() => this.open(p), null);
    } catch (error) {
      this.dispose();
      throw error;
    }
  }

  private hold(handle: QuickJSHandle): QuickJSHandle {
    this.held.push(handle);
    return handle;
  }

  /** Something of our own: it does not fail but for want of memory. */
  private ours(result: ReturnType<QuickJSContext["evalCode"]>): QuickJSHandle {
    return this.hold(this.settle(result, null));
  }

  private open(p: Prepared): void {
    const { context, source } = this;
    const vehicle = Object.fromEntries(OWN_VEHICLE.map(({ name, read }) => [name, read(p)]));
    const given = {
      seed: source.seed,
      count: COUNT,
      cells: COUNT + ANSWER_CELLS,
      limits: OWN_LIMITS,
      vehicle,
    };
    const sandbox = this.ours(context.evalCode(PRELUDE, "sandbox.js", { strict: true }));
    const text = this.hold(context.newString(JSON.stringify(given)));
    const inside = this.ours(context.callFunction(sandbox, context.undefined, text));
    this.found = this.hold(context.getProp(inside, "found"));
    this.place = this.findCells(inside);
    const huge = hugeNumberIn(source.text);
    if (huge) {
      throw this.fault("text", huge.place, null, {
        what: "a strategy has no whole numbers of any size: a single step with them may take seconds",
        value: huge.found,
        accepted: `ordinary numbers, such as ${huge.found.slice(0, -1)}`,
      });
    }
    const exports = this.ours(context.evalCode(source.text, OWN_FILE, { type: "module" }));
    const decide = this.hold(context.getProp(exports, "decide"));
    const bind = this.hold(context.getProp(inside, "bind"));
    const step = this.ours(context.callFunction(bind, context.undefined, decide));
    if (context.typeof(step) !== "function") {
      throw this.fault("text", NOWHERE, null, {
        what: "there is no function decide",
        value: "",
        accepted: "export function decide(now, memory) { … }",
      });
    }
    this.step = step;
  }

  /**
   * The numbers go in and out through a list that lies in the interpreter's memory: a call with eleven arguments would
   * cost several times as much. The list is found by a mark, and tried: what is written there must be read inside.
   * @returns its place, bytes
   */
  private findCells(inside: QuickJSHandle): number {
    const { context } = this;
    const peek = this.hold(context.getProp(inside, "peek"));
    const all = new Float64Array(this.host.bytes());
    for (let at = all.indexOf(MARK); at >= 0; at = all.indexOf(MARK, at + 1)) {
      all[at] = PROBE;
      const seen = context.unwrapResult(context.callFunction(peek, context.undefined));
      const value = context.getNumber(seen);
      seen.dispose();
      if (value === PROBE) return 8 * at;
      all[at] = MARK;
    }
    throw new Error("the sandbox's cells were not found");
  }

  /** The cells; seen anew when the interpreter's memory has grown. */
  private look(): Float64Array {
    if (this.cells.length === 0) {
      this.cells = new Float64Array(this.host.bytes(), this.place, COUNT + ANSWER_CELLS);
    }
    return this.cells;
  }

  /** Decides. @throws OwnStrategyError with line and simulated second; the machine is then of no further use */
  decide(now: StrategyInput, answer: StrategyAnswer): void {
    const { context, step } = this;
    if (!step) throw new Error("this strategy's sandbox is closed");
    const cells = this.look();
    for (let i = 0; i < COUNT; i += 1) cells[i] = OWN_INPUTS[i]?.read(now) ?? 0;
    this.looks = 0;
    const result = this.guarded(() => context.callFunction(step, context.undefined), now.time);
    this.settle(result, now.time).dispose();
    const back = this.look();
    const code = realAt(back, COUNT);
    if (code !== 0) throw this.badAnswer(code, now.time);
    answer.engineOn = realAt(back, COUNT + 1) === 1;
    answer.enginePower = 1000 * realAt(back, COUNT + 2);
    answer.engineSpeed = rpmToRadPerS(realAt(back, COUNT + 3));
  }

  /** Work of the interpreter that may bring down its host's stack. */
  private guarded<T>(work: () => T, second: number | null): T {
    try {
      return work();
    } catch (error) {
      if (error instanceof OwnStrategyError) throw error;
      this.host.broken();
      const deep = error instanceof RangeError;
      throw this.fault(deep ? "depth" : "memory", placeOfDecide(this.source.text), second, {
        what: deep ? "the strategy calls itself too deeply" : "the strategy brought its sandbox down",
        value: error instanceof Error ? error.message : String(error),
        accepted: "fewer calls within calls, and less memory",
      });
    }
  }

  /** The value of a result. @throws OwnStrategyError for an exception, and for work put off until later */
  private settle(result: ReturnType<QuickJSContext["evalCode"]>, second: number | null): QuickJSHandle {
    if (result.error) {
      const dumped: unknown = this.context.dump(result.error);
      result.error.dispose();
      throw this.thrown(dumped, second);
    }
    if (this.runtime.hasPendingJob()) {
      result.value.dispose();
      throw this.fault("later", placeOfDecide(this.source.text), second, {
        what: "the strategy puts work off until later",
        value: "a promise or an import()",
        accepted: "work that is done when decide answers: no async, no promise, no import",
      });
    }
    return result.value;
  }

  /** An exception of the strategy, told by its kind. */
  private thrown(dumped: unknown, second: number | null): OwnStrategyError {
    const { name, message, stack } = partsOf(dumped);
    const place = placeIn(stack);
    if (this.imported !== "") {
      return this.fault("text", placeOfImport(this.source.text, this.imported), second, {
        what: "a strategy imports nothing",
        value: this.imported,
        accepted: "one text with all that it needs",
      });
    }
    if (this.stopped) {
      return this.fault("steps", place.line === null ? placeOfDecide(this.source.text) : place, second, {
        what: "the strategy does not come to an end",
        value: `more than ${OWN_LIMITS.steps.toLocaleString("en")} loops and calls in one decision`,
        accepted: "loops that end",
      });
    }
    // Where not even the error finds room, nothing is thrown at all.
    if (
      message === "out of memory" ||
      (message === "" && this.host.bytes().byteLength >= NEARLY_ALL * OWN_LIMITS.memory)
    ) {
      // The memory never shrinks again: the next strategy is to have all of it.
      this.host.broken();
      return this.fault("memory", place, second, {
        what: "the strategy takes too much memory",
        value: "",
        accepted: `at most ${OWN_LIMITS.memory / 2 ** 20} MB`,
      });
    }
    if (message === "stack overflow") {
      return this.fault("depth", place, second, {
        what: "the strategy calls itself too deeply",
        value: "",
        accepted: "calls within calls that end",
      });
    }
    return this.fault(second === null && name === "SyntaxError" ? "text" : "error", place, second, {
      what: name === "" ? message || "the strategy throws nothing" : `${name}: ${message}`,
      value: "",
      accepted: second === null ? "a text that can be read" : "a decision without an exception",
    });
  }

  private badAnswer(code: number, second: number): OwnStrategyError {
    const { context, found } = this;
    const [what, accepted] = ANSWER_FAULTS[code] ?? ["the answer is not understood", "see the inputs"];
    let value = "";
    if (found) {
      const result = context.unwrapResult(context.callFunction(found, context.undefined));
      value = context.getString(result);
      result.dispose();
    }
    return this.fault("answer", placeOfDecide(this.source.text), second, { what, value, accepted });
  }

  private fault(
    kind: OwnFaultKind,
    place: Place,
    second: number | null,
    detail: { readonly what: string; readonly value: string; readonly accepted: string },
  ): OwnStrategyError {
    const fault: OwnFault = { ...place, kind, second };
    return new OwnStrategyError(this.source.name, fault, detail);
  }

  /** Gives the interpreter's memory back. A closed machine decides no more. */
  dispose(): void {
    this.step = null;
    this.found = null;
    try {
      for (const handle of this.held.splice(0)) if (handle.alive) handle.dispose();
      if (this.context.alive) this.context.dispose();
      if (this.runtime.alive) this.runtime.dispose();
    } catch {
      this.host.broken();
    }
  }
}

/** Name, message and trace of whatever was thrown. */
function partsOf(dumped: unknown): { name: string; message: string; stack: string } {
  if (dumped === null || dumped === undefined || dumped === "") return { name: "", message: "", stack: "" };
  if (typeof dumped !== "object") return { name: "", message: `thrown: ${String(dumped)}`, stack: "" };
  const read = (key: string): string => {
    const value: unknown = Reflect.get(dumped, key);
    return typeof value === "string" ? value : "";
  };
  const message = read("message") || `thrown: ${JSON.stringify(dumped)}`;
  return { name: read("name"), message, stack: read("stack") };
}
