import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, it, vi } from "vitest";
import { ServedApp } from "./app.ts";
import { seriousFaults } from "./bench-page.ts";

// Software drawing beside other tests is slow.
vi.setConfig({ testTimeout: 120_000 });

let app: ServedApp;
let page: Page;
beforeAll(async () => {
  app = await ServedApp.start();
  ({ page } = await app.open(1280, 720, { flat: true }));
}, 240_000);
afterAll(() => app?.stop());

it("says so where a piece of the program is missing, the rest goes on, and it is fetched again when asked", async () => {
  let missing = true;
  // All places have pieces of this name; Bench is there before they are asked for.
  await page.getByRole("button", { name: "Turn", exact: true }).waitFor();
  await page.route(/assets\/place-.*\.js/, (route) => (missing ? route.abort() : route.continue()));
  await page.keyboard.press("5");
  const alert = page.getByRole("alert").filter({ hasText: "Vehicle could not be loaded" });
  await alert.waitFor();
  expect(await seriousFaults(page)).toEqual([]);
  await page.keyboard.press("1");
  await page.getByRole("button", { name: "Turn", exact: true }).waitFor();
  await page.keyboard.press("5");
  await alert.waitFor();
  missing = false;
  // It may be loaded by itself in the same moment, as all places are after a while.
  const again = page.getByRole("button", { name: "Try again" });
  await expect
    .poll(
      async () => {
        await again.dispatchEvent("click", undefined, { timeout: 500 }).catch(() => undefined);
        return page.getByRole("button", { name: "Open vehicle" }).count();
      },
      { timeout: 20_000 },
    )
    .toBe(1);
  await expect.poll(() => alert.count()).toBe(0);
});
