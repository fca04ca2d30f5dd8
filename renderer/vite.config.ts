import { defineConfig } from "vite";

/** The page: relative addresses, so that it works below any root; nothing inline, so that a strict policy holds. */
export default defineConfig({
  root: import.meta.dirname,
  base: "./",
  build: {
    outDir: "../dist/renderer",
    emptyOutDir: true,
    target: "es2023",
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    // The largest pieces come after the first picture: the interpreter of own strategies, and what draws in three dimensions.
    chunkSizeWarningLimit: 700,
  },
  worker: { format: "es" },
});
