import { execFileSync } from "node:child_process";
import { chmod, mkdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { readText } from "../../../electron/files/read.ts";
import { asNobody } from "../support/nobody.ts";
import { temporaryFolder } from "../support/temporary.ts";

const posix = process.platform !== "win32";

async function file(content: string | Uint8Array): Promise<string> {
  const path = join(await temporaryFolder(), "a.trishaft.json");
  await writeFile(path, content);
  return path;
}

describe("a text file", () => {
  it("is read to the last byte allowed", async () => {
    const path = await file("Größe");
    expect(await readText(path, 7)).toEqual({ text: "Größe" });
    expect(await readText(path, 6)).toMatchObject({ fault: { value: "7 bytes", where: path } });
  });

  it("of several megabytes comes whole", async () => {
    const text = "0123456789".repeat(300_000);
    expect(await readText(await file(text), 10_000_000)).toEqual({ text });
  });

  it.runIf(process.platform === "linux")("of no known size is read up to the limit", async () => {
    // Such files tell a size of nought.
    expect(await readText("/proc/self/status", 10)).toMatchObject({
      fault: { what: "The file is too large." },
    });
  });

  it("may be empty", async () => {
    expect(await readText(await file(""), 10)).toEqual({ text: "" });
  });
});

describe("reading is refused", () => {
  it("for a file that vanished", async () => {
    const path = join(await temporaryFolder(), "gone.json");
    expect(await readText(path, 10)).toMatchObject({
      fault: { what: "The file is no longer there.", where: path, accepted: "a file that exists" },
    });
  });

  it("for a folder", async () => {
    const folder = join(await temporaryFolder(), "sub.json");
    await mkdir(folder);
    expect(await readText(folder, 10)).toMatchObject({
      fault: { what: expect.stringMatching(/no file|folder/) },
    });
  });

  it.runIf(posix)("for a device and for a pipe, without waiting", async () => {
    expect(await readText("/dev/zero", 10)).toMatchObject({ fault: { value: "a device" } });
    const pipe = join(await temporaryFolder(), "pipe.json");
    execFileSync("mkfifo", [pipe]);
    expect(await readText(pipe, 10)).toMatchObject({ fault: { value: "a device" } });
  });

  it.runIf(posix)("for a file that may not be read", async () => {
    const path = await file("x");
    await chmod(join(path, ".."), 0o755);
    await chmod(path, 0o200);
    expect(await asNobody(() => readText(path, 10))).toMatchObject({
      fault: { what: "The file may not be read." },
    });
  });

  it("for bytes that are no text", async () => {
    expect(await readText(await file(Uint8Array.of(0x89, 0x50)), 10)).toMatchObject({
      fault: { what: "The file is not text." },
    });
  });
});
