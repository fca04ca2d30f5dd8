import type { QuickJSWASMModule } from "quickjs-emscripten-core";
import { InputError } from "../../../shared/errors.ts";
import type { Prepared } from "../../drivetrain/prepared.ts";
import type { StrategyDefinition } from "../strategy.ts";
import { OWN_LIMITS } from "./contract.ts";
import { type Host, OwnMachine, type OwnSource } from "./machine.ts";

/** Bytes of a page of the interpreter's memory. */
const PAGE = 65_536;

/** Memory that the interpreter starts with, as its program demands. */
const FIRST_PAGES = 256;

/** Runs of one strategy that may be under way at once; the oldest is closed when there are more. */
const MOST_RUNS = 4;

/** An own strategy, to be driven like any other. */
export interface OwnStrategy extends StrategyDefinition {
  readonly source: OwnSource;
  /** Gives the memory of its runs back; it may be driven again. */
  close(): void;
}

/** Makes own strategies. */
export interface OwnStrategies {
  /** false once a strategy has brought the sandbox down: load again */
  readonly sound: boolean;
  /**
   * An own strategy from its text. The text is read when a run begins.
   * @throws InputError for a text that is empty or too long
   */
  strategy(source: OwnSource): OwnStrategy;
  /** Reads a text without driving. @throws OwnStrategyError with the line of what is wrong */
  check(source: OwnSource, p: Prepared): void;
}

/** The part of the runtime's WebAssembly that is used; the engine is compiled without any runtime's types. */
interface WasmMemory {
  readonly buffer: ArrayBuffer;
}
interface WithWasm {
  readonly WebAssembly: { readonly Memory: new (size: { initial: number; maximum: number }) => WasmMemory };
}

/** The interpreter and its memory. */
interface Interpreter {
  readonly module: QuickJSWASMModule;
  readonly memory: WasmMemory;
}

async function newInterpreter(): Promise<Interpreter> {
  const [core, variant] = await Promise.all([
    import("quickjs-emscripten-core"),
    import("@jitl/quickjs-singlefile-mjs-release-sync"),
  ]);
  const { WebAssembly } = globalThis as unknown as WithWasm;
  // The interpreter counts single blocks only: what really holds it is a memory that does not grow any further.
  const memory = new WebAssembly.Memory({ initial: FIRST_PAGES, maximum: OWN_LIMITS.memory / PAGE });
  const options = { wasmMemory: memory } as Parameters<typeof core.newVariant>[1];
  const module = await core.newQuickJSWASMModuleFromVariant(core.newVariant(variant.default, options));
  return { module, memory };
}

function checkText({ name, text }: OwnSource): void {
  const accepted = `one ES module of 1 to ${OWN_LIMITS.source.toLocaleString("en")} characters`;
  const value = `${text.length} characters`;
  if (text.trim() === "")
    throw new InputError({ what: "the strategy is empty", where: name, value, accepted });
  if (text.length > OWN_LIMITS.source) {
    throw new InputError({ what: "the strategy is too long", where: name, value, accepted });
  }
}

/** One interpreter and the strategies made in it. */
class Sandbox implements OwnStrategies {
  sound = true;
  private readonly host: Host;
  constructor({ module, memory }: Interpreter) {
    const broken = (): void => {
      this.sound = false;
    };
    this.host = { module, bytes: () => memory.buffer, broken };
  }

  private machine(source: OwnSource, p: Prepared): OwnMachine {
    if (!this.sound) throw new Error("this sandbox is broken: load a new one");
    return new OwnMachine(this.host, source, p);
  }

  check(source: OwnSource, p: Prepared): void {
    checkText(source);
    this.machine(source, p).dispose();
  }

  strategy(source: OwnSource): OwnStrategy {
    checkText(source);
    const open: OwnMachine[] = [];
    return {
      id: "own",
      title: source.name,
      about: "An own strategy, run in a sandbox.",
      regeneration: true,
      source,
      create: (p) => {
        while (open.length >= MOST_RUNS) open.shift()?.dispose();
        const machine = this.machine(source, p);
        open.push(machine);
        return machine;
      },
      close: () => {
        for (const machine of open.splice(0)) machine.dispose();
      },
    };
  }
}

let loaded: Promise<Sandbox> | null = null;

/**
 * Loads the sandbox for own strategies; once, and anew after it has broken. Works in Node, in a page and in a worker;
 * a content security policy must allow 'wasm-unsafe-eval'.
 */
export async function loadOwnStrategies(): Promise<OwnStrategies> {
  const known = await loaded;
  if (known?.sound) return known;
  loaded = newInterpreter().then((interpreter) => new Sandbox(interpreter));
  return loaded;
}
