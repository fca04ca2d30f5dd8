// `npm run test:desktop`: drives the real program where Electron's runtime is, and says plainly where it is not.
import assert from "node:assert/strict";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { ensureInstalled, root } from "../sim/cli/install.mjs";

ensureInstalled();
const { buildPage, buildProgram, orExit } = await import("./build.mjs");
const launcher = await import(pathToFileURL(await orExit(buildProgram)).href);
const runtime = launcher.electronRuntime(root);
const why = runtime.why ?? (launcher.hasScreen(process.platform, process.env) ? null : "There is no screen");
if (why) {
  process.stdout.write(`Nothing was tested: ${why}.\n`);
  process.exit(0);
}
await orExit(buildPage);

const { _electron } = await import("playwright-core");
const profile = mkdtempSync(join(tmpdir(), "trishaft-desktop-"));
const app = await _electron.launch({
  executablePath: runtime.binary,
  args: [
    ...(launcher.isRootOnLinux(process.platform, process.getuid?.()) ? ["--no-sandbox"] : []),
    root,
    `--user-data-dir=${profile}`,
  ],
});
const page = await app.firstWindow();
await page.waitForLoadState("load");

/** What must hold in the running program, by name. */
const checks = {
  "the page comes from our own scheme": async () => {
    assert.equal(page.url().split("#")[0], "app://trishaft/index.html");
  },
  "the page has no Node": async () => {
    const types = await page.evaluate(() => [typeof process, typeof require, typeof module]);
    assert.deepEqual(types, ["undefined", "undefined", "undefined"]);
  },
  "the bridge answers": async () => {
    const info = await page.evaluate(() => window.trishaft.windowInfo());
    assert.equal(info.status, "ok");
    assert.equal(info.value.savesInPlace, true);
  },
  "the door refuses a path": async () => {
    const refused = await page.evaluate(() =>
      window.trishaft.saveAs({ suggestedName: "../x", text: "" }).then(
        () => "",
        (error) => String(error),
      ),
    );
    assert.match(refused, /suggestedName/);
  },
  "bytes go through the bridge": async () => {
    await app.evaluate(({ dialog }) => {
      dialog.showSaveDialog = async () => ({ canceled: true, filePath: "" });
    });
    const result = await page.evaluate(() =>
      window.trishaft.exportFile({
        suggestedName: "a.png",
        kinds: [{ title: "Picture", mime: "image/png", extensions: ["png"] }],
        content: new Uint8Array([1, 2, 3]),
      }),
    );
    assert.deepEqual(result, { status: "cancelled" });
  },
  "a menu command reaches the page": async () => {
    const told = page.evaluate(() => new Promise((resolve) => window.trishaft.onMenu(resolve)));
    await app.evaluate(({ BrowserWindow }) => {
      BrowserWindow.getAllWindows()[0].webContents.send("trishaft:menu", "save");
    });
    assert.equal(await told, "save");
  },
  "no code is made from text": async () => {
    // Later, not at once: code that the test itself puts into the page is free of the policy.
    const made = await page.evaluate(
      () =>
        new Promise((resolve) => {
          setTimeout(() => {
            try {
              resolve(Function("return 1")());
            } catch {
              resolve("refused");
            }
          }, 0);
        }),
    );
    assert.equal(made, "refused");
  },
  "no new window opens": async () => {
    assert.equal(await page.evaluate(() => window.open("https://example.org/") === null), true);
    assert.equal(app.windows().length, 1);
  },
  "no navigation leads away": async () => {
    await page.evaluate(() => {
      location.href = "https://example.org/";
    });
    await page.waitForTimeout(300);
    assert.equal(new URL(page.url()).host, "trishaft");
  },
  "no permission is given": async () => {
    const state = await page.evaluate(
      async () => (await navigator.permissions.query({ name: "geolocation" })).state,
    );
    assert.equal(state, "denied");
  },
  "nothing outside the page's folder is served": async () => {
    const status = await page.evaluate(async () => (await fetch("/..%2felectron%2fmain.js")).status);
    assert.equal(status, 403);
  },
  "the page prints": async () => {
    const size = await app.evaluate(async ({ BrowserWindow }) => {
      const pdf = await BrowserWindow.getAllWindows()[0].webContents.printToPDF({});
      return pdf.length;
    });
    assert.ok(size > 1000);
  },
};

let failed = 0;
for (const [name, check] of Object.entries(checks)) {
  try {
    await check();
    process.stdout.write(`ok   ${name}\n`);
  } catch (error) {
    failed += 1;
    process.stdout.write(`FAIL ${name}\n     ${error instanceof Error ? error.message : error}\n`);
  }
}
await app.close();
rmSync(profile, { recursive: true, force: true, maxRetries: 10, retryDelay: 200 });
process.stdout.write(failed === 0 ? "The desktop program passed.\n" : `${failed} checks failed.\n`);
process.exitCode = failed === 0 ? 0 : 1;
