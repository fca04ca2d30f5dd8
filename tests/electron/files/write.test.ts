import { chmod, mkdir, open, readdir, readFile, readlink, stat, symlink, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { type OpenNew, writeWhole } from "../../../electron/files/write.ts";
import { asNobody } from "../support/nobody.ts";
import { temporaryFolder } from "../support/temporary.ts";

const posix = process.platform !== "win32";

/** A folder with one file that must survive whatever happens. */
async function folderWithFile() {
  const folder = await temporaryFolder();
  const path = join(folder, "a.trishaft.json");
  await writeFile(path, "old");
  return { folder, path, untouched: () => expectUntouched(folder, path) };
}

async function expectUntouched(folder: string, path: string): Promise<void> {
  expect(await readFile(path, "utf8")).toBe("old");
  expect(await readdir(folder)).toEqual(["a.trishaft.json"]);
}

describe("a whole file", () => {
  it("is written, replaced, and leaves nothing beside it", async () => {
    const { folder, path } = await folderWithFile();
    expect(await writeWhole(path, "new")).toBeNull();
    expect(await readFile(path, "utf8")).toBe("new");
    expect(await writeWhole(join(folder, "b.bin"), Uint8Array.of(1, 2, 255))).toBeNull();
    expect([...(await readFile(join(folder, "b.bin")))]).toEqual([1, 2, 255]);
    expect((await readdir(folder)).sort()).toEqual(["a.trishaft.json", "b.bin"]);
  });

  it.runIf(posix)("keeps who may read it, and a link stays a link", async () => {
    const { folder, path } = await folderWithFile();
    await chmod(path, 0o600);
    const link = join(folder, "link.json");
    await symlink("a.trishaft.json", link);
    expect(await writeWhole(link, "new")).toBeNull();
    expect(await readlink(link)).toBe("a.trishaft.json");
    expect(await readFile(path, "utf8")).toBe("new");
    expect((await stat(path)).mode & 0o777).toBe(0o600);
  });

  it("stays as it was when two are written at once, whichever is last", async () => {
    const { folder, path } = await folderWithFile();
    const long = "x".repeat(100_000);
    await Promise.all(Array.from({ length: 8 }, (_, i) => writeWhole(path, `${i}${long}`)));
    expect(await readFile(path, "utf8")).toMatch(/^[0-7]x{100000}$/);
    expect(await readdir(folder)).toHaveLength(1);
  });
});

describe("a disk that fails", () => {
  it.runIf(process.platform === "linux")("is full: the file stays as it was", async () => {
    const { path, untouched } = await folderWithFile();
    const full: OpenNew = async (beside) => {
      await writeFile(beside, "");
      return open("/dev/full", "w");
    };
    expect(await writeWhole(path, "new", full)).toMatchObject({
      what: "The drive is full; the file is as it was.",
      where: path,
    });
    await untouched();
  });

  /** Opens the real file, but one of its steps fails. */
  const breaking =
    (step: "write" | "sync" | "close", code: string): OpenNew =>
    async (beside) => {
      const file = await open(beside, "wx");
      const fail = async (): Promise<never> => {
        throw Object.assign(new Error(code), { code });
      };
      return {
        writeFile: async (content) => {
          if (step !== "write") return file.writeFile(content);
          await file.writeFile(String(content).slice(0, 2));
          return fail();
        },
        sync: step === "sync" ? fail : () => file.sync(),
        close: () => file.close().then(step === "close" ? fail : () => {}),
      };
    };

  it.each([
    ["write", "ENOSPC", /full/],
    ["write", "EIO", /drive reported/],
    ["sync", "EDQUOT", /full/],
    ["close", "EIO", /drive reported/],
    ["write", "EFBIG", /too large/],
    ["sync", "EWHATEVER", /EWHATEVER/],
  ] as const)("breaks at %s with %s: the file stays as it was", async (step, code, what) => {
    const { path, untouched } = await folderWithFile();
    const fault = await writeWhole(path, "newer", breaking(step, code));
    expect(fault?.what).toMatch(what);
    expect(fault?.accepted).not.toBe("");
    await untouched();
  });

  it("does not hide a programming error", async () => {
    const { path, untouched } = await folderWithFile();
    const wrong: OpenNew = async () => {
      throw new TypeError("wrong");
    };
    await expect(writeWhole(path, "new", wrong)).rejects.toThrow(TypeError);
    await untouched();
  });
});

describe("a place that may not be written", () => {
  it.runIf(posix)("is a folder without that right", async () => {
    const { folder, path, untouched } = await folderWithFile();
    await chmod(folder, 0o555);
    const fault = await asNobody(() => writeWhole(path, "new"));
    await chmod(folder, 0o755);
    expect(fault?.what).toMatch(/may not be written/);
    await untouched();
  });

  it("is a file without that right", async () => {
    const { path, untouched } = await folderWithFile();
    await chmod(path, 0o444);
    expect((await writeWhole(path, "new"))?.what).toMatch(/may not be written/);
    await chmod(path, 0o644);
    await untouched();
  });

  it("is a folder that is gone", async () => {
    const folder = await temporaryFolder();
    expect((await writeWhole(join(folder, "gone", "a.json"), "x"))?.what).toMatch(/folder is no longer/);
  });

  it("is the name of a folder", async () => {
    const folder = await temporaryFolder();
    await mkdir(join(folder, "sub"));
    expect((await writeWhole(join(folder, "sub"), "x"))?.what).toMatch(/folder or device/);
    expect(await readdir(folder)).toEqual(["sub"]);
  });

  it.runIf(posix)("is a name that is too long", async () => {
    const folder = await temporaryFolder();
    expect((await writeWhole(join(folder, "x".repeat(300)), "x"))?.what).toMatch(/too long/);
    expect(await readdir(folder)).toEqual([]);
  });
});
