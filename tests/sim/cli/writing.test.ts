import { spawnSync } from "node:child_process";
import {
  chmodSync,
  existsSync,
  mkdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { Interrupted } from "../../../sim/cli/around.ts";
import { checkTargets, writeAll } from "../../../sim/cli/outputs.ts";
import { command, namesIn, START, temporaryFolder, textIn } from "./command.ts";

const goOn = (): void => {};
const output = (path: string, pieces: () => Iterable<string>) => ({ where: "--out", path, pieces });
const asRoot = process.getuid?.() === 0;

describe("writing all or nothing", () => {
  it("replaces what was there, keeps its mode, and follows a link", () => {
    const folder = temporaryFolder();
    const path = join(folder, "run.csv");
    writeFileSync(path, "old");
    chmodSync(path, 0o640);
    symlinkSync(path, join(folder, "link.csv"));
    writeAll([output(join(folder, "link.csv"), () => ["new ", "text\n"])], goOn);
    expect(textIn(folder, "run.csv")).toBe("new text\n");
    expect(statSync(path).mode & 0o777).toBe(0o640);
    expect(namesIn(folder)).toEqual(["link.csv", "run.csv"]);
  });

  it("leaves everything as it was when a piece cannot be made", () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, "b"), "old");
    function* broken(): Generator<string> {
      yield "half";
      throw new Error("broken");
    }
    const outputs = [output(join(folder, "a"), () => ["whole"]), output(join(folder, "b"), broken)];
    expect(() => writeAll(outputs, goOn)).toThrow("broken");
    expect(namesIn(folder)).toEqual(["b"]);
    expect(textIn(folder, "b")).toBe("old");
  });

  it("leaves everything as it was when interrupted, between pieces and before the renaming", () => {
    for (const calls of [0, 1, 2]) {
      const folder = temporaryFolder();
      let left = calls;
      const check = (): void => {
        if (left === 0) throw new Interrupted("interrupted");
        left -= 1;
      };
      expect(() => writeAll([output(join(folder, "a"), () => ["1", "2"])], check)).toThrow(Interrupted);
      expect(namesIn(folder)).toEqual([]);
    }
  });

  it("removes its temporary file when the renaming fails", () => {
    const folder = temporaryFolder();
    const path = join(folder, "run.csv");
    function* meanwhile(): Generator<string> {
      yield "text";
      mkdirSync(path);
    }
    expect(() => writeAll([output(path, meanwhile)], goOn)).toThrow(/this is a folder/);
    expect(namesIn(folder)).toEqual(["run.csv"]);
  });

  it("refuses targets before any work: folders, missing folders, one file twice, the input", () => {
    const folder = temporaryFolder();
    const target = (where: string, name: string) => ({ where, path: join(folder, name) });
    const said = (targets: { where: string; path: string }[], inputs: string[] = []): string => {
      try {
        checkTargets(targets, inputs);
        return "";
      } catch (error) {
        return String(error);
      }
    };
    writeFileSync(join(folder, "drive.csv"), "");
    expect(said([target("--out", ".")])).toMatch(/this is a folder/);
    expect(said([target("--out", "no/x.csv")])).toMatch(/folder does not exist/);
    expect(said([target("--out", "drive.csv/x.csv")])).toMatch(/no folder/);
    expect(said([target("--out", "x"), target("--summary", "./x")])).toMatch(/overwrite the file of --out/);
    expect(said([target("--out", "drive.csv")], [join(folder, "drive.csv")])).toMatch(/overwrite the input/);
    expect(said([target("--out", "x"), target("--summary", "y")])).toBe("");
    expect(namesIn(folder)).toEqual(["drive.csv"]);
  });
});

describe("targets that fail, from the command line", () => {
  const cycle = ["run", "--cycle", "back-up"];

  it("names a folder that does not exist and a folder in place of a file, and writes nothing", () => {
    const folder = temporaryFolder();
    mkdirSync(join(folder, "taken"));
    const done = command(
      folder,
      ...cycle,
      "--out",
      "no/run.csv",
      "--summary",
      "taken",
      "--vehicle-out",
      "v.json",
    );
    expect(done.status).toBe(2);
    expect(done.stderr).toMatch(/--out\n {4}what {8}the folder does not exist/);
    expect(done.stderr).toMatch(/--summary\n {4}what {8}this is a folder/);
    expect(namesIn(folder)).toEqual(["taken"]);
  });

  it.skipIf(asRoot)("names a folder that may not be written to", () => {
    const folder = temporaryFolder();
    mkdirSync(join(folder, "locked"), { mode: 0o555 });
    const done = command(folder, ...cycle, "--out", "locked/run.csv");
    expect(done).toMatchObject({ status: 2, stdout: "" });
    expect(done.stderr).toMatch(/no permission/);
  });

  it.skipIf(!existsSync("/proc/version"))("names a file system that takes no files", () => {
    const done = command(temporaryFolder(), ...cycle, "--out", "/proc/run.csv");
    expect(done.status).toBe(2);
    expect(done.stderr).toMatch(/--out\n {4}what/);
  });

  it.skipIf(!existsSync("/dev/full"))("says that the disk is full and writes none of the other files", () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, "run.json"), "old");
    const done = command(
      folder,
      ...cycle,
      "--out",
      "/dev/full",
      "--summary",
      "run.json",
      "--vehicle-out",
      "v.json",
    );
    expect(done).toMatchObject({ status: 2, stdout: "" });
    expect(done.stderr).toMatch(/the disk is full/);
    expect(namesIn(folder)).toEqual(["run.json"]);
    expect(textIn(folder, "run.json")).toBe("old");
  });

  it.skipIf(process.platform === "win32")("keeps the old file when writing breaks half way", () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, "run.csv"), "old");
    const args = [...cycle, "--out", "run.csv", "--summary", "run.json"].map((word) => `'${word}'`).join(" ");
    // A limit of 64 blocks on any file's length lets the log begin and then fail, as a full disk does.
    const script = `ulimit -f 64; exec '${process.execPath}' '${START}' ${args}`;
    const done = spawnSync("sh", ["-c", script], { cwd: folder, encoding: "utf8" });
    expect(done.status, done.stderr).toBe(2);
    expect(done.stderr).toMatch(/too large for the disk/);
    expect(namesIn(folder)).toEqual(["run.csv"]);
    expect(readFileSync(join(folder, "run.csv"), "utf8")).toBe("old");
  });

  it.skipIf(!existsSync("/dev/null"))("writes to a device without replacing it", () => {
    expect(command(temporaryFolder(), ...cycle, "--out", "/dev/null").status).toBe(0);
    expect(statSync("/dev/null").isCharacterDevice()).toBe(true);
  });
});
