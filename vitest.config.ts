import { availableParallelism } from "node:os";
import { defineConfig } from "vitest/config";

/** Tests with a browser: it takes both processors of a small machine, so they run one at a time, after the others. */
const BROWSER = "tests/e2e/**/*.test.ts";

export default defineConfig({
  test: {
    setupFiles: ["tests/support/same-draws.ts"],
    // A guard against what hangs; a test beside others on a busy machine takes many times its own time.
    testTimeout: 120_000,
    hookTimeout: 120_000,
    projects: [
      {
        extends: true,
        test: {
          name: "plain",
          include: ["tests/**/*.test.ts"],
          exclude: ["tests/bench/**", BROWSER],
          maxWorkers: Math.max(2, availableParallelism() - 1),
          sequence: { groupOrder: 0 },
        },
      },
      {
        extends: true,
        test: {
          name: "browser",
          include: [BROWSER],
          // A page answers late on a busy machine, and that is no fault.
          expect: { poll: { timeout: 10_000 } },
          maxWorkers: 1,
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
