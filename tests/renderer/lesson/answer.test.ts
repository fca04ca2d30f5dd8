import { describe, expect, it } from "vitest";
import {
  answerText,
  hintAfter,
  isRight,
  judged,
  unitsFor,
  wholeWorking,
} from "../../../renderer/lesson/answer.ts";
import type { WorkedNumber } from "../../../sim/lesson/work.ts";
import { asksOf, worked } from "../../sim/lesson/works.ts";

const lesson = worked("torque-split");

function numberAsk(name: string): WorkedNumber {
  const ask = asksOf(lesson).find((one) => one.name === name);
  if (ask?.kind !== "number") throw new Error(name);
  return ask;
}

const torque = numberAsk("sun-torque");
const share = numberAsk("ring-share");

describe("an answer as it is kept", () => {
  it("carries the chosen unit unless one is typed", () => {
    expect(answerText(torque, " −28.6 ", "N·m")).toBe("−28.6");
    expect(answerText(torque, "-21.07", "lb·ft")).toBe("-21.07 lb·ft");
    expect(answerText(torque, "-28.6 Nm", "lb·ft")).toBe("-28.6 Nm");
    expect(answerText(torque, "", "lb·ft")).toBe("");
  });

  it("turns a bare number into the question's unit where a share is asked for", () => {
    // k / (1 + k) with 100 over 40 teeth: 2.5 / 3.5, by hand.
    expect(isRight(share, answerText(share, "0.714", ""))).toBe(true);
    expect(isRight(share, answerText(share, "71.4", "%"))).toBe(true);
    expect(isRight(share, answerText(share, "71.4", ""))).toBe(false);
    expect(answerText(share, "much", "")).toBe("much");
  });

  it("is judged by size, sign and unit", () => {
    // −100 N·m / 3.5, by hand; 1 lb·ft = 1.3558 N·m (NIST SP 811, appendix B.8).
    expect(isRight(torque, "-28.6")).toBe(true);
    expect(isRight(torque, `${-28.571 / 1.355_818} lb·ft`)).toBe(true);
    expect(isRight(torque, undefined)).toBe(false);
    const wrong = judged(torque, "28.6");
    expect(wrong).toMatchObject({ kind: "judged", verdict: { right: false, remark: "sign" } });
    expect(judged(torque, "a lot")).toMatchObject({ kind: "unreadable" });
  });
});

describe("units to choose from", () => {
  it("begin with the question's own and all measure the same", () => {
    expect(unitsFor(torque).map(({ id }) => id)).toEqual(["N·m", "lb·ft"]);
    expect(unitsFor(share).map(({ id }) => id)).toEqual(["%", ""]);
  });
});

describe("hints", () => {
  it("show more at every wrong answer and never the result", () => {
    const seen = [1, 2, 3, 4, 50].map((wrong) => hintAfter(torque, wrong));
    const blanks = seen.map((hint) => hint?.lines.flat().filter(({ kind }) => kind === "blank").length ?? 0);
    expect(blanks[0]).toBe(2);
    expect(blanks[1]).toBe(1);
    for (const hint of seen.slice(2)) {
      expect(hint?.lines.at(-1)).toEqual([{ kind: "blank", next: true }]);
      expect(JSON.stringify(hint)).not.toContain("28.6");
    }
    expect(JSON.stringify(wholeWorking(torque))).toContain("28.6");
  });

  it("are none where nothing is computed", () => {
    expect(hintAfter({ ...torque, kind: "choice", choices: [], working: null }, 1)).toBeNull();
  });
});
