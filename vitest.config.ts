import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["tests/**/*.test.ts"],
    exclude: ["tests/bench/**"],
    setupFiles: ["tests/support/same-draws.ts"],
    testTimeout: 60_000,
    hookTimeout: 120_000,
  },
});
