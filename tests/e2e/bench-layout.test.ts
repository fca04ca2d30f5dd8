import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { en } from "../../renderer/texts/en.ts";
import { SITUATIONS } from "../../sim/bench/situations.ts";
import { textFaults } from "../renderer/support/boxes.ts";
import { type OpenPage, ServedApp } from "./app.ts";
import { gearSetDrawn, seriousFaults, type as typed } from "./bench-page.ts";
import { projected, setScheme, settled } from "./settled.ts";

// Software drawing beside other tests is slow.
vi.setConfig({ testTimeout: 240_000 });

let app: ServedApp;
beforeAll(async () => {
  app = await ServedApp.start();
}, 240_000);
afterAll(() => app?.stop());

/** Puts every situation on the bench in turn, and says what is wrong with the texts in each. */
async function faultsInAll({ page }: OpenPage, least: number): Promise<readonly string[]> {
  const found: string[] = [];
  for (const { id } of SITUATIONS) {
    await page.evaluate(`document.querySelector('[aria-label="${en.situations[id].name}"]').click()`);
    await settled(page);
    for (const fault of await textFaults(page, least)) found.push(`${id}: ${JSON.stringify(fault)}`);
  }
  return found;
}

for (const [width, height] of [
  [1280, 720],
  [1920, 1080],
] as const) {
  describe(`the bench at ${width} × ${height}`, () => {
    let open: OpenPage;
    beforeAll(async () => {
      open = await app.open(width, height);
      await gearSetDrawn(open.page);
    }, 240_000);
    afterAll(() => open?.page.context().close());

    for (const scheme of ["light", "dark"] as const) {
      for (const projector of [false, true]) {
        it(`${scheme}${projector ? ", projector" : ""}: no text over another, none cut off, none small; nothing that keeps a reader out`, async () => {
          const { page, errors } = open;
          await setScheme(page, scheme);
          const on = await page.evaluate(`document.documentElement.dataset.mode === "projector"`);
          if (on !== projector) await page.keyboard.press("p");
          await projected(page, projector);
          // The whole sheet is laid out and measured anew.
          await settled(page);
          expect(await faultsInAll(open, projector ? 20 : 14)).toEqual([]);
          expect(await seriousFaults(page)).toEqual([]);
          expect(errors).toEqual([]);
        });
      }
    }

    it("keeps its texts apart at the limits, with a view enlarged, and with a working open", async () => {
      const { page } = open;
      if (await page.evaluate(`document.documentElement.dataset.mode === "projector"`))
        await page.keyboard.press("p");
      await projected(page, false);
      await page.getByRole("button", { name: "slowing down", exact: true }).click();
      await typed(page, "Ring speed, typed", "4100");
      await settled(page);
      expect(await textFaults(page)).toEqual([]);
      await page.getByRole("button", { name: /^Sun speed/ }).click();
      await page.locator(".working .result").first().waitFor();
      expect(await textFaults(page)).toEqual([]);
      await page.keyboard.press("Escape");
      await page.evaluate("document.activeElement.blur()");
      for (const key of ["a", "b", "c"]) {
        await page.keyboard.press(key);
        await settled(page);
        expect(await textFaults(page), key).toEqual([]);
        await page.keyboard.press("Escape");
      }
    });
  });
}
