import { parseArgs } from "node:util";
import { InputError, type InputFault } from "../../shared/errors.ts";
import { nearest } from "../vehicle/nearest.ts";

/** One option as it is declared once: for reading, checking and help. */
export interface OptionDeclaration {
  readonly name: string;
  /** What stands after it in the help, such as FILE; empty for a switch. */
  readonly value: string;
  /** What it does, one phrase. */
  readonly about: string;
  /** True when it may be given several times. */
  readonly many?: boolean;
}

/** A command line taken apart. */
export interface Arguments {
  /** Words that are no options, the verb left out. */
  readonly words: readonly string[];
  /** True when the switch was given. */
  has(name: string): boolean;
  /** The value of an option; undefined when it was not given. */
  text(name: string): string | undefined;
  /** All values of an option that may be given several times. */
  texts(name: string): readonly string[];
}

/** The switch that every verb has. */
const HELP: OptionDeclaration = { name: "help", value: "", about: "show this text" };

/**
 * Reads what follows a verb.
 * @param verb for messages
 * @throws InputError with one fault for each unknown, repeated or incomplete option
 */
export function readArguments(
  verb: string,
  args: readonly string[],
  declared: readonly OptionDeclaration[],
): Arguments {
  const options = [...declared, HELP];
  const { tokens } = parseArgs({
    args: [...args],
    options: Object.fromEntries(
      options.map((o) => [o.name, { type: o.value === "" ? "boolean" : "string" }]),
    ),
    strict: false,
    allowPositionals: true,
    tokens: true,
  });
  const words: string[] = [];
  const values = new Map<string, string[]>();
  const faults: InputFault[] = [];
  for (const token of tokens) {
    if (token.kind === "positional") words.push(token.value);
    if (token.kind !== "option") continue;
    const fault = optionFault(verb, token, options, values);
    if (fault) faults.push(fault);
    else values.set(token.name, [...(values.get(token.name) ?? []), token.value ?? ""]);
  }
  if (faults.length > 0) throw new InputError(faults);
  return {
    words,
    has: (name) => values.has(name),
    text: (name) => values.get(name)?.[0],
    texts: (name) => values.get(name) ?? [],
  };
}

interface OptionToken {
  readonly name: string;
  readonly rawName: string;
  readonly value: string | undefined;
  readonly inlineValue: boolean | undefined;
}

function optionFault(
  verb: string,
  token: OptionToken,
  options: readonly OptionDeclaration[],
  given: ReadonlyMap<string, readonly string[]>,
): InputFault | null {
  const option = options.find((o) => o.name === token.name);
  const where = token.rawName;
  if (!option || !where.startsWith("--")) return unknownOption(verb, token.rawName, options);
  const value = token.value ?? "";
  if (option.value === "") {
    if (token.inlineValue) return { what: "this switch takes no value", where, value, accepted: where };
  } else if (value === "" || (!token.inlineValue && options.some((o) => `--${o.name}` === value))) {
    return {
      what: "the value is missing",
      where,
      value,
      accepted: `${where} ${option.value}: ${option.about}`,
    };
  }
  if (given.has(option.name) && option.many !== true) {
    return { what: "given twice", where, value, accepted: `${where} once` };
  }
  return null;
}

function unknownOption(verb: string, rawName: string, options: readonly OptionDeclaration[]): InputFault {
  const names = options.map((o) => `--${o.name}`);
  const near = nearest(rawName, names);
  return {
    what: `unknown option; the nearest known is ${near}`,
    where: verb === "" ? "command line" : verb,
    value: rawName,
    accepted: names.join(", "),
  };
}

/**
 * Checks how many words stand beside the options.
 * @param wanted names of the words, such as ID; the last ones may be left out
 * @param least how many must be there
 * @throws InputError naming the word that is missing or too much
 */
export function expectWords(
  verb: string,
  words: readonly string[],
  wanted: readonly string[],
  least: number,
): void {
  const accepted = wanted.length === 0 ? `${verb} and options only` : `${verb} ${wanted.join(" ")}`;
  const extra = words[wanted.length];
  if (extra !== undefined) {
    throw new InputError({ what: "one word too many", where: verb, value: extra, accepted });
  }
  if (words.length >= least) return;
  throw new InputError({ what: `${wanted[words.length]} is missing`, where: verb, value: "", accepted });
}
