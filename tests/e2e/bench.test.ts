import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { ServedApp } from "./app.ts";

// Software drawing beside other tests is slow.
vi.setConfig({ testTimeout: 240_000 });

let app: ServedApp;
beforeAll(async () => {
  app = await ServedApp.start();
}, 240_000);
afterAll(() => app?.stop());

/** k of the demo compact. */
const K = 2.5;

/** Speed of a shaft as its handle on the lever line tells it, rev/min. */
const speedOf = async (page: Page, shaft: "Sun" | "Carrier" | "Ring"): Promise<number> =>
  Number(
    await page.getByRole("slider", { name: `${shaft} speed`, exact: true }).getAttribute("aria-valuenow"),
  );

async function expectGearEquation(page: Page): Promise<void> {
  const [sun, carrier, ring] = [
    await speedOf(page, "Sun"),
    await speedOf(page, "Carrier"),
    await speedOf(page, "Ring"),
  ];
  // Each is told to a whole rev/min.
  expect(Math.abs(sun + K * ring - (1 + K) * carrier)).toBeLessThanOrEqual(0.5 * (1 + K + 1 + K));
}

describe("Bench in a real browser", () => {
  it("opens with its views, and no script fails", async () => {
    const { page, errors } = await app.open(1280, 720);
    for (const name of [/Gear set/, /Lever line/, /Power paths/]) {
      expect(await page.getByRole("heading", { name }).count()).toBe(1);
    }
    await expectGearEquation(page);
    expect(errors).toEqual([]);
    await page.context().close();
  });

  it("reaches every situation by its button, and the gear equation holds in each", async () => {
    const { page, errors } = await app.open(1600, 900);
    const names = [
      "engine start at rest",
      "electric pull-away",
      "engine pull-away",
      "one to one",
      "above direct",
      "sun at rest",
      "sun backward",
      "charging at rest",
      "slowing down",
      "backing up",
    ];
    const seen = new Set<string>();
    for (const name of names) {
      await page.getByRole("button", { name, exact: true }).click();
      await page.waitForTimeout(400);
      await expectGearEquation(page);
      seen.add(
        [await speedOf(page, "Sun"), await speedOf(page, "Carrier"), await speedOf(page, "Ring")].join(),
      );
    }
    expect(seen.size).toBe(names.length);
    expect(errors).toEqual([]);
    await page.context().close();
  });

  it("takes a typed speed with a unit, and the sun follows", async () => {
    const { page } = await app.open(1600, 900);
    const carrier = page.getByRole("textbox", { name: "Carrier speed, typed" });
    await carrier.fill("251.327 rad/s");
    await carrier.press("Enter");
    await page.waitForTimeout(300);
    expect(await speedOf(page, "Carrier")).toBe(2400);
    await carrier.fill("2000");
    await carrier.press("Enter");
    await page.waitForTimeout(300);
    expect(await speedOf(page, "Carrier")).toBe(2000);
    expect(await speedOf(page, "Sun")).toBe(3.5 * 2000 - 2.5 * 1000);
    await page.context().close();
  });

  it("is restored after a reload", async () => {
    const { page } = await app.open(1600, 900);
    await page.getByRole("button", { name: "sun backward", exact: true }).click();
    await page.waitForTimeout(1500);
    const before = await speedOf(page, "Sun");
    await page.reload();
    await page.getByRole("heading", { name: "Bench" }).waitFor();
    expect(await speedOf(page, "Sun")).toBe(before);
    expect(before).toBeLessThan(0);
    await page.context().close();
  });

  for (const scheme of ["light", "dark"] as const) {
    it(`has no serious fault of accessibility, ${scheme}`, async () => {
      const { page } = await app.open(1600, 900, scheme);
      const path = createRequire(import.meta.url).resolve("axe-core/axe.min.js");
      await page.addScriptTag({ content: readFileSync(path, "utf8") });
      const serious = await page.evaluate(async () => {
        const checker = Reflect.get(window, "axe") as {
          run(): Promise<{ violations: { id: string; impact: string; nodes: { html: string }[] }[] }>;
        };
        const { violations } = await checker.run();
        return violations
          .filter(({ impact }) => impact === "serious" || impact === "critical")
          .map(({ id, nodes }) => `${id}: ${nodes[0]?.html ?? ""}`);
      });
      expect(serious).toEqual([]);
      await page.context().close();
    });
  }
});
