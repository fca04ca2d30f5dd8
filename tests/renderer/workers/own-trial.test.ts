import { describe, expect, it } from "vitest";
import { cycleById } from "../../../cycles/catalogue.ts";
import { tryOwn } from "../../../renderer/workers/own-trial.ts";
import { OWN_EXAMPLES } from "../../../sim/control/own/examples/registry.ts";
import { vehicleById } from "../../../sim/vehicle/presets/registry.ts";

const vehicle = vehicleById("compact");
const cycle = cycleById("launch");
const trial = (text: string, drives = true) =>
  tryOwn(
    { own: { title: "mine", text }, vehicle, cycle: drives ? cycle : null, options: {} },
    () => undefined,
  );

describe("a trial of an own strategy", () => {
  it("drives every worked example and tells its figures", async () => {
    for (const { text } of OWN_EXAMPLES) {
      const reply = await trial(text);
      expect(reply.ok && reply.summary?.distance_m).toBeGreaterThan(50);
    }
  });

  it("reads without driving where there is no cycle", async () => {
    expect(await trial(OWN_EXAMPLES[0]?.text ?? "", false)).toEqual({ ok: true, summary: null });
  });

  it("gives a slip of the pen with its line, before anything is driven", async () => {
    const reply = await trial("export function decide(now) {\n  return { engineOn: tru e };\n}\n", false);
    expect(reply).toMatchObject({ ok: false, fault: { kind: "text", line: 2, second: null } });
  });

  it("gives a fault of a decision with its line and simulated second", async () => {
    const text =
      "export function decide(now) {\n  if (now.time_s >= 2) throw new Error('late');\n  return { engineOn: false };\n}\n";
    const reply = await trial(text);
    expect(reply).toMatchObject({ ok: false, fault: { kind: "error", line: 2 } });
    if (!reply.ok) {
      // The first decision at or after it.
      expect(reply.fault?.second).toBeGreaterThanOrEqual(2);
      expect(reply.fault?.second).toBeLessThan(2.1);
      expect(reply.message).toContain("late");
    }
  });

  it("says so when a text is empty, and when a loop does not end", async () => {
    expect(await trial(" ")).toMatchObject({ ok: false, fault: null });
    const endless = await trial("export function decide() {\n  for (;;);\n}\n");
    expect(endless).toMatchObject({ ok: false, fault: { kind: "steps" } });
  });
});
