import { spawn } from "node:child_process";
import { once } from "node:events";
import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { build } from "vite";
import { describe, expect, it } from "vitest";
import { temporaryFolder } from "../support/temporary.ts";

const source = join(import.meta.dirname, "..", "..", "..", "electron", "files", "write.ts");

/** Saves over and over, each time a file of one letter, the next one each time. */
const SAVER = `
import { writeWhole } from "./write.mjs";
const path = process.argv[2];
for (let i = 0; ; i += 1) {
  const fault = await writeWhole(path, "abcdefghij"[i % 10].repeat(3_000_000));
  if (fault) throw new Error(fault.what);
  process.stdout.write(".");
}
`;

describe("a process that is killed while it saves", () => {
  it("leaves one whole file, the old or the new one", { timeout: 60_000 }, async () => {
    const folder = await temporaryFolder();
    await build({
      configFile: false,
      logLevel: "silent",
      build: {
        ssr: source,
        outDir: folder,
        emptyOutDir: false,
        rolldownOptions: { output: { entryFileNames: "write.mjs" } },
      },
    });
    const saver = join(folder, "saver.mjs");
    await writeFile(saver, SAVER);
    const path = join(folder, "a.trishaft.json");
    for (let i = 0; i < 8; i += 1) {
      const child = spawn(process.execPath, [saver, path], { stdio: ["ignore", "pipe", "inherit"] });
      const ended = once(child, "exit");
      await once(child.stdout, "data");
      // Somewhere within the next saves.
      await new Promise((resolve) => setTimeout(resolve, 3 + 7 * i));
      child.kill("SIGKILL");
      await ended;
      const text = await readFile(path, "utf8");
      expect(text).toHaveLength(3_000_000);
      expect(new Set(text).size).toBe(1);
    }
  });
});
