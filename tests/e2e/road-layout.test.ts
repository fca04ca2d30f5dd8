import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { textFaults } from "../renderer/support/boxes.ts";
import { type OpenPage, ServedApp } from "./app.ts";
import { seriousFaults } from "./bench-page.ts";
import { runCycle } from "./road-page.ts";
import { projected, setScheme, settled } from "./settled.ts";

// Software drawing beside other tests is slow.
vi.setConfig({ testTimeout: 240_000 });

let app: ServedApp;
beforeAll(async () => {
  app = await ServedApp.start();
}, 240_000);
afterAll(() => app?.stop());

/** Shares of the drive that are looked at: standing, the engine driving, braking, and between. */
const SHARES = [0, 0.06, 0.17, 0.34, 0.52, 0.79, 1];

const time = (page: Page) => page.getByRole("slider", { name: "Time", exact: true });

async function faultsAt(page: Page, least: number): Promise<readonly string[]> {
  const found: string[] = [];
  const box = await page.evaluate<Record<"x" | "y" | "width" | "height", number>>(
    "document.querySelector('.time-cursor').parentElement.getBoundingClientRect().toJSON()",
  );
  for (const share of SHARES) {
    await page.mouse.click(box.x + 1 + share * (box.width - 2), box.y + box.height / 2);
    await settled(page);
    const at = await time(page).getAttribute("aria-valuetext");
    for (const fault of await textFaults(page, least)) {
      const words = JSON.stringify(fault);
      // What is wrong all along is told once.
      if (!found.some((one) => one.endsWith(words))) found.push(`${at}: ${words}`);
    }
  }
  return found;
}

/** What else can be opened over or beside the drive, and how it is left again. */
const OPENED: readonly (readonly [string, (page: Page) => Promise<void>, (page: Page) => Promise<void>])[] = [
  [
    "the energy so far",
    (page) => page.getByRole("button", { name: "Energy so far" }).click(),
    (page) => page.getByRole("button", { name: "Power now" }).click(),
  ],
  [
    "a working",
    (page) =>
      page
        .getByRole("table", { name: /^Shafts,/ })
        .getByRole("button")
        .first()
        .click(),
    (page) => page.keyboard.press("Escape"),
  ],
  [
    "predict",
    (page) => page.getByRole("button", { name: "Predict" }).click(),
    (page) =>
      page.getByRole("region", { name: "Predict, then reveal" }).getByRole("button", { name: "End" }).click(),
  ],
  [
    "limits",
    (page) => page.getByRole("button", { name: "Limits", exact: true }).click(),
    (page) => page.getByRole("button", { name: "Replay", exact: true }).click(),
  ],
  [
    "the pedals",
    (page) => page.getByRole("button", { name: "Take the pedals" }).click(),
    (page) => page.getByRole("button", { name: "Replay", exact: true }).click(),
  ],
];

for (const [width, height] of [
  [1280, 720],
  [1920, 1080],
] as const) {
  describe(`a drive at ${width} × ${height}`, () => {
    let open: OpenPage;
    beforeAll(async () => {
      open = await app.open(width, height, { place: "road" });
      await runCycle(open.page, "nycc");
    }, 240_000);
    afterAll(() => open?.page.context().close());

    for (const scheme of ["light", "dark"] as const) {
      it(`${scheme}: no text over another, none cut off, none small; nothing that keeps a reader out`, async () => {
        const { page, errors } = open;
        await setScheme(page, scheme);
        await settled(page);
        expect(await faultsAt(page, 14)).toEqual([]);
        expect(await seriousFaults(page)).toEqual([]);
        for (const [name, enter, leave] of OPENED) {
          await enter(page);
          await settled(page);
          expect(await textFaults(page), name).toEqual([]);
          expect(await seriousFaults(page), name).toEqual([]);
          await leave(page);
        }
        expect(errors).toEqual([]);
      });
    }

    it("on a projector, in both themes", async () => {
      const { page, errors } = open;
      await page.getByRole("button", { name: "Projector" }).click();
      await projected(page, true);
      for (const scheme of ["light", "dark"] as const) {
        await setScheme(page, scheme);
        await settled(page);
        expect(await textFaults(page, 20), "flow sheet").toEqual([]);
        expect(await seriousFaults(page)).toEqual([]);
        await page.getByRole("button", { name: "Time", exact: true }).click();
        await settled(page);
        expect(await faultsAt(page, 20)).toEqual([]);
        expect(await seriousFaults(page)).toEqual([]);
        await page.getByRole("button", { name: "Power", exact: true }).click();
      }
      expect(errors).toEqual([]);
    });
  });
}
