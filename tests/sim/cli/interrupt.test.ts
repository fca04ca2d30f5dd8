import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { describe, expect, it } from "vitest";
import { namesIn, START, temporaryFolder, textIn } from "./command.ts";

function begin(folder: string, ...args: string[]): { child: ChildProcess; said: () => string } {
  const child = spawn(process.execPath, [START, ...args], { cwd: folder, stdio: ["ignore", "pipe", "pipe"] });
  let text = "";
  child.stderr?.on("data", (data: Buffer) => {
    text += data.toString();
  });
  return { child, said: () => text };
}

/** Waits until something is so, as long as the process lives. */
async function until(child: ChildProcess, isSo: () => boolean): Promise<void> {
  while (!isSo() && child.exitCode === null) await pause(5);
  expect(child.exitCode, "the process should still run").toBe(null);
}

describe.skipIf(process.platform === "win32")("an interrupted command", () => {
  const files = ["--out", "run.csv", "--summary", "run.json", "--vehicle-out", "vehicle.json"];

  it("shows progress after a second, ends with 130 and writes nothing", async () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, "run.json"), "old");
    const { child, said } = begin(folder, "run", "--balance", "--step", "0.0005", ...files);
    await until(child, () => /balancing udds … \d+ %/.test(said()));
    child.kill("SIGINT");
    expect(await once(child, "exit")).toEqual([130, null]);
    expect(said()).toMatch(/Interrupted: nothing was written/);
    expect(namesIn(folder)).toEqual(["run.json"]);
    expect(textIn(folder, "run.json")).toBe("old");
  });

  it("takes its temporary file away when a long log is being written", async () => {
    const folder = temporaryFolder();
    const { child } = begin(folder, "run", "--log-every", "step", ...files);
    await until(child, () => namesIn(folder).some((name) => name.endsWith(".tmp")));
    child.kill("SIGINT");
    expect(await once(child, "exit")).toEqual([130, null]);
    expect(namesIn(folder)).toEqual([]);
  });
});
