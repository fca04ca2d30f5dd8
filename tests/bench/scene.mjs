// The scene's benchmark: the app in an installed Chromium without a graphics card, so that all drawing is software; the
// time of our own script does not depend on that. Counts what the page asks of the graphics library itself.
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { brotliCompressSync, gzipSync } from "node:zlib";
import { openBrowser, serve } from "../served.mjs";
import { PROBE, spread, verdict } from "./probe.mjs";
import { processorOf } from "./processor.mjs";

const root = join(import.meta.dirname, "..", "..");
const SIZE = { width: 1600, height: 900 };
/** Frames measured, after those to warm up; `node tests/bench/scene.mjs 40` takes fewer. */
const FRAMES = Number(process.argv[2] ?? 120);
const WARM_UP = Math.ceil(FRAMES / 5);

/** Targets of the product: ms, ms, calls, triangles, ms. */
const TARGET = { median: 3, p95: 6, calls: 60, triangles: 250_000, paint: 1500 };

const drawn = (page) =>
  page.waitForFunction(`!document.querySelector(".canvas-note") && probe.calls > 0`, null, {
    timeout: 120_000,
  });

/** First paint, and until the gear set stands there, ms, of a page that was there before. */
async function opening(context, address) {
  const page = await context.newPage();
  await page.goto(address);
  await drawn(page);
  const times = await page.evaluate(`({
    paint: performance.getEntriesByName("first-contentful-paint")[0].startTime,
    scene: performance.now(),
  })`);
  return { page, ...times };
}

/** What the page does while the gear set turns by itself. */
async function turning(page, frames) {
  await page.getByRole("button", { name: "Turn", exact: true }).click();
  const wait = (count) =>
    page.waitForFunction(`probe.frames.length >= ${count}`, null, { timeout: 600_000, polling: 200 });
  await wait((await page.evaluate("probe.frames.length")) + WARM_UP);
  await page.evaluate("probe.frames.length = 0");
  await wait(frames);
  const found = await page.evaluate("probe.frames.slice(0, -1)");
  const { frames: processor } = await processorOf(page.context().browser(), page, async () => {
    await page.evaluate("probe.frames.length = 0");
    await wait(frames);
  });
  await page.getByRole("button", { name: "Pause", exact: true }).click();
  const drawing = found.filter((frame) => frame.calls > 0);
  const script = spread(drawing.map((frame) => frame.script));
  const between = spread(drawing.slice(1).map((frame, i) => frame.now - drawing[i].now));
  const most = (of) => Math.max(...drawing.map((frame) => frame[of]));
  return {
    script,
    processor: spread(processor),
    between,
    calls: most("calls"),
    triangles: most("triangles"),
  };
}

/** What is drawn while nothing moves, over two seconds. */
async function standing(page) {
  await page.waitForTimeout(500);
  await page.evaluate("(probe.frames.length = 0, (probe.calls = 0))");
  await page.waitForTimeout(2000);
  return page.evaluate("({ calls: probe.calls, frames: probe.frames.length })");
}

/** Sizes of what the page loads, as it is and compressed, kB. */
function sizes() {
  const folder = join(root, "dist", "renderer", "assets");
  const html = readFileSync(join(root, "dist", "renderer", "index.html"), "utf8");
  const of = (names) => {
    const contents = names.map((name) => readFileSync(join(folder, name)));
    const sum = (squeeze) => contents.reduce((all, content) => all + squeeze(content).length, 0) / 1000;
    return { plain: sum((content) => content), gzip: sum(gzipSync), brotli: sum(brotliCompressSync) };
  };
  const code = readdirSync(folder).filter((name) => /\.(js|css)$/.test(name));
  const first = code.filter((name) => html.includes(name));
  return { first: of(first), all: of(code) };
}

const ms = (value) => value.toFixed(2).padStart(8);
const kB = ({ plain, gzip, brotli }) =>
  `${plain.toFixed(0)} kB, gzip ${gzip.toFixed(0)} kB, brotli ${brotli.toFixed(0)} kB`;

const row = (name, times) =>
  `  ${name.padEnd(36)}${ms(times.median)} ${ms(times.p95)} ${ms(times.most)}   ` +
  `${verdict(times.median, TARGET.median)}, ${verdict(times.p95, TARGET.p95)}`;

function report(version, warm, states, still, size) {
  const lines = [
    "",
    "SCENE",
    `Chromium ${version}, software drawing (SwiftShader), ${SIZE.width} x ${SIZE.height}`,
    "",
    "ms of script a frame while turning        median      p95     most",
    ...states.flatMap(({ name, script, processor }) => [
      row(name, script),
      row("    of the processor", processor),
    ]),
    "",
    "  of the processor: what the browser's trace says that the frame's thread worked; the rest of the time it waited",
    "  not filled: the graphics library is asked for everything, but no pixel is filled, so that frames come as often",
    "  as with a graphics card; otherwise the software that fills them takes both the processor and its caches",
    "",
    ...states.map(
      ({ name, calls, triangles, between }) =>
        `  ${name}: ${calls} draw calls (${verdict(calls, TARGET.calls)}), ${Math.round(triangles)} triangles ` +
        `(${verdict(triangles, TARGET.triangles)}), a frame every ${between.median.toFixed(0)} ms`,
    ),
    `  standing still for 2 s: ${still.calls} draw calls, ${still.frames} frames of script`,
    "",
    `  first paint ${warm.paint.toFixed(0)} ms (${verdict(warm.paint, TARGET.paint)}), gear set ${warm.scene.toFixed(0)} ms, second opening`,
    `  loaded at the start: ${kB(size.first)}`,
    `  all code and styles: ${kB(size.all)}`,
    "",
  ];
  process.stdout.write(lines.join("\n"));
}

const served = await serve();
const browser = await openBrowser();
try {
  const context = await browser.newContext({ viewport: SIZE, bypassCSP: true });
  await context.addInitScript(PROBE);
  const cold = await opening(context, served.address);
  await cold.page.close();
  const warm = await opening(context, served.address);
  const { page } = warm;
  await page.waitForTimeout(1500);
  const states = [];
  const both = async (name, frames) => {
    states.push({ name, ...(await turning(page, frames)) });
    await page.evaluate("void (probe.leaveOut = true)");
    states.push({ name: `${name}, not filled`, ...(await turning(page, FRAMES)) });
    await page.evaluate("void (probe.leaveOut = false)");
  };
  // The code itself has to get warm, as it does in the first seconds with a graphics card.
  await page.evaluate("void (probe.leaveOut = true)");
  await turning(page, 240);
  await page.evaluate("void (probe.leaveOut = false)");
  await both("gear set", FRAMES);
  await page.getByText("View", { exact: true }).click();
  await page.getByLabel("Labels").check();
  await page.getByLabel("Torque arrows").check();
  await both("labels and torque arrows", FRAMES / 2);
  await page.getByText("View", { exact: true }).click();
  await page.locator("select", { has: page.locator("option[value=drivetrain]") }).selectOption("drivetrain");
  await both("drivetrain, labels, arrows", FRAMES / 2);
  const still = await standing(page);
  report(browser.version(), warm, states, still, sizes());
} finally {
  await browser.close();
  served.stop();
}
