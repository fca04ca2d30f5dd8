import { mkdtempSync, rmSync, truncateSync, writeFileSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Locator, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { lessonById } from "../../sim/lesson/built-in/registry.ts";
import { handout } from "../../sim/lesson/handout/handout.ts";
import { readLesson } from "../../sim/lesson/read.ts";
import { textFaults } from "../renderer/support/boxes.ts";
import { DOWNLOADS, ServedApp } from "./app.ts";
import { gearSetDrawn, seriousFaults } from "./bench-page.ts";
import { projected, setScheme, settled } from "./settled.ts";

// Software drawing beside other tests is slow.
vi.setConfig({ testTimeout: 240_000 });

let app: ServedApp;
beforeAll(async () => {
  app = await ServedApp.start();
}, 240_000);
const folder = mkdtempSync(join(tmpdir(), "lessons-"));
afterAll(async () => {
  await app?.stop();
  rmSync(folder, { recursive: true });
});

const button = (page: Page | Locator, name: string | RegExp): Locator =>
  page.getByRole("button", { name, exact: true });

async function goToLessons(page: Page): Promise<void> {
  await page.keyboard.press("4");
  await page.getByRole("heading", { name: "Lessons", exact: true }).waitFor();
  await button(page, "New lesson").waitFor();
}

async function openLesson(page: Page, title: string, firstStep: string): Promise<void> {
  await button(page, title).click();
  await page.getByRole("heading", { name: firstStep }).waitFor();
}

/** What the verdict of the only question says. */
const verdict = (page: Page): Promise<string | null> =>
  page
    .getByRole("region", { name: /torque/ })
    .getByRole("status")
    .textContent();

/** A file that the app gives out. */
async function saved(page: Page, name: string): Promise<string> {
  const download = page.waitForEvent("download");
  await button(page, name).click();
  return readFile(await (await download).path(), "utf8");
}

/** Gives a file to the only file field. */
const pick = (page: Page, name: string, text: string): Promise<void> =>
  page.locator("input[type=file]").setInputFiles({ name, mimeType: "text/plain", buffer: Buffer.from(text) });

const MINE = `# Mine

## Turn it

\`\`\`bench
carrier: 2000 rev/min (1500 to 2500 by 100)
ring: hold 0
free: carrier
\`\`\`

The carrier turns at {carrier speed}.

\`\`\`ask
name: sun
question: How fast does the sun turn with this torque?
key: sun sped
unit: rev/min
tolerance: 1 %
\`\`\`
`;

describe("a built-in lesson", () => {
  it("is played: a wrong answer gets a hint, the right one its working; stages open on Bench and Road", async () => {
    const { page, errors } = await app.open(1600, 900, { place: "lessons", flat: true });
    await openLesson(page, "Why the torque split is fixed", "A lever at rest");
    await page.getByText("The engine pushes the lever up here.").waitFor();
    // On the lever the asked torques are not told, whatever they are.
    const words = page.locator("#lesson-lever-words");
    await expect.poll(() => words.textContent()).toMatch(/Sun 5.900 rev\/min, follows, torque \? N·m/);
    await button(page, "Step 2, on").click();
    const field = page.getByRole("textbox", { name: "Answer" });
    await field.fill("28.6");
    await field.press("Enter");
    await expect.poll(() => verdict(page)).toBe("Not yet. The size is right, the sign is not.");
    await page.getByText("1 of 4 shown").waitFor();
    await field.fill("12");
    await button(page, "Check").click();
    await expect.poll(() => verdict(page)).toBe("Not yet, try 2.");
    await page.getByText("2 of 4 shown").waitFor();
    // −100 N·m / 3.5, by hand, in another unit: 1 lb·ft = 1.3558 N·m (NIST SP 811, appendix B.8).
    await page.getByRole("combobox", { name: "Unit" }).selectOption("lb·ft");
    await field.fill(String(-100 / 3.5 / 1.355_818));
    await button(page, "Check").click();
    await expect.poll(() => verdict(page)).toMatch(/^Right: −28\.6.N·m\.$/);
    await page.getByRole("heading", { name: "The working" }).waitFor();
    await expect.poll(() => words.textContent()).toMatch(/Sun 5.900 rev\/min, follows, torque −28.6 N·m/);
    // The engine's torque is free: what follows, follows; the answer stays right.
    await page.getByRole("slider", { name: /^Engine torque/ }).fill("70");
    await expect.poll(() => words.textContent()).toContain("torque −20.0 N·m");
    await button(page, "Open on Bench").click();
    await page.getByRole("heading", { name: "Bench", exact: true }).waitFor();
    await expect
      .poll(() => page.getByRole("slider", { name: "Sun speed", exact: true }).getAttribute("aria-valuenow"))
      .toBe("5900");
    await page.keyboard.press("4");
    await button(page, "All lessons").click();
    await openLesson(page, "Starting the engine", "Turn it up at rest");
    await button(page, /^4 On the road/).click();
    await button(page, "Open on Road").click({ timeout: 60_000 });
    await page.getByRole("heading", { name: "Road", exact: true }).waitFor();
    const time = page.getByRole("slider", { name: "Time", exact: true });
    await expect.poll(() => time.getAttribute("aria-valuenow").then(Number)).toBeGreaterThan(1);
    expect(errors).toEqual([]);
    await page.context().close();
  });

  it("is played by keys alone", async () => {
    const { page, errors } = await app.open(1280, 720, { scheme: "dark" });
    await goToLessons(page);
    const press = async (...keys: readonly string[]): Promise<void> => {
      for (const key of keys) await page.keyboard.press(key);
    };
    const focused = (): Promise<string> =>
      page.evaluate(
        "(document.activeElement.getAttribute('aria-label') ?? document.activeElement.textContent)",
      );
    const tabTo = async (name: RegExp): Promise<void> => {
      for (let i = 0; i < 60 && !name.test(await focused()); i += 1) await press("Tab");
      expect(await focused()).toMatch(name);
    };
    await tabTo(/^Three shafts/);
    await press("Enter");
    await page.getByRole("heading", { name: "Count the teeth" }).waitFor();
    // What the step points at is named on the gear set.
    await gearSetDrawn(page);
    await page.locator(".part-labels").getByText("Planets").waitFor();
    await expect.poll(() => page.locator(".part-labels span").count()).toBe(1);
    await press("n");
    await expect.poll(focused).toBe("Hold the ring");
    await tabTo(/^Answer$/);
    await page.keyboard.type("3500");
    await press("Enter");
    await page.getByText(/Right: 3.500.rev\/min/).waitFor();
    // A letter typed in the field is no key of the place.
    await page.keyboard.type("nb");
    await page.getByRole("heading", { name: "Hold the ring" }).waitFor();
    await press("Tab", "Tab", "Tab");
    await press("n", "b");
    await expect.poll(focused).toBe("Hold the ring");
    // A shaft that is free is moved by arrow keys.
    await tabTo(/^Carrier speed$/);
    await press("ArrowUp");
    const slider = page.getByRole("slider", { name: "Carrier speed" });
    await expect.poll(() => slider.getAttribute("aria-valuenow")).toBe("1010");
    expect(errors).toEqual([]);
    await page.context().close();
  });
});

describe("a lesson of one's own", () => {
  it("is written, its fault found at its line and mended, played, handed out, marked, and kept over a reload", async () => {
    const { page, errors } = await app.open(1600, 900, { before: DOWNLOADS, place: "lessons", flat: true });
    await button(page, "New lesson").click();
    const editor = page.getByRole("textbox", { name: "Text of the lesson" });
    await editor.fill(MINE);
    const fault = button(page, /^Line 16: no quantity is called this; the nearest is "sun speed"/);
    await fault.click();
    const selected =
      "(() => { const t = document.activeElement; return t.value.slice(t.selectionStart, t.selectionEnd); })()";
    await expect.poll(() => page.evaluate(selected)).toBe("key: sun sped");
    await page.keyboard.insertText("key: sun speed");
    await page.getByText("No faults.").waitFor();
    // Tab leaves the text; a block is put in and taken back by the field's own undo.
    await page.keyboard.press("Control+End");
    await page.getByRole("combobox", { name: "Block to insert" }).selectOption("choice");
    await button(page, "Insert").click();
    await expect.poll(() => editor.inputValue()).toContain("name: my-choice");
    await page.keyboard.press("Control+z");
    const good = MINE.replace("sun sped", "sun speed");
    await expect.poll(() => editor.inputValue()).toBe(good);
    await page.keyboard.press("Tab");
    await expect
      .poll(() => editor.evaluate((field) => field.ownerDocument.activeElement === field))
      .toBe(false);
    expect(await saved(page, "Save as file")).toBe(good);

    await button(page, "Read").click();
    const field = page.getByRole("textbox", { name: "Answer" });
    await field.fill("7000");
    await field.press("Enter");
    // (1 + k) · 2000 with k = 2.5, by hand.
    await expect.poll(() => verdict(page)).toMatch(/^Right: 7.000.rev\/min\.$/);

    await button(page, "Handout").click();
    await page.getByRole("radio", { name: "names, one a line" }).check();
    await page.getByRole("textbox", { name: "Names, one a line" }).fill("Ada Lindqvist\nBen Okoro");
    await page.getByRole("textbox", { name: "Seed" }).fill("3");
    await button(page, "Make").click();
    await page.getByText("2 sheets and their key.").waitFor();
    const lesson = readLesson(good, "mine");
    const made = handout(lesson, { seed: 3, students: ["Ada Lindqvist", "Ben Okoro"] });
    expect(await saved(page, "Save sheets")).toBe(made.sheets);
    expect(await saved(page, "Save key")).toBe(made.key);
    const form = await saved(page, "Save answer form");
    await expect
      .poll(() => page.getByRole("region", { name: "Sheets" }).getByText("Ada Lindqvist").count())
      .toBe(1);
    // What goes to paper is the page alone.
    await page.evaluate(
      "window.print = () => { window.printed = document.querySelector('.print-page').shadowRoot.textContent; }",
    );
    await button(page, "Print or PDF").click();
    await expect.poll(() => page.evaluate<string>("window.printed ?? ''")).toContain("Ada Lindqvist");
    await expect.poll(() => page.locator(".print-page").count()).toBe(0);

    await button(page, "Mark").click();
    const keys = [...made.key.matchAll(/<td>([\d\u202f]+)\u00a0rev\/min<\/td>/g)].map(([, n = ""]) => n);
    const answers = form
      .replace("Ada Lindqvist,sun,,", `Ada Lindqvist,sun,${keys[0]?.replace("\u202f", "")},`)
      .replace("Ben Okoro,sun,,", "Ben Okoro,sun,-1,");
    await pick(page, "answers.csv", answers);
    await page.getByRole("row", { name: /Ada Lindqvist/ }).waitFor();
    await expect
      .poll(() => page.getByRole("row", { name: /Ada Lindqvist/ }).textContent())
      .toMatch(/1 of 1\s*✓/);
    await expect.poll(() => page.getByRole("row", { name: /Ben Okoro/ }).textContent()).toMatch(/0 of 1\s*✗/);
    expect(await saved(page, "Save marks")).toMatch(
      /^student,question,given[\s\S]*Ada Lindqvist,sun,.*,right,1,/,
    );
    // A bad file is told with row and column, and nothing is lost by it.
    await pick(page, "bad.csv", "student,question,value\nAda Lindqvist,snu,1\n");
    await page.getByText(/bad\.csv, row 2, column "question"/).waitFor();
    await expect.poll(() => page.getByRole("row", { name: /Ada Lindqvist/ }).count()).toBe(1);
    const large = join(folder, "large.csv");
    writeFileSync(large, "");
    truncateSync(large, 9e6);
    await page.locator("input[type=file]").setInputFiles(large);
    await page.getByText(/large\.csv has 9\.0 MB/).waitFor();

    await page.reload();
    await page.getByRole("heading", { name: "Turn it" }).waitFor();
    await expect.poll(() => verdict(page)).toMatch(/^Right: 7.000.rev\/min\.$/);
    await button(page, "All lessons").click();
    await expect
      .poll(() => page.getByRole("row", { name: /Mine/ }).textContent())
      .toContain("1 of 1 answered");
    await button(page, "Delete Mine").click();
    await expect.poll(() => page.getByRole("row", { name: /Mine/ }).count()).toBe(0);
    await button(page, "Bring back “Mine”").click();
    await expect.poll(() => page.getByRole("row", { name: /Mine/ }).count()).toBe(1);

    // One may also begin from a file, which may have faults, or from a built-in lesson.
    await pick(page, "theirs.md", MINE.replace("# Mine", "# Theirs"));
    await button(page, /^Line 16/).waitFor();
    await button(page, "All lessons").click();
    await openLesson(page, "Three shafts, one equation", "Count the teeth");
    await button(page, "Write").click();
    await expect.poll(() => editor.getAttribute("readonly")).not.toBeNull();
    await button(page, "Make it my own").click();
    await expect.poll(() => editor.getAttribute("readonly")).toBeNull();
    await expect.poll(() => editor.inputValue()).toContain(lessonById("three-shafts").title);
    await page.getByText("No faults.").waitFor();
    expect(errors).toEqual([]);
    await page.context().close();
  });
});

describe("lessons at 1280 × 720 and 1920 × 1080", () => {
  it("keep their texts apart, whole and large, and nothing keeps a reader out: light, dark, projector", async () => {
    const { page, errors } = await app.open(1280, 720, { place: "lessons", flat: true });
    /** What is laid out does not hang on the colours, nor what can be read on the size. */
    const look = async (view: string, least = 14): Promise<void> => {
      for (const [width, height] of [
        [1920, 1080],
        [1280, 720],
      ] as const) {
        await page.setViewportSize({ width, height });
        // The whole sheet is laid out and drawn anew.
        await settled(page);
        expect(await textFaults(page, least), `${view}, ${width}`).toEqual([]);
      }
      for (const scheme of ["dark", "light"] as const) {
        await setScheme(page, scheme);
        await settled(page);
        expect(await seriousFaults(page), `${view}, ${scheme}`).toEqual([]);
      }
    };
    const onProjector = async (view: string): Promise<void> => {
      await page.keyboard.press("p");
      await projected(page, true);
      await look(`${view}, projector`, 20);
      await page.keyboard.press("p");
      await projected(page, false);
    };
    await look("list");
    await openLesson(page, "Why the torque split is fixed", "A lever at rest");
    await page.keyboard.press("n");
    await page.getByRole("textbox", { name: "Answer" }).fill("28");
    await button(page, "Check").click();
    await look("bench step");
    await onProjector("bench step");
    await button(page, "Write").click();
    await look("write");
    await button(page, "Handout").click();
    await button(page, "Make").click();
    await page.getByText("One sheet and its key.").waitFor();
    await look("handout");
    await button(page, "Mark").click();
    await pick(page, "a.csv", "student,question,value\nAda,sun-torque,-28.6\nBen,direction,a\n");
    await button(page, "Ada").click();
    await look("mark");
    await button(page, "All lessons").click();
    await openLesson(page, "Starting the engine", "Turn it up at rest");
    await button(page, /^4 On the road/).click();
    await button(page, "Open on Road").waitFor({ timeout: 60_000 });
    await look("run step");
    await onProjector("run step");
    expect(errors).toEqual([]);
    await page.context().close();
  });
});
