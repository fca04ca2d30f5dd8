import { writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { newProject, writeProject } from "../../shared/project.ts";
import { DOWNLOADS, ServedApp } from "./app.ts";
import { cursorNear, goToRoad } from "./road-page.ts";

// Software drawing beside other tests is slow.
vi.setConfig({ testTimeout: 300_000 });

const DAY = 86_400;

/** A day of one second a row: twenty minutes of town and country, over and over; made for this test. */
function aDay(): string {
  const time = Array.from({ length: DAY + 1 }, (_, i) => i);
  const speed = time.map((at) => {
    const t = at % 1200;
    if (at === DAY || t > 1000) return 0;
    if (t < 60) return (14 * t) / 60;
    if (t < 500) return 14 + 4 * Math.sin((t - 60) / 40);
    return t < 900 ? 20 : (20 * (1000 - t)) / 100;
  });
  const project = newProject(
    { kind: "preset", id: "compact" },
    {
      kind: "table",
      id: "a-long-day",
      title: "A long day",
      source: "made for a test",
      time,
      speed,
      grade: time.map(() => 0),
      phases: [],
      soaks: [],
      treatment: [],
    },
  );
  return writeProject(project);
}

let app: ServedApp;
let page: Page;
let errors: readonly string[];
beforeAll(async () => {
  app = await ServedApp.start();
  ({ page, errors } = await app.open(1280, 720, { before: DOWNLOADS, flat: true }));
  const file = join(tmpdir(), "a-long-day.trishaft.json");
  await writeFile(file, aDay());
  const chooser = page.waitForEvent("filechooser");
  await page.getByRole("button", { name: "Open", exact: true }).click();
  await (await chooser).setFiles(file);
  await goToRoad(page);
}, 300_000);
afterAll(() => app?.stop());

describe("a day's drive, a row a second", () => {
  it("can be cancelled while it runs, and says so; the window stays alive", async () => {
    await page.getByRole("button", { name: /^Run/ }).click();
    const cancel = page.getByRole("button", { name: "Cancel", exact: true });
    await cancel.click({ timeout: 60_000 });
    await page.getByText(/The run was cancelled/).waitFor();
    await page.getByRole("button", { name: /^Run/ }).waitFor();
    expect(await page.getByRole("button", { name: "Pause" }).count()).toBe(0);
  });

  it("runs, plays and scrubs", async () => {
    await page.getByRole("button", { name: /^Run/ }).click();
    await page.getByRole("button", { name: "Pause" }).click({ timeout: 240_000 });
    const slider = page.getByRole("slider", { name: "Time", exact: true });
    await expect.poll(() => slider.getAttribute("aria-valuemax").then(Number)).toBe(DAY);
    const row = await cursorNear(page, 0.5);
    expect(Math.abs(row / 10 / DAY - 0.5)).toBeLessThan(0.02);
    await page.getByRole("button", { name: "×100", exact: true }).click();
    await page.getByRole("button", { name: "Play", exact: true }).click();
    await expect
      .poll(async () => Number(await slider.getAttribute("aria-valuenow")), { timeout: 60_000 })
      .toBeGreaterThan(row / 10 + 200);
    await page.getByRole("button", { name: "Pause" }).click();
    await slider.press("End");
    await expect.poll(() => slider.getAttribute("aria-valuetext")).toMatch(/^24:00:00\.0/);
    expect(errors).toEqual([]);
  });
});
