import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { SITUATIONS } from "../../../renderer/state/situations.ts";
import { en } from "../../../renderer/texts/en.ts";
import { REGIMES } from "../../../sim/run/regimes.ts";

const renderer = join(import.meta.dirname, "..", "..", "..", "renderer");

/** Every text of the catalogue with its path; functions are asked with stand-ins. */
function texts(node: unknown, path: string): [string, string][] {
  if (typeof node === "string") return [[path, node]];
  if (typeof node === "function") return texts(node("1", "2", "3", "4"), `${path}()`);
  if (typeof node !== "object" || node === null) return [];
  return Object.entries(node).flatMap(([name, value]) => texts(value, `${path}.${name}`));
}

const numbers = { electrical: "1", circulating: "2", battery: "3", sun: "4" };

describe("the text catalogue", () => {
  it("has a heading and a sentence for every regime", () => {
    for (const { id } of REGIMES) {
      expect(en.regimes[id]?.title, id).toBeTruthy();
      expect(en.regimes[id]?.say(numbers), id).toMatch(/\.$/);
    }
  });

  it("has two names for every situation", () => {
    for (const { id } of SITUATIONS) {
      expect(en.situations[id].name).toBeTruthy();
      expect(en.situations[id].short.length).toBeLessThanOrEqual(12);
    }
  });

  it("has no empty text and none with a hole in it", () => {
    const { regimes: _, ...rest } = en;
    const all = texts(rest, "en");
    expect(all.length).toBeGreaterThan(200);
    for (const [path, text] of all) {
      expect(text.trim(), path).not.toBe("");
      expect(text, path).not.toMatch(/undefined|NaN|\[object/);
    }
  });

  it("names the machines as other books do only in the glossary, once each", () => {
    const all = texts({ ...en, regimes: {} }, "en");
    for (const name of ["MG1", "MG2"]) {
      const found = all.filter(([, text]) => text.includes(name));
      expect(found.map(([path]) => path.startsWith("en.glossary."))).toEqual([true]);
    }
  });

  it("is where all words of the views come from", () => {
    const views = readdirSync(renderer, { recursive: true, encoding: "utf8" }).filter(
      (path) => path.endsWith(".tsx") && !path.startsWith("scene"),
    );
    expect(views.length).toBeGreaterThan(15);
    const words = views.flatMap((path) => {
      const lines = readFileSync(join(renderer, path), "utf8").split("\n");
      return lines
        .filter(
          (line) => /^\s*[A-Z][a-z]+( [a-z]+)+[.,]?$/.test(line) || />[A-Za-z]{3,}[^<>{}=;()]*</.test(line),
        )
        .map((line) => `${path}: ${line.trim()}`);
    });
    expect(words).toEqual([]);
  });
});
