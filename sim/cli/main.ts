import { isMainThread, parentPort } from "node:worker_threads";
import { version } from "../../package.json";
import { type Around, EXIT } from "./around.ts";
import { isOurs, serve, workBeside } from "./beside.ts";
import { tell } from "./errors.ts";
import { VERBS } from "./verbs.ts";

/**
 * The command line.
 * @param words what was typed behind the program's name
 * @param start path of the script that started it
 * @returns exit code
 */
export async function main(words: readonly string[], start: string): Promise<number> {
  const [name = "", ...rest] = words;
  // A reader that has seen enough (`… | head`) is no fault.
  process.stdout.on("error", (error: NodeJS.ErrnoException) => process.exit(error.code === "EPIPE" ? 0 : 1));
  const verb = VERBS.find((candidate) => candidate.name === name);
  if (verb?.long && !rest.includes("--help")) return workBeside(words, start);
  return execute(words, {
    out: (text) => process.stdout.write(text),
    note: (text) => process.stderr.write(text),
    progress: () => {},
    cancelled: () => false,
    start,
  });
}

/** Does what the words say in this thread. @returns exit code */
export async function execute(words: readonly string[], around: Around): Promise<number> {
  try {
    await dispatch(words, around);
    return EXIT.done;
  } catch (error) {
    const { text, code } = tell(error);
    around.note(text);
    return code;
  }
}

async function dispatch(words: readonly string[], around: Around): Promise<void> {
  const [name = "help", ...rest] = words;
  if (name === "--version") {
    around.out(`trishaft ${version}\n`);
    return;
  }
  const { helpText, verbByName, verbHelp } = await import("./commands/help.ts");
  if (name === "help" || name === "--help") {
    around.out(await helpText(rest.filter((word) => word !== "--help")));
    return;
  }
  const verb = verbByName(name);
  if (rest.includes("--help")) {
    around.out(await verbHelp(verb));
    return;
  }
  const command = await verb.load();
  await command(rest, around);
}

if (!isMainThread && parentPort && isOurs()) serve(parentPort, execute);
