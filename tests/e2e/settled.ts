import type { Page } from "playwright-core";
import { expect } from "vitest";

/** Waits until the page has drawn what it knows: what readers hear follows with the next picture. */
export const pictured = (page: Page): Promise<void> =>
  page.evaluate(
    "new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done, 50))))",
  );

/** The colours of the page, and waits until they are there. */
export async function setScheme(page: Page, scheme: "light" | "dark"): Promise<void> {
  await page.emulateMedia({ colorScheme: scheme });
  await expect.poll(() => page.evaluate("document.documentElement.dataset.theme")).toBe(scheme);
}

/** Waits until the page has the projector's look, or has it no more. */
export const projected = (page: Page, on: boolean): Promise<void> =>
  expect.poll(() => page.evaluate<boolean>(`document.documentElement.dataset.mode === "projector"`)).toBe(on);

/** Every text of the page and where each element stands. */
const AS_IT_STANDS = `[document.body.innerText, ...[...document.body.querySelectorAll("*")].map((one) => {
  const { x, y, width, height } = one.getBoundingClientRect();
  return [x, y, width, height].map((px) => Math.round(10 * px)).join(" ");
})].join("|")`;

/** How many things on the page pass over into another look, colours too; what moves for ever is left out. */
const IN_PASSING = `document.getAnimations().filter((one) =>
  one.playState === "running" && one.effect.getComputedTiming().endTime !== Infinity).length`;

/** Waits until nothing on the page changes: the same in three looks, each two pictures and 50 ms after the last. */
export async function settled(page: Page): Promise<void> {
  await page.evaluate<void>(`(async () => {
    const look = () => ${AS_IT_STANDS};
    const end = performance.now() + 20000;
    for (let before = look(), same = 0; same < 2; ) {
      await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done, 50))));
      const now = look();
      same = now === before && ${IN_PASSING} === 0 ? same + 1 : 0;
      before = now;
      if (performance.now() > end) throw new Error("the page does not come to rest");
    }
  })()`);
}
