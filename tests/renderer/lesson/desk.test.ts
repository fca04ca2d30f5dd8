import { describe, expect, it } from "vitest";
import { type Ask, Desk, type DeskRunner } from "../../../renderer/lesson/desk.ts";
import { Cancelled } from "../../../renderer/workers/runner.ts";

/** A runner whose work ends when the test says so. */
class HeldRunner implements DeskRunner {
  under = 0;
  most = 0;
  cancels = 0;
  private giveUp: (() => void) | null = null;

  async ask<T>(work: Ask<T>, report: (runs: number) => void = () => undefined): Promise<T> {
    this.under += 1;
    this.most = Math.max(this.most, this.under);
    const cancelled = new Promise<never>((_, reject) => {
      this.giveUp = () => reject(new Cancelled());
    });
    try {
      return await Promise.race([Promise.resolve().then(() => work({} as never, report)), cancelled]);
    } finally {
      this.under -= 1;
      this.giveUp = null;
    }
  }

  cancel(): void {
    this.cancels += 1;
    this.giveUp?.();
  }
}

function held<T>(value: T) {
  let end: (failure?: Error) => void = () => undefined;
  const done = new Promise<T>((resolve, reject) => {
    end = (failure) => (failure ? reject(failure) : resolve(value));
  });
  return { work: () => done, end };
}

const soon = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));

describe("a desk with one worker", () => {
  it("does one piece after the other", async () => {
    const runner = new HeldRunner();
    const desk = new Desk(runner, 1e6);
    const [a, b] = [held("a"), held("b")];
    const first = desk.inTurn(a.work);
    const second = desk.inTurn(b.work);
    await soon();
    expect(runner.under).toBe(1);
    b.end();
    a.end();
    expect([await first, await second]).toEqual(["a", "b"]);
    expect(runner.most).toBe(1);
  });

  it("gives only the newest of what is asked for as such, and skips what waited in between", async () => {
    const desk = new Desk(new HeldRunner(), 1e6);
    const begun: string[] = [];
    const [a, b, c] = ["a", "b", "c"].map((name) => {
      const one = held(name);
      return {
        ...one,
        work: () => {
          begun.push(name);
          return one.work();
        },
      };
    });
    if (!a || !b || !c) throw new Error("three");
    const asked = [desk.newest(a.work)];
    await soon();
    asked.push(desk.newest(b.work), desk.newest(c.work));
    for (const one of [a, b, c]) one.end();
    expect(await Promise.all(asked)).toEqual([null, null, "c"]);
    expect(begun).toEqual(["a", "c"]);
  });

  it("ends what is under way when newer work has waited long enough", async () => {
    const runner = new HeldRunner();
    const desk = new Desk(runner, 1);
    const forever = held("never");
    const first = desk.newest(forever.work);
    await soon();
    const second = desk.newest(async () => "second");
    expect(await first).toBeNull();
    expect(await second).toBe("second");
    expect(runner.cancels).toBe(1);
  });

  it("goes on after a failure, and passes it to whoever asked", async () => {
    const desk = new Desk(new HeldRunner(), 1e6);
    const broken = held("x");
    const first = desk.newest(broken.work);
    await soon();
    broken.end(new Error("broken"));
    await expect(first).rejects.toThrow("broken");
    expect(await desk.newest(async () => 2)).toBe(2);
    expect(await desk.inTurn(async () => 3)).toBe(3);
  });

  it("lets only the newest report", async () => {
    const desk = new Desk(new HeldRunner(), 1e6);
    const heard: string[] = [];
    const gate = held(null);
    const old = desk.newest(
      async (_, report) => {
        await gate.work();
        report(1);
      },
      () => heard.push("old"),
    );
    await soon();
    const now = desk.newest(
      async (_, report) => report(2),
      (runs) => heard.push(`new ${runs}`),
    );
    gate.end();
    await Promise.all([old, now]);
    expect(heard).toEqual(["new 2"]);
  });
});
