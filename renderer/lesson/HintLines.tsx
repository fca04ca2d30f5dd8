import type { Hint, HintToken } from "../../sim/lesson/hint.ts";
import { t } from "../texts/catalogue.ts";

const q = t.lesson.question;

function Piece({ token }: { token: HintToken }) {
  if (token.kind === "blank") {
    return (
      <span class={token.next ? "blank next" : "blank"}>
        <span aria-hidden="true">?</span>
        <span class="unseen">{q.blank}</span>
      </span>
    );
  }
  const { text, kind, sub, shaft } = token;
  return (
    <span class={`${kind === "symbol" ? "symbol" : ""} ${shaft ? `ink ${shaft}` : ""}`}>
      {text}
      {sub && <sub>{sub}</sub>}
    </span>
  );
}

/** A working as far as it is shown: formula, live numbers, result; what is not yet shown is a framed blank. */
export const HintLines = ({ hint }: { hint: Hint }) => (
  <>
    <div class="lines hint-lines">
      {hint.lines.map((line, i) => (
        <p key={i} class={i === 0 ? "formula" : ""}>
          {i === 0 && <Piece token={hint.symbol} />} ={" "}
          {line.map((token, j) => (
            <Piece key={j} token={token} />
          ))}
        </p>
      ))}
    </div>
    {hint.note && <p class="hint-note">{hint.note}</p>}
  </>
);
