import type { Page } from "playwright-core";

/** What has the focus: its name for a reader. */
export const focusedName = (page: Page): Promise<string> =>
  page.evaluate<string>(`(() => { const at = document.activeElement;
    return (at.getAttribute("aria-label") ?? at.labels?.[0]?.textContent ?? at.textContent).trim(); })()`);

/** Goes on by the Tab key until something of that name has the focus. */
export async function tabTo(page: Page, name: RegExp): Promise<void> {
  for (let i = 0; i < 130; i += 1) {
    if (name.test(await focusedName(page))) return;
    await page.keyboard.press("Tab");
  }
  throw new Error(`the Tab key never comes to ${name}`);
}
