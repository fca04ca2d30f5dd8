// Runs inside the sandbox before a strategy, and stands between it and the engine: takes away what a strategy must not
// have, seeds the random numbers, freezes what is shared, and checks every answer. The numbers go in and out through
// `cells`, which the strategy cannot reach.
(givenText) => {
  const given = JSON.parse(givenText);
  const { limits } = given;
  const cells = new Float64Array(given.cells);
  cells[0] = /* mark */ 0;
  const { isArray } = Array;
  const { apply, construct, setPrototypeOf } = Reflect;
  const { freeze, defineProperty, getOwnPropertyNames, getOwnPropertyDescriptor, getPrototypeOf } = Object;
  const { stringify } = JSON;
  const { imul } = Math;
  const text = String;
  const Failure = RangeError;
  const Missing = ReferenceError;

  const refuse = (name, why) =>
    defineProperty(globalThis, name, {
      get() {
        throw new Missing(`${name} is not there in a strategy: ${why}`);
      },
    });
  for (const name of ["Date", "performance", "setTimeout", "setInterval", "setImmediate"])
    refuse(name, "it has no clock and no timers, use now.time_s");
  for (const name of ["fetch", "XMLHttpRequest", "WebSocket", "EventSource", "Worker"])
    refuse(name, "it reaches no network and no other program");
  for (const name of ["require", "process", "module", "exports", "Deno", "std", "os"])
    refuse(name, "it reaches no files and no system");
  for (const name of ["console", "alert", "print", "document", "window"])
    refuse(name, "it has no screen, keep values in memory");
  for (const name of ["Proxy", "SharedArrayBuffer", "Atomics", "WeakRef", "FinalizationRegistry", "Iterator"])
    refuse(name, "it is left out of the sandbox");

  // A single product of huge whole numbers takes seconds, and a text made into code could hide them.
  for (const name of ["BigInt", "BigInt64Array", "BigUint64Array"])
    refuse(name, "its single steps may take seconds");
  for (const name of ["eval", "Function"]) refuse(name, "it makes no code on its way");
  const noCode = () => {
    throw new Missing("a strategy makes no code on its way");
  };
  for (const made of [() => 0, function* () {}, async () => 0, async function* () {}])
    defineProperty(getPrototypeOf(made), "constructor", { value: noCode });

  // Built-in functions cannot be interrupted while they work, so they are not let loose on endless lists and texts.
  // What they go through is counted, since a loop of few but heavy calls would take minutes.
  let spent = 0;
  // Joined by a plus: a template calls concat, which counts too.
  const TOO_MUCH = " goes through too much in one decision";
  const spend = (count, name) => {
    spent += count;
    if (spent > limits.work) throw new Failure(name + TOO_MUCH);
  };
  const counted = (result, name) => {
    if (typeof result === "string" || isArray(result)) spend(result.length, name);
    return result;
  };
  const guard = (prototype, name, check) => {
    const original = prototype[name];
    if (typeof original !== "function") return;
    const guarded = {
      [name](...given) {
        spend(0, name);
        check(this, name);
        for (let i = 0; i < given.length; i += 1) if (isArray(given[i])) check(given[i], name);
        return counted(apply(original, this, given), name);
      },
    }[name];
    defineProperty(prototype, name, { value: guarded });
  };
  const list = (value, name) => {
    if (!isArray(value)) throw new TypeError(`${name} works on lists only in a strategy`);
    if (value.length > limits.length)
      throw new Failure(`a list of ${value.length} elements is too long for ${name} in a strategy`);
    spend(value.length, name);
  };
  const words = (value, name) => {
    if (typeof value !== "string") return;
    if (value.length > limits.text)
      throw new Failure(`a text of ${value.length} characters is too long for ${name} in a strategy`);
    spend(value.length, name);
  };
  for (const name of getOwnPropertyNames(Array.prototype))
    if (name !== "constructor" && name !== "push" && name !== "pop" && name !== "at")
      guard(Array.prototype, name, list);
  for (const name of ["flat", "flatMap"]) delete Array.prototype[name];
  for (const name of getOwnPropertyNames(String.prototype))
    if (name !== "constructor" && name !== "toString" && name !== "valueOf")
      guard(String.prototype, name, words);

  const numbers = (value, name) => spend(value?.length ?? 0, name);
  for (const name of [
    "copyWithin",
    "fill",
    "includes",
    "indexOf",
    "join",
    "lastIndexOf",
    "reverse",
    "set",
    "slice",
    "sort",
    "toReversed",
    "toSorted",
    "with",
  ])
    guard(getPrototypeOf(Float64Array.prototype), name, numbers);
  // Making such a list clears or copies all of it: that is counted too. Thirty-two bytes are cleared as quickly as one
  // element is gone through; what is larger than the memory fails by itself, at once.
  const cleared = (bytes) => (bytes > 0 && bytes <= limits.memory ? bytes / 32 : 0);
  const counting = (name) => {
    const Original = globalThis[name];
    const bytes = Original.BYTES_PER_ELEMENT ?? 1;
    const Counted = function (...from) {
      if (!new.target) throw new TypeError(`${name} is made with new`);
      const [first] = from;
      spend(typeof first === "object" ? (first?.length ?? 0) : cleared(bytes * first), name);
      return construct(Original, from, new.target);
    };
    defineProperty(Counted, "name", { value: name });
    defineProperty(Counted, "prototype", { value: Original.prototype, writable: false });
    setPrototypeOf(Counted, getPrototypeOf(Original));
    if (Original.BYTES_PER_ELEMENT) Counted.BYTES_PER_ELEMENT = bytes;
    if (Original.isView) Counted.isView = Original.isView;
    defineProperty(Original.prototype, "constructor", { value: Counted });
    defineProperty(globalThis, name, { value: Counted });
  };
  const buffers = ArrayBuffer.prototype;
  for (const name of getOwnPropertyNames(globalThis))
    if (/^(Int|Uint|Float)\d+(Clamped)?Array$/.test(name)) counting(name);
  counting("ArrayBuffer");
  guard(buffers, "slice", (value, name) => spend(cleared(value.byteLength), name));
  for (const name of ["resize", "transfer", "transferToFixedLength"]) delete buffers[name];

  // These are judged by what they give; what JSON.parse reads, beforehand.
  for (const name of ["entries", "getOwnPropertyNames", "keys", "values"]) guard(Object, name, () => 0);
  guard(Array, "from", () => 0);
  guard(JSON, "stringify", () => 0);
  const { parse } = JSON;
  const read = (given, revive) => {
    const from = text(given);
    spend(from.length, "parse");
    return parse(from, revive);
  };
  defineProperty(JSON, "parse", { value: read });

  // Mulberry32, from memory: the same seed gives the same numbers.
  let state = given.seed | 0;
  const random = () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = imul(state ^ (state >>> 15), 1 | state);
    t = (t + imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  defineProperty(Math, "random", { value: random });

  for (const name of getOwnPropertyNames(globalThis)) {
    const { value } = getOwnPropertyDescriptor(globalThis, name);
    if (typeof value !== "function" && typeof value !== "object") continue;
    if (value === null || value === globalThis) continue;
    freeze(value);
    if (value.prototype) freeze(value.prototype);
  }

  const vehicle = freeze(given.vehicle);
  const memory = {};
  const CODE = given.count;
  let found = "";

  const show = (value) => {
    if (typeof value === "function") return "a function";
    if (typeof value === "number" || value === undefined) return text(value);
    let shown = "";
    try {
      shown = stringify(value) ?? typeof value;
    } catch {
      shown = typeof value;
    }
    return shown.length > 80 ? `${shown.slice(0, 80)}…` : shown;
  };
  const fault = (code, value) => {
    found = show(value);
    cells[CODE] = code;
  };
  const number = (value) => typeof value === "number" && value - value === 0;

  const judge = (answer) => {
    if (typeof answer !== "object" || answer === null) return fault(1, answer);
    const { engineOn, enginePower_kW, engineSpeed_rpm } = answer;
    if (engineOn !== true && engineOn !== false)
      return fault(typeof answer.then === "function" ? 6 : 2, engineOn);
    if (!number(enginePower_kW) && !(enginePower_kW === undefined && !engineOn))
      return fault(3, enginePower_kW);
    if (!number(engineSpeed_rpm) && engineSpeed_rpm !== undefined) return fault(4, engineSpeed_rpm);
    for (const name in answer)
      if (name !== "engineOn" && name !== "enginePower_kW" && name !== "engineSpeed_rpm")
        return fault(5, name);
    cells[CODE] = 0;
    cells[CODE + 1] = engineOn ? 1 : 0;
    cells[CODE + 2] = enginePower_kW ?? 0;
    cells[CODE + 3] = engineSpeed_rpm ?? 0;
  };

  return {
    bind: (decide) => {
      if (typeof decide !== "function") return undefined;
      return () => {
        spent = 0;
        judge(decide({ /* inputs */ vehicle }, memory));
      };
    },
    found: () => found,
    peek: () => cells[0],
  };
};
