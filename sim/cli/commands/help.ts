import { InputError } from "../../../shared/errors.ts";
import { nearest } from "../../vehicle/nearest.ts";
import { expectWords } from "../arguments.ts";
import { columns, section } from "../report/text.ts";
import { VERBS, type Verb } from "../verbs.ts";

const START = "npm run -s cli --";

const EXIT_CODES = [
  ["0", "done; also when the vehicle could not follow the cycle, which the report then tells"],
  ["1", "a fault of the program"],
  ["2", "bad input or usage: nothing was written"],
  ["130", "interrupted: nothing was written, but for what many runs had done so far"],
];

/** Text of `help`, or of one verb's help. @throws InputError for an unknown verb */
export async function helpText(words: readonly string[]): Promise<string> {
  expectWords("help", words, ["[VERB]"], 0);
  const [name] = words;
  if (name === undefined || name === "help") return overview();
  return verbHelp(verbByName(name));
}

/** @throws InputError naming the verbs and the nearest */
export function verbByName(name: string): Verb {
  const verb = VERBS.find((candidate) => candidate.name === name);
  if (verb) return verb;
  const known = [...VERBS.map((candidate) => candidate.name), "help"];
  throw new InputError({
    what: name.startsWith("-")
      ? "a verb must come first"
      : `unknown verb; the nearest known is ${nearest(name, known)}`,
    where: "command line",
    value: name,
    accepted: known.join(", "),
  });
}

function overview(): string {
  const verbs = [
    ...VERBS.map((verb) => [verb.name, verb.about]),
    ["help [VERB]", "this text, or that of one verb"],
  ];
  return [
    "Simulates a power-split hybrid drivetrain and tells where the energy went.",
    ...section("usage", [`${START} VERB [options]`, `${START} VERB --help`, `${START} --version`]),
    ...section("verbs", columns(verbs, "ll")),
    ...section("exit codes", columns(EXIT_CODES, "ll")),
    "",
  ].join("\n");
}

/** Usage, options, examples and exit codes of a verb. */
export async function verbHelp(verb: Verb): Promise<string> {
  const options = [
    ...verb.options.map((o) => [`--${o.name}${o.value === "" ? "" : ` ${o.value}`}`, o.about]),
    ["--help", "show this text"],
  ];
  const usage = verb.usage.map((line) => `${START} ${verb.name} ${line}`);
  const examples = verb.examples.map((line) => `${START} ${line}`);
  return [
    `${verb.name}: ${verb.about}`,
    ...section("usage", usage),
    ...section("options", columns(options, "ll")),
    ...(await verb.names()).flatMap(({ title, rows }) => section(title, columns(rows, "ll"))),
    ...section("examples", examples),
    ...section("exit codes", columns(EXIT_CODES, "ll")),
    "",
  ].join("\n");
}
