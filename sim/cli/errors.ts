import { InputError, type InputFault } from "../../shared/errors.ts";
import { EXIT, Interrupted } from "./around.ts";
import { labelled, wrap } from "./report/text.ts";

/** What an error is told as, and how the program then ends. */
export interface Told {
  readonly text: string;
  readonly code: number;
}

/** Width of the labels of a fault. */
const LABEL = 12;

/** Turns whatever a command threw into text for stderr and an exit code. */
export function tell(error: unknown): Told {
  if (error instanceof Interrupted) {
    return { text: `Interrupted: ${error.kept}.\n`, code: EXIT.interrupted };
  }
  if (error instanceof InputError) return { text: inputText(error.faults), code: EXIT.badInput };
  if (error instanceof RangeError && /allocation|buffer/i.test(error.message)) {
    return {
      text: "There is not enough memory for this log: log every 0.1 s, or drive less.\n",
      code: EXIT.badInput,
    };
  }
  const detail = error instanceof Error ? (error.stack ?? error.message) : String(error);
  return { text: `This is a fault of the program, not of the input:\n${detail}\n`, code: EXIT.programFault };
}

function inputText(faults: readonly InputFault[]): string {
  const head =
    faults.length === 1 ? "The input is not right:" : `The input is not right in ${faults.length} places:`;
  return `${[head, ...faults.flatMap(faultLines)].join("\n")}\n`;
}

function faultLines({ where, what, value, accepted }: InputFault): string[] {
  return [
    ...wrap(where === "" ? "input" : where, "  "),
    ...labelled("    what", what.replace(/\.$/, ""), LABEL + 4),
    ...(value === "" ? [] : labelled("    found", value, LABEL + 4)),
    ...labelled("    accepted", accepted.replace(/\.$/, ""), LABEL + 4),
  ];
}
