import { createHash } from "node:crypto";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Worker } from "node:worker_threads";
import { build } from "vite";
import { afterAll, describe, expect, it } from "vitest";
import { runDigest } from "../../support/digest.ts";

const folder = mkdtempSync(join(tmpdir(), "trishaft-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Bundles the digest for a worker thread and asks it for its answer. */
async function digestInWorker(cycle: string): Promise<string> {
  await build({
    configFile: false,
    logLevel: "error",
    build: {
      ssr: join(import.meta.dirname, "../../support/digest-worker.ts"),
      outDir: folder,
      target: "node20",
      rollupOptions: { output: { entryFileNames: "worker.mjs" } },
    },
    ssr: { noExternal: true },
  });
  const worker = new Worker(join(folder, "worker.mjs"), { workerData: cycle });
  try {
    return await new Promise<string>((resolve, reject) => {
      worker.once("message", resolve);
      worker.once("error", reject);
    });
  } finally {
    await worker.terminate();
  }
}

describe("the same run twice", () => {
  it("gives the same bytes", () => {
    expect(runDigest("nycc", createHash)).toBe(runDigest("nycc", createHash));
  });

  it("gives the same bytes in a worker", async () => {
    expect(await digestInWorker("nycc")).toBe(runDigest("nycc", createHash));
  });

  it("gives other bytes for another cycle: the digest can tell", () => {
    expect(runDigest("nycc", createHash)).not.toBe(runDigest("sc03", createHash));
  });
});
