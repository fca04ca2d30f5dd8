// `npm run pictures`: makes the pictures of the readme from the running app. A new one is a line in the list.
import { statSync } from "node:fs";
import { join } from "node:path";
import { openBrowser, serve } from "../../tests/served.mjs";

/**
 * What is pictured: the place of the address, the window's size, light or dark, preferences as the device keeps them,
 * and what is done before.
 */
const PICTURES = [
  {
    file: "bench.png",
    place: "bench",
    size: { width: 1600, height: 900 },
    scheme: "light",
    preferences: {},
    prepare: async (page) => {
      await page.waitForFunction(`!document.querySelector(".canvas-note")`);
      await page.getByRole("button", { name: "engine pull-away", exact: true }).click();
      // As if it had turned for a while: the marks apart, the turns counted.
      for (let i = 0; i < 25; i += 1) await page.keyboard.press("]");
      await page.getByRole("button", { name: /^Sun speed/ }).click();
      await page.mouse.move(2, 2);
    },
  },
  {
    file: "road.png",
    place: "road",
    size: { width: 1600, height: 900 },
    scheme: "dark",
    preferences: {},
    prepare: async (page) => {
      await page.getByRole("button", { name: /^Run/ }).click();
      await page.getByRole("button", { name: "Pause" }).click({ timeout: 60_000 });
      await page.getByRole("button", { name: /strongest assist/ }).click();
      await page.waitForFunction(`!document.querySelector(".canvas-note")`);
      // Until the fuel stands there, charge-balanced.
      await page.waitForTimeout(8000);
      await page.mouse.move(2, 2);
    },
  },
];

async function make(browser, address, { file, place, size, scheme, preferences, prepare }) {
  const context = await browser.newContext({ viewport: size, colorScheme: scheme, bypassCSP: true });
  const page = await context.newPage();
  await page.addInitScript(
    `localStorage["trishaft.preferences"] ??= ${JSON.stringify(JSON.stringify(preferences))}`,
  );
  await page.goto(`${address}#${place}`);
  await page.locator("#place").waitFor();
  await page.evaluate("document.fonts.ready");
  await prepare(page);
  await page.waitForTimeout(600);
  const path = join(import.meta.dirname, file);
  await page.screenshot({ path });
  await context.close();
  process.stdout.write(`${file}  ${Math.round(statSync(path).size / 1000)} kB\n`);
}

const asked = process.argv.slice(2);
const served = await serve();
const browser = await openBrowser();
try {
  for (const picture of PICTURES) {
    if (asked.length === 0 || asked.includes(picture.file)) await make(browser, served.address, picture);
  }
} finally {
  await browser.close();
  served.stop();
}
